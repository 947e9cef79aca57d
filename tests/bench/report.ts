import { cells, type Figure, headings } from './figures.js';

/** A part's title and figures. */
export interface Measured {
  readonly title: string;
  readonly figures: readonly Figure[];
}

/** Lines in columns, for a terminal. */
export function plainTable({ title, figures }: Measured): string {
  const lines = [[...headings], ...figures.map(cells)];
  const widths = headings.map((_, column) => Math.max(...lines.map((line) => line[column].length)));
  const text = lines.map((line) =>
    line
      .map((cell, column) => cell.padEnd(widths[column]))
      .join('  ')
      .trimEnd(),
  );
  return [title, ...text.map((line) => `  ${line}`), ''].join('\n');
}

const markdownRow = (words: readonly string[]) => `| ${words.join(' | ')} |`;

function markdownTable({ title, figures }: Measured): string {
  const rows = [headings, headings.map(() => '---'), ...figures.map(cells)];
  return [`## ${title}`, '', ...rows.map(markdownRow), ''].join('\n');
}

const explanation = `Made by \`npm run bench\`. Everything was measured in one session, the contenders in turn (A B A B), and a ratio is the
median of the ratios of each round. Processor time is user and system time of the process, so that other programs count
less; figures of two threads and of whole folders are time that passes. While others keep the machine busy, times grow by a
fifth and more; ratios change less.

ffmpeg is given one raw frame in memory, which its chain of filters repeats: what a run of several frames takes more than
a run of one is lut3d's own, its reading of the LUT not counted.
OpenColorIO is called through its Python binding, picture to picture in memory.
`;

/** The whole as a file. */
export function markdownReport(machine: readonly string[], parts: readonly Measured[], date: string): string {
  const lines = [`Measured on ${date}.`, ...machine].map((line) => `- ${line}`);
  return ['# How fast', '', ...lines, '', explanation, ...parts.map(markdownTable)].join('\n');
}
