import { describe, expect, it } from 'vitest';
import { InputError } from '../../src/formula/errors.ts';
import { complete, readInput, writeInput } from '../../src/formula/read.ts';
import type { ChoiceInput, Formula, QuantityInput } from '../../src/formula/record.ts';
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
