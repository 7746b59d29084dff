import { InputError } from '../../formula/errors.ts';
import { as, type Length } from '../../formula/quantities.ts';
import { writeNumber } from '../../formula/notation/write.ts';
import type { ChoiceInput, Given, QuantityInput } from '../../formula/record.ts';
import { imageDistance } from './thin-lens.ts';

export type From = 'lens' | 'sensor';

/** Where a distance is counted from. Formulas count from the lens, focusing scales and makers' tables from the sensor. */
export const measuredFrom: ChoiceInput<From> = {
  name: 'measured from',
  choices: { lens: 'lens', sensor: 'sensor' },
  labels: { lens: 'the lens (its front principal plane)', sensor: 'the sensor' },
  start: 'lens',
  default: 'lens',
  means:
    'where the subject distance is counted from: the lens’s front principal plane, or the sensor',
};

/**
 * The subject's distance from the lens when D is counted from the sensor, by solving D = f(2 + m + 1/m).
 *
 * Model: thin lens; of the two focusing positions the one with the subject farther off. Valid: D ≥ 4f, or infinite.
 * Throws: InputError for D < 4f, where no lens position is in focus.
 * @example as(lensToSubject({ f: mm(50), D: m(0.35) }), 'mm') // 289.6
 */
export const lensToSubject = ({ f, D }: { readonly f: Length; readonly D: Length }): Length => {
  const sum = D / f - 2; // m + 1/m
  if (!(sum >= 2))
    throw new InputError(
      `Counted from the sensor, the subject must be at least four focal lengths away (${writeNumber(as(f, 'm') * 4, 4, { exact: true })} m). Try a longer distance, or count from the lens.`,
      'subject-distance',
    );
  // Written so that a far subject does not lose its digits in a difference of two large numbers.
  const overM = (sum + Math.sqrt(sum * sum - 4)) / 2;
  return (f * (1 + overM)) as Length;
};

/** What the formulas with a subject distance hold of it: the distance as given, and where it starts. */
interface Placed {
  readonly f: Length;
  readonly s: Length;
  readonly from: From;
  readonly o: Length;
}

/** From the sensor to the front principal plane; unless given, the thin lens's image distance f(1 + m). */
export const lensOffset: QuantityInput & { readonly unit: 'mm' } = {
  name: 'lens offset',
  tex: 'o',
  unit: 'mm',
  range: [0, 10000],
  start: 88.4,
  default: (given: Given) => {
    const { f, s, from } = given as unknown as Omit<Placed, 'o'>;
    return imageDistance({ f, s: from === 'sensor' ? lensToSubject({ f, D: s }) : s });
  },
  when: { 'measured-from': 'sensor' },
  means:
    'from the sensor to the lens’s front principal plane; unless given, the thin lens’s image distance f(1 + m)',
};

/** The subject's distance from the front principal plane, wherever the reader's tape began. */
export const fromLens = ({ s, from, o }: Placed): Length =>
  from === 'sensor' ? ((s - o) as Length) : s;
