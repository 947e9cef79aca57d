import { nearestName } from '../../../errors/nearest-name.js';
import type { Triple } from '../../../maths/matrix3.js';
import { isDomain, ones, zeros, type Lut } from '../../lattice.js';
import { limits } from '../limits.js';
import type { Fault } from './explain-row.js';
import { tripleFault, words } from './explain-row.js';
import { printable, quoted } from './text.js';

/** Ends reading with a fault of the line being read. */
export type Refuse = (fault: Fault) => never;

/** What the keywords of a file say. */
export interface CubeHeader {
  kind?: Lut['kind'];
  size: number;
  title?: string;
  domainMin?: Triple;
  domainMax?: Triple;
}

type Keyword = (header: CubeHeader, rest: string, refuse: Refuse) => void;

/** Every keyword of the format, and how what follows it is taken up. Cube LUT Specification 1.0 (2013). */
const keywords = {
  TITLE: takeTitle,
  LUT_1D_SIZE: (header, rest, refuse) => takeSize(header, '1d', rest, refuse),
  LUT_3D_SIZE: (header, rest, refuse) => takeSize(header, '3d', rest, refuse),
  DOMAIN_MIN: (header, rest, refuse) => {
    header.domainMin = takeTriple('DOMAIN_MIN', rest, refuse);
    if (header.domainMax) requireRisingDomain(header, refuse);
  },
  DOMAIN_MAX: (header, rest, refuse) => {
    header.domainMax = takeTriple('DOMAIN_MAX', rest, refuse);
    if (header.domainMin) requireRisingDomain(header, refuse);
  },
} satisfies Record<string, Keyword>;

export type KeywordName = keyof typeof keywords;

const names = Object.keys(keywords) as KeywordName[];

/** The keyword that a word is, capitals or not; refused when it is none. */
export function keywordOf(word: string, refuse: Refuse): KeywordName {
  const name = names.find((known) => known === word.toUpperCase());
  if (name) return name;
  const near = nearestName(word, names);
  return refuse({
    what: `${quoted(word)} is not a keyword of this format`,
    allowed: names.join(', '),
    ...(near && { hint: `Did you mean ${near}?` }),
  });
}

/** Takes up one keyword that was not there before. */
export function takeKeyword(header: CubeHeader, name: KeywordName, rest: string, refuse: Refuse): void {
  keywords[name](header, rest, refuse);
}

/** @throws through `refuse` unless the domain, defaults included, rises in every channel */
export function requireRisingDomain(
  { domainMin = zeros, domainMax = ones }: CubeHeader,
  refuse: Refuse,
): void {
  if (isDomain(domainMin, domainMax)) return;
  refuse({
    what: `the domain goes from ${domainMin.join(' ')} to ${domainMax.join(' ')}`,
    hint: 'DOMAIN_MIN must lie below DOMAIN_MAX in every channel.',
  });
}

function takeTitle(header: CubeHeader, rest: string, refuse: Refuse): void {
  const title = /^"([^"]*)"$/.exec(rest);
  if (!title)
    return refuse({ what: 'the title does not stand between two double quotes', allowed: 'TITLE "text"' });
  header.title = printable(title[1]);
}

function takeSize(header: CubeHeader, kind: Lut['kind'], rest: string, refuse: Refuse): void {
  if (header.kind)
    refuse({
      what: `a second size follows LUT_${header.kind.toUpperCase()}_SIZE`,
      allowed: 'one size in a file',
    });
  const { least, most } = kind === '3d' ? limits.latticeSize : limits.curveSize;
  const size = /^\+?\d+$/.test(rest) ? Number(rest) : NaN;
  if (!(size >= least && size <= most))
    refuse({
      what:
        rest === '' ? 'the size is missing' : `${quoted(rest)} is not a size of a ${kind.toUpperCase()} LUT`,
      allowed: `whole numbers from ${least} to ${most}`,
    });
  header.kind = kind;
  header.size = size;
}

function takeTriple(name: KeywordName, rest: string, refuse: Refuse): Triple {
  const given = words(rest);
  const fault = tripleFault(given, name);
  if (fault) return refuse(fault);
  const [r, g, b] = given.map(Number);
  return [r, g, b];
}
