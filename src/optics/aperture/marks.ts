import table from '../../../shared/tables/f-number-marks.json' with { type: 'json' };
import type { FNumber, Time } from '../../formula/quantities.ts';
import type { ChoiceInput } from '../../formula/record.ts';

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

/** A mark as engraved, and the f-number it stands for. */
export interface Mark {
  readonly mark: FNumber;
  readonly exact: FNumber;
}

/**
 * The nearest mark of a series to an f-number, in stops.
 *
 * Model: exact marks are powers of 2; what is engraved is a convention and is looked up, never rounded.
 * Valid: any N above 0; beyond the ends of the series its last mark is taken.
 * Source: see the table.
 * @example nearestMark(5.6, 'third') // { mark: 5.6, exact: 5.656854… }
 */
export const nearestMark = (N: number, series: 'full' | 'half' | 'third'): Mark => {
  const { first, per, marks: engraved } = table[series];
  const place = Math.min(engraved.length - 1, Math.max(0, Math.round(per * Math.log2(N)) - first));
  return { mark: engraved[place] as FNumber, exact: (2 ** ((place + first) / per)) as FNumber };
};

/** Every third-stop mark, widest first. */
export const thirdMarks: readonly Mark[] = table.third.marks.map((mark, place) => ({
  mark: mark as FNumber,
  exact: (2 ** ((place + table.third.first) / table.third.per)) as FNumber,
}));

/** The exact value behind the nearest third-stop mark. */
export const exactOf = (N: number): FNumber => nearestMark(N, 'third').exact;

/** The setting in the reader's chosen sense. */
export const marked = (N: FNumber, mode: Marks): FNumber => (mode === 'exact' ? exactOf(N) : N);

/** The exact time behind the nearest third-stop shutter mark: 1/125 s is 1/128 s. */
export const exactTime = (t: Time): Time => (2 ** (Math.round(3 * Math.log2(t)) / 3)) as Time;
