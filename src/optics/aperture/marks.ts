import table from '../../../shared/tables/f-number-marks.json' with { type: 'json' };
import type { FNumber } from '../../formula/quantities.ts';
import type { ChoiceInput, QuantityInput } from '../../formula/record.ts';
import { start } from '../harbour.ts';

export type Marks = 'typed' | 'exact';

/** Whether a setting means the number typed, or the exact value its mark stands for (f/5.6 is 5.657). */
export const marks: ChoiceInput<Marks> = {
  name: 'marks',
  choices: { typed: 'typed', exact: 'exact' },
  labels: { typed: 'as typed', exact: 'exact value of the nearest mark' },
  start: 'typed',
  default: 'typed',
  means: 'whether f/5.6 means 5.6, or the exact 5.657 its mark stands for',
};

export const fNumberInput = {
  name: 'f-number',
  tex: 'N',
  unit: 'f/',
  range: [0.5, 256],
  span: [1.4, 22],
  start: start('f-number'),
  series: [1.4, 2, 2.8, 4, 5.6, 8, 11],
  means: 'the f-number set on the lens: focal length over the diameter of the entrance pupil',
} as const satisfies QuantityInput;

/**
 * The exact value of the nearest third-stop mark, 2^(n/6).
 *
 * Model: marks are a convention and are looked up, never rounded; nearest by ratio.
 * Valid: any N above 0; beyond the marked ends the last mark is taken.
 * Source: see the table.
 * @example exactOf(5.6) // 5.656854…
 */
export const exactOf = (N: number): number => {
  let best = 0;
  table.third.forEach((mark, i) => {
    if (Math.abs(Math.log(mark / N)) < Math.abs(Math.log((table.third[best] ?? mark) / N)))
      best = i;
  });
  return 2 ** ((best + table.first) / 6);
};

/** The setting in the reader's chosen sense. */
export const marked = (N: FNumber, mode: Marks): FNumber =>
  mode === 'exact' ? (exactOf(N) as FNumber) : N;
