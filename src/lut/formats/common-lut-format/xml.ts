import { isBlank, latinText, utf8Text } from '../cube/text.js';

/** A stretch of a file's bytes. */
export interface Stretch {
  readonly start: number;
  readonly end: number;
  /** True for CDATA, where & means itself. */
  readonly raw: boolean;
}

/** An element of an XML file, as far as this format needs it: no document type, no namespaces (prefixes are cut). */
export interface Element {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: Element[];
  /** Its own text, in pieces between children and comments. */
  readonly text: Stretch[];
  /** Where its tag begins. */
  readonly at: number;
}

/** Ends the reading. @param at the byte at which it went wrong */
export type Refuse = (at: number, what: string, hint?: string) => never;

/** Bounds on what a file may pile up; far beyond any process list. Ours. */
const most = { depth: 16, elements: 4096, attributes: 32, tagBytes: 16384 };

const ascii = (text: string) => Uint8Array.from(text, (letter) => letter.charCodeAt(0));
const [openTag, closeTag, slash, bang, question] = ascii('<>/!?');
const marks = {
  comment: ascii('<!--'),
  commentEnd: ascii('-->'),
  data: ascii('<![CDATA['),
  dataEnd: ascii(']]>'),
};
const instructionEnd = ascii('?>');

const isSpace = (byte: number): boolean => isBlank(byte) || byte === 10 || byte === 13;

function startsWith(bytes: Uint8Array, at: number, mark: Uint8Array): boolean {
  return mark.every((byte, i) => bytes[at + i] === byte);
}

function indexOf(bytes: Uint8Array, mark: Uint8Array, from: number): number {
  for (let at = bytes.indexOf(mark[0], from); at >= 0; at = bytes.indexOf(mark[0], at + 1))
    if (startsWith(bytes, at, mark)) return at;
  return -1;
}

const entities: Record<string, string> = { lt: '<', gt: '>', amp: '&', quot: '"', apos: "'" };

/** Text with its entities and character references put in; undefined for one that is not known. */
function decoded(text: string): string | undefined {
  let known = true;
  const out = text.replace(/&([^;&]*;?)/g, (_, body: string) => {
    const [, hex, decimal] = /^#(?:x([0-9a-f]{1,6})|([0-9]{1,7}));$/i.exec(body) ?? [];
    const code = hex === undefined ? Number(decimal) : Number.parseInt(hex, 16);
    const named = body.endsWith(';') ? entities[body.slice(0, -1)] : undefined;
    if (code > 0 && code <= 0x10ffff) return String.fromCodePoint(code);
    if (named === undefined) known = false;
    return named ?? '';
  });
  return known ? out : undefined;
}

/** An element's own text, pieces joined. Meant for short ones. */
export function textOf(bytes: Uint8Array, { text, at }: Element, refuse: Refuse): string {
  const pieces = text.map(({ start, end, raw }) => {
    const words = utf8Text(bytes, start, end) ?? refuse(start, 'the text is not UTF-8');
    return raw ? words : (decoded(words) ?? refuse(at, 'the text holds an & that stands for nothing known'));
  });
  return pieces.join('');
}

/** Reads the bytes of an XML file into a tree. The text stays where it is: tables of numbers are long. */
export function parseXml(bytes: Uint8Array, refuse: Refuse): Element {
  return new XmlParser(bytes, refuse).document();
}

class XmlParser {
  private at = 0;
  private elements = 0;
  private root: Element | undefined;
  private readonly open: Element[] = [];

  constructor(
    private readonly bytes: Uint8Array,
    private readonly refuse: Refuse,
  ) {}

  document(): Element {
    if (startsWith(this.bytes, 0, Uint8Array.of(0xef, 0xbb, 0xbf))) this.at = 3;
    while (this.at < this.bytes.length) this.next();
    const left = this.open.at(-1);
    if (left) this.refuse(this.bytes.length, `the file ends inside of ${left.name}`);
    return this.root ?? this.refuse(this.bytes.length, 'the file holds no XML');
  }

