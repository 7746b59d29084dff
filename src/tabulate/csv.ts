/** How a file is written: programmes whose numbers have a comma take the semicolon between fields. */
export interface CsvForm {
  readonly separator: ',' | ';';
  readonly decimal: 'point' | 'comma';
}

/** Put before a file, it tells spreadsheets that the text is Unicode; without it some spoil °, × and ′. */
export const MARK = '\ufeff';

/** Text that a spreadsheet would take for a formula, in full-width signs too. */
const RISKY = /^[=+\-@\t\r＝＋－＠]/;
/** Nothing but a number, whichever minus it was written with. */
const NUMBER = /^[-−]?\d+(?:\.\d+)?(?:e[+-]?\d+)?$/;

const number = (text: string, { decimal }: CsvForm): string => {
  const plain = text.replace('−', '-');
  return decimal === 'comma' ? plain.replace('.', ',') : plain;
};

const field = (cell: string | number, form: CsvForm): string => {
  // Spreadsheets know no infinity; the sign is at least read by people.
  const text = typeof cell === 'number' ? String(cell).replace('Infinity', '∞') : cell;
  if (Number.isNaN(cell)) throw new Error('A number for a file is none.');
  if (NUMBER.test(text)) return number(text, form);
  const safe = RISKY.test(text) && text !== '-∞' ? `'${text}` : text.replace('-∞', '−∞');
  return safe.includes(form.separator) || /["\r\n]/.test(safe)
    ? `"${safe.replaceAll('"', '""')}"`
    : safe;
};

/**
 * Writes rows as comma- or semicolon-separated values.
 *
 * Model: RFC 4180: lines end in CR LF, the last one too; a field that holds the separator, a quote or a line break
 * stands in quotes, and quotes inside it are doubled. Text that a spreadsheet would compute (=, +, -, @, tab or carriage
 * return first) gets an apostrophe before it; numbers never do, and their minus is the plain one.
 * Throws: Error for a number that is none.
 * @example csv([['focal length (mm)', 'distance (m)'], [85, 2.21]], { separator: ';', decimal: 'comma' })
 */
export const csv = (rows: readonly (readonly (string | number)[])[], form: CsvForm): string =>
  rows.map((row) => `${row.map((cell) => field(cell, form)).join(form.separator)}\r\n`).join('');
