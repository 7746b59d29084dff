import { basename } from 'node:path';
import { parse } from 'yaml';
import { quickTableFile } from '../../src/site/quick-table-file.ts';
import { quickTable, type QuickTable } from '../../src/site/quick-table.ts';
import { textOf } from './content.ts';
import { filesUnder } from './files.ts';
import { recordOf } from './records.ts';

/** A file of content/tables, worked out as the build does it. */
export const tableOf = (id: string, change: Readonly<Record<string, unknown>> = {}): QuickTable => {
  const data = quickTableFile.parse({
    ...(parse(textOf(`content/tables/${id}.yaml`)) as object),
    ...change,
  });
  return quickTable(id, data, recordOf(data.formula));
};

let all: readonly QuickTable[] | undefined;
export const readTables = (): readonly QuickTable[] =>
  (all ??= filesUnder('content/tables').map((file) => tableOf(basename(file, '.yaml'))));

/** Parts of an inch, from one eighth up. */
const EIGHTHS = ['⅛', '¼', '⅜', '½', '⅝', '¾', '⅞'];

/** A number as a cell writes it: 1.02, −0.5, 22 300, f/5.6, 1/4.43, 7′ 3½″. Undefined for words. */
export const numberOf = (text: string): number | undefined => {
  const feet = /^(−)?(?:(\d+)′)?[\s\u00a0]*(?:([\d.]+)?([½¼¾⅛⅜⅝⅞])?″)?$/.exec(text);
  if (feet && /[′″]/.test(text)) {
    const [, sign, whole = '0', inches = '0', part = ''] = feet;
    const size = Number(whole) + (Number(inches) + (EIGHTHS.indexOf(part) + 1) / 8) / 12;
    return sign ? -size : size;
  }
  const plain = text
    .replace('−', '-')
    .replaceAll(/[\u202f\u00a0]/g, '')
    .replace('f/', '');
  if (plain === '∞') return Infinity;
  const [over = '', under = '1'] = plain.split('/');
  const x = Number(over) / Number(under);
  return over === '' || Number.isNaN(x) ? undefined : x;
};
