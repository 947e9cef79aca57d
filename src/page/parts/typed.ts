import { noChange } from 'lit-html';
import { Directive, directive, type ElementPart } from 'lit-html/directive.js';

/** Fields that somebody is typing in: what they hold is not given yet. */
const typing = new WeakSet<Element>();

/** The text of a field that is typed in, kept from changes elsewhere until it is given by Enter or by leaving the field. */
class Typed extends Directive {
  private watched = false;

  override render(_text: string): unknown {
    return noChange;
  }

  override update({ element }: ElementPart, [text]: [string]): unknown {
    const input = element as HTMLInputElement;
    if (!this.watched) {
      this.watched = true;
      input.addEventListener('input', () => typing.add(input));
      for (const given of ['change', 'blur']) input.addEventListener(given, () => typing.delete(input));
    }
    if (!typing.has(input) && input.value !== text) input.value = text;
    return noChange;
  }
}

export const typed = directive(Typed);
