import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csv, MARK, type CsvForm } from '../../src/tabulate/csv.ts';

const comma: CsvForm = { separator: ',', decimal: 'point' };
const semicolon: CsvForm = { separator: ';', decimal: 'comma' };
const back = (text: string, { separator }: CsvForm): string[][] =>
  parse(text, { delimiter: separator, bom: true, relax_column_count: true });

describe.each([comma, semicolon])('a file parted by “$separator”', (form) => {
  it('is read back by another’s parser as it was, whatever stands in a cell', () => {
    const text = fc
      .oneof(
        fc.string({ unit: 'grapheme', maxLength: 12 }),
        fc.string({
          unit: fc.constantFrom('"', ',', ';', '\n', '\r', ' ', 'a', '°'),
          maxLength: 8,
        }),
      )
      // What is guarded or taken for a number has tests of its own.
      .filter((one) => !/^[=+\-@\t\r＝＋－＠]|^[-−]?[\d∞]/.test(one));
    const row = fc.array(text, { minLength: 2, maxLength: 5 });
    fc.assert(
      fc.property(fc.array(row, { minLength: 1, maxLength: 5 }), (rows) => {
        expect(back(csv(rows, form), form)).toEqual(rows);
        expect(back(MARK + csv(rows, form), form)).toEqual(rows);
      }),
    );
  });

  it('keeps every number to its last digit, negative ones too', () => {
    const number = fc.double({ noNaN: true, noDefaultInfinity: true });
    fc.assert(
      fc.property(fc.array(number, { minLength: 2, maxLength: 6 }), (row) => {
        const [read = []] = back(csv([row], form), form);
        expect(read.map((one) => Number(one.replace(',', '.')))).toEqual(
          row.map((x) => (Object.is(x, -0) ? 0 : x)),
        );
      }),
    );
  });

  it('ends every line, the last one too, with CR LF', () => {
    expect(
      csv(
        [
          ['a', 'b'],
          [1, 2],
        ],
        form,
      ),
    ).toBe(`a${form.separator}b\r\n1${form.separator}2\r\n`);
    expect(csv([], form)).toBe('');
  });
});

it('writes each form’s own mark and quotes what holds a separator', () => {
  const rows = [
    ['f, mm', 'a "b"; c'],
    [-0.71, 2.21],
  ];
  expect(csv(rows, comma)).toBe('"f, mm","a ""b""; c"\r\n-0.71,2.21\r\n');
  expect(csv(rows, semicolon)).toBe('f, mm;"a ""b""; c"\r\n-0,71;2,21\r\n');
  // A decimal comma would be a separator of the other form; only a number's point is ever changed.
  expect(csv([['1.5 m', '1/200 s']], semicolon)).toBe('1.5 m;1/200 s\r\n');
});

it('lets no text be computed by a spreadsheet', () => {
  for (const risky of ['=1+1', '+1 1/3 stops', '-x', '@a', '\tb', '\rc', '＝1', '-1+cmd', '－2'])
    expect(back(csv([[risky, 'x']], comma), comma)).toEqual([[`'${risky}`, 'x']]);
});

it('does no harm to negative numbers, whichever minus they came with', () => {
  expect(csv([[-3, '-3', '−0.25', '-1e-7', -Infinity, Infinity, -0]], comma)).toBe(
    '-3,-3,-0.25,-1e-7,−∞,∞,0\r\n',
  );
  expect(csv([['−0.25', 'z']], semicolon)).toBe('-0,25;z\r\n');
  // A quantity in words stays as it reads.
  expect(csv([['−0.71 stops', 'z']], comma)).toBe('−0.71 stops,z\r\n');
});

it('writes no number that is none', () => {
  expect(() => csv([[Number.NaN]], comma)).toThrow(/none/);
});
