import { describe, expect, it } from 'vitest';
import { AmbiguousError, InputError } from '../../src/formula/errors.ts';
import { complete, readInput, writeInput } from '../../src/formula/read.ts';
import type { ChoiceInput, Formula, QuantityInput } from '../../src/formula/record.ts';
import { expectClose } from '../support/close.ts';
import { recordOf } from '../support/records.ts';

const distance: QuantityInput = {
  name: 'subject distance',
  tex: 's',
  unit: 'm',
  range: [0, 10],
  start: 2,
  means: 'how far',
};
const row: QuantityInput = { ...distance, name: 'places', list: { min: 2, max: 3 } };
const colour: ChoiceInput<number> = {
  name: 'sheet colour',
  choices: { white: 1, grey: 0.18 },
  start: 'white',
  means: 'which',
};

/** What reading a text complains of, and the field it belongs to. */
const complaint = (read: () => unknown): { message: string; input: string | undefined } => {
  try {
    read();
  } catch (error) {
    if (error instanceof InputError) return { message: error.message, input: error.input };
    throw error;
  }
  throw new Error('nothing was complained of');
};

describe('a list of quantities', () => {
  it('is read from values parted by semicolons, and written back', () => {
    expect(readInput(row, '1 m; 250 cm')).toEqual([1, 2.5]);
    expect(readInput(row, '1;2;3')).toEqual([1, 2, 3]);
    expect(writeInput(row, [1, 2.5])).toBe('1 m; 2.5 m');
  });

  it.each([
    ['1 m', 1],
    ['1; 2; 3; 4', 4],
  ])('refuses %s: too few or too many', (text, count) => {
    expect(complaint(() => readInput(row, text))).toEqual({
      message: `Give 2 to 3 values of places, parted by semicolons; you gave ${count}.`,
      input: 'places',
    });
  });

  it('holds each value to the range', () => {
    expect(complaint(() => readInput(row, '1; 11')).message).toMatch(/between 0 m and 10 m/);
  });
});

describe('a choice', () => {
  it('that is not one says what there is and what was typed', () => {
    expect(complaint(() => readInput(colour, 'black'))).toEqual({
      message: 'Sheet colour must be one of white, grey; you typed black.',
      input: 'sheet-colour',
    });
    expect(complaint(() => readInput(colour, ' ')).message).toMatch(/; you typed nothing\.$/);
    expect(complaint(() => readInput(colour, 'q'.repeat(41))).message).toMatch(/typed q{40}\.$/);
  });

  it('that can be written out says how', () => {
    const { format } = recordOf('angle-of-view').inputs;
    if (!format) throw new Error('angle-of-view has no format');
    expect(complaint(() => readInput(format, '37')).message).toMatch(
      /, a size such as 30x20mm; you typed 37\.$/,
    );
  });

  it('is written by its id, and as nothing where it has none', () => {
    expect(writeInput(colour, 0.18)).toBe('grey');
    expect(writeInput(colour, 0.5)).toBe('');
  });
});

describe('a quantity', () => {
  it('in a field is asked about where it reads two ways, and in stored text is not', () => {
    const far = { ...distance, range: [0, 1e5] } as const;
    expect(() => readInput(far, '3.145')).toThrow(AmbiguousError);
    expect(readInput(far, '3.145 m', { stored: true })).toBe(3.145);
  });

  it('takes the unit a field shows, else its own; stored it must name one', () => {
    expect(readInput(distance, '2')).toBe(2);
    expectClose(readInput(distance, '2', { unit: 'cm' }) as number, 0.02);
    expect(complaint(() => readInput(distance, '2', { stored: true }))).toEqual({
      message: 'Subject distance must be between 0 m and 10 m; “2” has no unit. Try 2 m.',
      input: 'subject-distance',
    });
  });
});

describe('what is left out', () => {
  const formula = (inputs: Formula['inputs']): Formula => ({ ...recordOf('perspective'), inputs });

  it('takes its default, which a record writes in the input’s own unit', () => {
    const all = complete(formula({ x: { ...distance, unit: 'cm', default: 50 } }), {});
    expectClose(all['x'] as number, 0.5);
    expect(complete(formula({ x: { ...colour, default: 'grey' } }), {})).toEqual({ x: 0.18 });
  });

  it('is worked out from the others and their defaults where the record says how', () => {
    const twice = formula({
      y: { ...distance, name: 'double', default: ({ x }) => 2 * (x as number) },
      x: { ...distance, default: 3 },
    });
    expect(complete(twice, {})).toEqual({ x: 3, y: 6 });
    expect(complete(twice, { x: 4 })).toEqual({ x: 4, y: 8 });
    expect(complete(twice, { x: 4, y: 1 })).toEqual({ x: 4, y: 1 });
  });

  it('is asked for by name where it has no default, and stays out where it is optional', () => {
    expect(complaint(() => complete(formula({ x: distance }), {}))).toEqual({
      message: 'perspective needs subject-distance: how far',
      input: 'subject-distance',
    });
    expect(complete(formula({ x: { ...distance, optional: true } }), {})).toEqual({});
  });
});
