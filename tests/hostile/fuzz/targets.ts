import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { readReelLog } from '../../../src/files/reel-log.js';
import { compileLook } from '../../../src/look/compile-look.js';
import { readLampFile } from '../../../src/look/lamp-file.js';
import { readLook } from '../../../src/look/read-look.js';
import { lutFormats } from '../../../src/lut/formats/index.js';
import type { LutFormat } from '../../../src/lut/formats/lut-format.js';
import type { Picture } from '../../../src/picture/picture.js';
import { decodeStill } from '../../../src/stills/read-still.js';

/** A reader that takes files from anywhere. */
export interface Target {
  /** Files it reads: all are good. */
  readonly corpus: string;
  /** Those of them it is given; all when left out. */
  readonly names?: RegExp;
  /** Words of its format. */
  readonly words: readonly string[];
  /** Runs compared with the others': a decoder of pictures is slower than a reader of lines. */
  readonly effort: number;
  /** Reads the bytes, and says what is wrong with what it made of them; undefined when nothing is. */
  readonly amiss: (bytes: Uint8Array) => Promise<string | undefined> | string | undefined;
}

const allFinite = (values: Float64Array) =>
  values.every(Number.isFinite) ? undefined : 'a value is not finite';

function amissInLut(format: LutFormat, bytes: Uint8Array): string | undefined {
  const reader = format.createReader('found');
  for (let at = 0; at < bytes.length; at += 1000) reader.write(bytes.subarray(at, at + 1000));
  const { lut, title = '', comments } = reader.end();
  const rows = lut.kind === '3d' ? lut.size ** 3 : lut.size;
  if (lut.values.length !== 3 * rows) return `${lut.values.length} values for ${rows} rows`;
  if (/\p{Cc}/u.test(title + comments.flat().join(''))) return 'a text would move a terminal';
  return allFinite(lut.values);
}

/** A text that may be broken bytes, as the file layer refuses or decodes it. */
const textOf = (bytes: Uint8Array) => new TextDecoder('utf-8').decode(bytes);

const greysOf = () => Float64Array.from({ length: 33 }, (_, i) => Math.floor(i / 3) / 10);

function amissInLook(bytes: Uint8Array): string | undefined {
  const look = readLook(textOf(bytes), 'found');
  const greys = greysOf();
  compileLook(look)(greys, 11);
  return allFinite(greys);
}

function amissInPicture({ width, height, channels, data }: Picture): string | undefined {
  return data.length === width * height * channels ? undefined : `${data.length} codes`;
}

type PageDecoder = (bytes: Uint8Array, file: string) => Promise<Picture>;

/** The page's own decoder of PNG and TIFF. By its path: it is compiled for a browser, with the browser's types. */
const pageDecoder = resolve(import.meta.dirname, '../../../src/page/worker/decode-still.ts');
const { decodeStill: decodeInPage } = (await import(pageDecoder)) as { decodeStill: PageDecoder };

async function amissInLog(bytes: Uint8Array): Promise<string | undefined> {
  const folder = mkdtempSync(join(tmpdir(), 'gatelight-test-'));
  try {
    writeFileSync(join(folder, 'found'), bytes);
    const { entries } = await readReelLog(join(folder, 'found'));
    return entries.every(({ reel, recordedAt }) => reel !== '' && !Number.isNaN(Date.parse(recordedAt)))
      ? undefined
      : 'a record without label or time';
  } finally {
    rmSync(folder, { recursive: true });
  }
}

const pictureWords = [
  'IHDR',
  'IDAT',
  'IEND',
  'acTL',
  'iCCP',
  'PLTE',
  'tRNS',
  '\u0089PNG\r\n\u001a\n',
  'II*\0',
  'MM\0*',
  'Exif\0\0',
];

export const targets = {
  cube: {
    corpus: 'cube',
    words: [
      'TITLE "',
      'LUT_3D_SIZE 256\n',
      'LUT_1D_SIZE 65536\n',
      'DOMAIN_MIN ',
      'DOMAIN_MAX ',
      '0 0 0\n',
      '# a: b\n',
    ],
    effort: 1,
    amiss: (bytes) => amissInLut(lutFormats.cube, bytes),
  },
  'common LUT format': {
    corpus: 'clf',
    words: [
      '<Array dim="65 65 65 3">',
      '</Array>',
      '<LUT1D ',
      'inBitDepth="16i"',
      '<!--',
      '<![CDATA[',
      '&#0;',
      '/>',
      ' style="linToLog"',
      'base="0"',
      '<Exponent style="monCurveRev" ',
      '<ASC_CDL style="Rev" ',
      ' exponent="0"',
    ],
    effort: 1,
    amiss: (bytes) => amissInLut(lutFormats.commonLutFormat, bytes),
  },
  look: {
    corpus: 'look',
    words: [
      '"stock":{',
      '"loss"',
      '"__proto__":',
      '1e308',
      '-1e308',
      'null',
      '[[[[',
      '"encoding":"pq"',
      '"kelvin":1',
    ],
    effort: 1,
    amiss: amissInLook,
  },
  'lamp file': {
    corpus: 'lamp',
    words: ['380,', ',', ';', '1e400', '-1', '\t', '#', '5000,1\n'],
    effort: 1,
    amiss: (bytes) => {
      readLampFile(textOf(bytes), 'found');
      return undefined;
    },
  },
  still: {
    corpus: 'still',
    words: pictureWords,
    effort: 0.25,
    amiss: async (bytes) => amissInPicture((await decodeStill(bytes, 'found')).picture),
  },
  'still in the page': {
    corpus: 'still',
    names: /\.(png|tif)$/,
    words: pictureWords,
    effort: 0.5,
    amiss: async (bytes) => amissInPicture(await decodeInPage(bytes, 'found')),
  },
  'reel log': {
    corpus: 'log',
    words: ['{"version":1,', '"reel":"', '"recordedAt":', '}\n', '\n\n', '"sha256":"', '\\ud800', '9e99'],
    effort: 0.5,
    amiss: amissInLog,
  },
} satisfies Record<string, Target>;

const folder = join(import.meta.dirname, '../corpus');

/** The good files of a target by their names. */
export const corpusOf = ({ corpus, names = /./ }: Target): [name: string, bytes: Uint8Array][] =>
  readdirSync(join(folder, corpus))
    .filter((name) => names.test(name))
    .sort()
    .map((name) => [name, new Uint8Array(readFileSync(join(folder, corpus, name)))]);
