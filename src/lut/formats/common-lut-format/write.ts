import { isUnitDomain, type Lut } from '../../lattice.js';
import { asciiText, latinText } from '../cube/text.js';
import { decimalRows } from '../decimal-rows.js';
import { limits } from '../limits.js';
import type { WriteOptions } from '../lut-format.js';
import { turned } from './nodes/lut3d.js';

const escapes: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
const escaped = (text: string): string => asciiText(text).replace(/[&<>"]/g, (sign) => escapes[sign]);

/** A name for the content: FNV-1a (Fowler, Noll and Vo) over 32 bits of the table's text. */
function contentName(rows: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < rows.length; i++) hash = Math.imul(hash ^ rows.charCodeAt(i), 0x01000193) >>> 0;
  return `lut-${rows.length}-${hash.toString(16).padStart(8, '0')}`;
}

/** A scale in front of the table, for a domain other than 0..1. */
function domainNode(lut: Lut): string {
  if (isUnitDomain(lut)) return '';
  const rows = [0, 1, 2].map((c) => {
    const scale = 1 / (lut.domainMax[c] - lut.domainMin[c]);
    const row = [0, 0, 0, -lut.domainMin[c] * scale + 0];
    row[c] = scale;
    return `${row.join(' ')}\n`;
  });
  return node('Matrix', '', `<Array dim="3 4">\n${rows.join('')}</Array>`);
}

const node = (name: string, more: string, inside: string): string =>
  `  <${name} inBitDepth="32f" outBitDepth="32f"${more}>\n${inside}\n  </${name}>\n`;

function tableNode({ kind, size }: Lut, rows: string): string {
  if (kind === '1d')
    return node('LUT1D', ' interpolation="linear"', `<Array dim="${size} 3">\n${rows}</Array>`);
  const dim = `${size} ${size} ${size} 3`;
  return node('LUT3D', ' interpolation="tetrahedral"', `<Array dim="${dim}">\n${rows}</Array>`);
}

function description([key, value]: readonly [string, string]): string {
  const name = asciiText(key).replaceAll(':', ' ').trim() || 'note';
  return `  <Description>${escaped(`${name}: ${value}`)}</Description>\n`;
}

/**
 * A LUT as a Common LUT Format file (S-2014-006, CLF v3.0; SMPTE ST 2136-1:2024): one LUT3D, blue fastest, or one
 * LUT1D, with a Matrix before it where the domain is not 0..1. Comments become Descriptions; ASCII throughout.
 * @throws RangeError for a table with a value that is not finite, and for decimals beyond 6..15
 */
export function writeCommonLutFormat(lut: Lut, options: WriteOptions = {}): string {
  const { title = '', comments = [], plain = false, decimals = limits.decimals.least } = options;
  if (!(Number.isInteger(decimals) && decimals >= limits.decimals.least && decimals <= limits.decimals.most))
    throw new RangeError(`${decimals} decimals, not ${limits.decimals.least} to ${limits.decimals.most}`);
  const rows = latinText(
    decimalRows(lut.kind === '3d' ? turned(lut.values, lut.size) : lut.values, decimals),
  );
  const name = plain || asciiText(title) === '' ? '' : ` name="${escaped(title)}"`;
  return [
    '<?xml version="1.0" encoding="UTF-8"?>\n',
    `<ProcessList xmlns="${namespace}" compCLFversion="3.0" id="${contentName(rows)}"${name}>\n`,
    ...(plain ? [] : comments.map(description)),
    domainNode(lut),
    tableNode(lut, rows),
    '</ProcessList>\n',
  ].join('');
}

const namespace = 'http://www.smpte-ra.org/ns/2136-1/2024';