  /** Text up to the next tag, then what begins there. */
  private next(): void {
    const { bytes } = this;
    const tag = bytes.indexOf(openTag, this.at);
    const end = tag < 0 ? bytes.length : tag;
    this.addText(this.at, end, false);
    this.at = end;
    if (tag < 0) return;
    if (startsWith(bytes, tag, marks.comment)) this.at = this.after(marks.commentEnd, tag + 4, 'a comment');
    else if (startsWith(bytes, tag, marks.data)) this.data(tag + marks.data.length);
    else if (bytes[tag + 1] === question) this.instruction(tag);
    else if (bytes[tag + 1] === bang) this.refuse(tag, 'a document type is not read', 'Take the line out.');
    else if (bytes[tag + 1] === slash) this.closing(tag);
    else this.opening(tag);
  }

  private after(mark: Uint8Array, from: number, what: string): number {
    const end = indexOf(this.bytes, mark, from);
    if (end < 0) this.refuse(from, `${what} does not end`);
    return end + mark.length;
  }

  private data(start: number): void {
    this.at = this.after(marks.dataEnd, start, 'a CDATA section');
    this.addText(start, this.at - marks.dataEnd.length, true);
  }

  private instruction(tag: number): void {
    this.at = this.after(instructionEnd, tag, 'a processing instruction');
    const text = latinText(this.bytes, tag, Math.min(this.at, tag + 200));
    const [, encoding] = /encoding\s*=\s*["']([^"']*)/.exec(text) ?? [];
    if (encoding !== undefined && !/^(utf-8|us-ascii|ascii)$/i.test(encoding))
      this.refuse(tag, 'the file is not in UTF-8', 'Save it in UTF-8.');
  }

  private addText(start: number, end: number, raw: boolean): void {
    const into = this.open.at(-1);
    if (into) {
      if (end > start) into.text.push({ start, end, raw });
      return;
    }
    for (let i = start; i < end; i++)
      if (!isSpace(this.bytes[i])) this.refuse(i, 'this is no XML, so no Common LUT Format file');
  }

  /** The words of a tag without its brackets. */
  private tagText(tag: number, from: number): string {
    const end = this.bytes.indexOf(closeTag, from);
    if (end < 0 || end - from > most.tagBytes) this.refuse(tag, 'a tag does not end');
    this.at = end + 1;
    return utf8Text(this.bytes, from, end) ?? this.refuse(tag, 'the tag is not UTF-8');
  }

  private closing(tag: number): void {
    const name = localName(this.tagText(tag, tag + 2).trim());
    const last = this.open.pop();
    if (last?.name !== name) this.refuse(tag, 'a closing tag stands where none belongs to it');
  }

  private opening(tag: number): void {
    let text = this.tagText(tag, tag + 1);
    const empty = text.endsWith('/');
    if (empty) text = text.slice(0, -1);
    const [whole, name] = /^([A-Za-z_][\w.:-]*)(?=\s|$)/.exec(text) ?? this.refuse(tag, 'a tag has no name');
    const attributes = this.attributes(text.slice(whole.length), tag);
    const element: Element = { name: localName(name), attributes, children: [], text: [], at: tag };
    this.place(element, tag);
    if (!empty) this.open.push(element);
    if (this.open.length > most.depth) this.refuse(tag, 'elements are nested too deeply');
  }

  private place(element: Element, tag: number): void {
    if (++this.elements > most.elements) this.refuse(tag, `there are more than ${most.elements} elements`);
    const parent = this.open.at(-1);
    if (parent) parent.children.push(element);
    else if (this.root) this.refuse(tag, 'something follows the end of the file’s one element');
    else this.root = element;
  }

  private attributes(text: string, tag: number): Map<string, string> {
    const found = new Map<string, string>();
    let rest = text.trim();
    while (rest !== '') {
      const [whole, name, , double, single] =
        /^([A-Za-z_][\w.:-]*)\s*=\s*("([^"<]*)"|'([^'<]*)')(?=\s|$)/.exec(rest) ??
        this.refuse(tag, 'an attribute of the tag cannot be read');
      const value = decoded(double ?? single ?? '');
      if (value === undefined || found.has(name) || found.size >= most.attributes)
        return this.refuse(tag, `the attribute ${name} cannot be read, or stands there twice`);
      found.set(name, value);
      rest = rest.slice(whole.length).trim();
    }
    return found;
  }
}

const localName = (name: string): string => name.slice(name.indexOf(':') + 1);
