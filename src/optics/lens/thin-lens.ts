import { InputError } from '../../formula/errors.ts';
import { as, type Length, type Ratio } from '../../formula/quantities.ts';
import { writeNumber } from '../../formula/notation/write.ts';

interface Focused {
  readonly f: Length;
  /** From the front principal plane to the plane in focus. */
  readonly s: Length;
}

/** Refuses a subject at or inside the focal length, of which a lens casts no image on a sensor. */
const insist = ({ f, s }: Focused): void => {
  if (!(s > f))
    throw new InputError(
      `The subject must be farther away than the focal length of ${writeNumber(as(f, 'mm'), 4, { exact: true })} mm; nearer, no image forms. Try a longer distance or a shorter lens.`,
      'subject-distance',
    );
};

/**
 * Magnification: the image's size over the subject's.
 *
 * Model: thin lens in air. Valid: s > f, s may be infinite (then 0).
 * Throws: InputError for s ≤ f.
 * Source: OpenStax, College Physics, Image Formation by Lenses.
 * @example magnification({ f: mm(85), s: m(2.21) }) // 0.04
 */
export const magnification = ({ f, s }: Focused): Ratio => {
  insist({ f, s });
  return (f / (s - f)) as Ratio;
};

/**
 * Image distance f(1 + m): from the rear principal plane to the sensor.
 * Same model, range and errors as magnification.
 * @example as(imageDistance({ f: mm(85), s: m(2.21) }), 'mm') // 88.4
 */
export const imageDistance = ({ f, s }: Focused): Length =>
  (f * (1 + magnification({ f, s }))) as Length;

/**
 * Subject distance f(1 + 1/m) for a magnification: the inverse of `magnification`.
 * @example as(subjectDistance({ f: mm(85), m: ratio(0.04) }), 'm') // 2.21
 */
export const subjectDistance = ({ f, m }: { readonly f: Length; readonly m: Ratio }): Length =>
  (f * (1 + 1 / m)) as Length;

/**
 * Sensor to subject, f(2 + m + 1/m): what a focusing scale or a maker's table counts.
 *
 * Model: thin lens, both principal planes in one place. A real lens adds the gap between them.
 * @example as(sensorToSubject({ f: mm(85), m: ratio(0.04) }), 'm') // 2.2984
 */
export const sensorToSubject = ({ f, m }: { readonly f: Length; readonly m: Ratio }): Length =>
  (f * (2 + m + 1 / m)) as Length;
