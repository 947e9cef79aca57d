import { InputError } from '../../../errors/input-error.js';
import { nearestName } from '../../../errors/nearest-name.js';
import { printable, quoted } from '../cube/text.js';
import { limits } from '../limits.js';
import type { LutFile, LutReader } from '../lut-format.js';
import { bitDepths } from './node.js';
import type { NodeKind, Step } from './node.js';
import { nodes } from './nodes/index.js';
import { oneLut } from './one-lut.js';
import type { Element, Refuse } from './xml.js';
import { parseXml, textOf } from './xml.js';

/** Bytes of the largest file that is read: 129 points a side with ten decimals. Ours. */
const mostBytes = 128 * 1024 * 1024;
/** Process nodes of a file. Ours. */
const mostNodes = 64;
/** Children of the process list that describe, and do nothing. */
const describing = ['Description', 'InputDescriptor', 'OutputDescriptor', 'Info'];

/**
 * A reader of Common LUT Format files (S-2014-006, CLF v3.0; SMPTE ST 2136-1:2024): process lists of LUT3D, LUT1D,
 * Matrix, Range, Log, Exponent and ASC_CDL nodes, as one LUT. It keeps the bytes, at most 128 MiB, until the end.
 * @param file the name that problems are reported under
 * @throws InputError (from `write` and `end`) with the line, for whatever is wrong or not read
 */
export function createCommonLutFormatReader(file: string): LutReader {
  const chunks: Uint8Array[] = [];
  let length = 0;
  return {
    write(chunk) {
      length += chunk.length;
      if (length > mostBytes)
        throw new InputError({ file, what: `the file is larger than ${mostBytes} bytes` });
      chunks.push(chunk.slice());
    },
    end: () => readProcessList(joined(chunks, length), file),
  };
}

function joined(chunks: readonly Uint8Array[], length: number): Uint8Array {
  const bytes = new Uint8Array(length);
  let at = 0;
  for (const chunk of chunks) {
    bytes.set(chunk, at);
    at += chunk.length;
  }
  return bytes;
}

/** Lines are counted only when something is wrong. */
function lineAt(bytes: Uint8Array, at: number): number {
  let line = 1;
  for (let i = bytes.indexOf(lineFeed); i >= 0 && i < at; i = bytes.indexOf(lineFeed, i + 1)) line++;
  return line;
}

const lineFeed = 10;

interface ProcessList {
  readonly list: Element;
  readonly steps: Step[];
  readonly refuse: Refuse;
}

function parseProcessList(bytes: Uint8Array, file: string): ProcessList {
  const refuse: Refuse = (at, what, hint) => {
    throw new InputError({ file, line: lineAt(bytes, at), what, ...(hint === undefined ? {} : { hint }) });
  };
  if (bytes.length === 0) refuse(0, 'the file is empty');
  const list = parseXml(bytes, refuse);
  if (list.name !== 'ProcessList') refuse(list.at, 'this is no ProcessList, so no Common LUT Format file');
  requireVersion(list, refuse);
  return { list, steps: stepsOf(list, bytes, refuse), refuse };
}

/** The process nodes of a file one by one, each as the file says. @throws InputError with the line */
export function readProcessNodes(bytes: Uint8Array, file: string): readonly Step[] {
  return parseProcessList(bytes, file).steps;
}

function readProcessList(bytes: Uint8Array, file: string): LutFile {
  const { list, steps, refuse } = parseProcessList(bytes, file);
  const { lut, notes } = oneLut(steps);
  if (!lut.values.every(Number.isFinite))
    refuse(list.at, 'the nodes together give what is not a finite number');
  const title = printable(list.attributes.get('name') ?? '').trim();
  return {
    lut,
    ...(title === '' ? {} : { title }),
    comments: commentsOf(list, bytes, refuse),
    notes,
  };
}

function requireVersion({ attributes, at }: Element, refuse: Refuse): void {
  const version = attributes.get('compCLFversion') ?? refuse(at, 'the ProcessList says no compCLFversion');
  if (!/^[123](\.\d)?$/.test(version.trim()))
    refuse(at, `version ${quoted(version)} of the format is not read`);
}

function kindOf({ name, at }: Element, refuse: Refuse): NodeKind {
  if (Object.hasOwn(nodes, name)) return nodes[name as keyof typeof nodes];
  const near = nearestName(name, Object.keys(nodes));
  const hint =
    near === undefined ? `Nodes that are read: ${Object.keys(nodes).join(', ')}.` : `Did you mean "${near}"?`;
  return refuse(at, `the node ${quoted(name)} is not read`, hint);
}

function scaleOf({ attributes, at, name }: Element, attribute: string, refuse: Refuse): number {
  const depth = attributes.get(attribute) ?? refuse(at, `${name} says no ${attribute}`);
  if (Object.hasOwn(bitDepths, depth)) return bitDepths[depth as keyof typeof bitDepths];
  return refuse(
    at,
    `${attribute} ${quoted(depth)} is none`,
    `Bit depths: ${Object.keys(bitDepths).join(', ')}.`,
  );
}

/** The process nodes in their order; what one gives out the next must take in. */
function stepsOf(list: Element, bytes: Uint8Array, refuse: Refuse): Step[] {
  const elements = list.children.filter(({ name }) => !describing.includes(name));
  if (elements.length === 0) refuse(list.at, 'the ProcessList holds no process node');
  if (elements.length > mostNodes)
    refuse(elements[mostNodes].at, `there are more than ${mostNodes} process nodes`);
  let before: string | undefined;
  return elements.map((element) => {
    const kind = kindOf(element, refuse);
    const [inScale, outScale] = ['inBitDepth', 'outBitDepth'].map((name) => scaleOf(element, name, refuse));
    const takes = element.attributes.get('inBitDepth');
    if (before !== undefined && takes !== before)
      refuse(element.at, `${element.name} takes ${takes}, but the node before it gives ${before}`);
    before = element.attributes.get('outBitDepth');
    return kind({ bytes, element, refuse, inScale, outScale });
  });
}

/** Descriptions of the form `key: value`. */
function commentsOf(list: Element, bytes: Uint8Array, refuse: Refuse): [string, string][] {
  const found: [string, string][] = [];
  for (const element of list.children) {
    const short = element.text.every(({ start, end }) => end - start <= limits.textLineBytes);
    if (element.name !== 'Description' || !short) continue;
    const text = printable(textOf(bytes, element, refuse)).trim();
    const colon = text.search(/:(\s|$)/);
    if (colon > 0 && found.length < limits.keptComments)
      found.push([text.slice(0, colon).trim(), text.slice(colon + 1).trim()]);
  }
  return found;
}
