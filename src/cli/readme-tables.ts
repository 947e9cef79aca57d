import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type FieldRow, fieldRows } from '../look/field-table.js';
import { readLook } from '../look/read-look.js';
import { checks } from '../lut/checks/index.js';
import { packageFolder } from './maker.js';

const cell = (text: string) => text.replaceAll('|', '\\|');

function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) => `| ${cells.map(cell).join(' | ')} |`;
  return [line(head), `|${' --- |'.repeat(head.length)}`, ...rows.map(line)].join('\n');
}

const code = (text: string | undefined) => (text === undefined ? '' : `\`${text}\``);

const fieldTable = () =>
  table(
    ['field', 'what it is', 'allowed', 'left out'],
    fieldRows().map(({ field, meaning, allowed, initial }: FieldRow) => [
      code(field),
      meaning,
      allowed,
      code(initial),
    ]),
  );

function lookTable(): string {
  const folder = join(packageFolder, 'looks');
  const rows = readdirSync(folder)
    .sort()
    .map((file) => {
      const look = readLook(readFileSync(join(folder, file), 'utf8'), file);
      return [`[\`${file}\`](looks/${file})`, look.name, look.note];
    });
  return table(['file', 'look', 'what it is for'], rows);
}

const checkTable = () =>
  table(
    ['check', 'what it asks'],
    Object.entries(checks).map(([name, { question }]) => [name, question]),
  );

/** The tables by the name in their opening marker. */
const tables: Readonly<Record<string, () => string>> = {
  fields: fieldTable,
  looks: lookTable,
  checks: checkTable,
};

/** README.md with every table made anew. */
export function remakeTables(readme: string): string {
  return readme.replace(
    /(<!-- table of (\w+): npm run docs -->\n)[^]*?(<!-- end of table -->)/g,
    (_, open: string, name: string, close: string) => `${open}\n${tables[name]()}\n\n${close}`,
  );
}
