import { noChange } from 'lit-html';
import { Directive, directive, type ElementPart } from 'lit-html/directive.js';

/** Styles of an element by their CSS names, set one by one: the security policy lets no style attribute through. */
class Styled extends Directive {
  private before: Readonly<Record<string, string>> = {};

  override render(_styles: Readonly<Record<string, string>>): unknown {
    return noChange;
  }

  override update({ element }: ElementPart, [styles]: [Readonly<Record<string, string>>]): unknown {
    const { style } = element as HTMLElement;
    for (const [name, value] of Object.entries(styles))
      if (this.before[name] !== value) style.setProperty(name, value);
    this.before = styles;
    return noChange;
  }
}

export const styled = directive(Styled);

/** Pixels as finely as a screen shows them. */
export const hundredths = (pixels: number): number => Math.round(pixels * 100) / 100;
