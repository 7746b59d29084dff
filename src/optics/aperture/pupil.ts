import { InputError } from '../../formula/errors.ts';
import type { FNumber, Length, Ratio } from '../../formula/quantities.ts';
import { magnification } from '../lens/thin-lens.ts';

/** A lens focused on a subject, as blur sees it. */
export interface Cone {
  /** Diameter of the entrance pupil. */
  readonly D: Length;
  /** Magnification of the plane in focus. */
  readonly m: Ratio;
  /** From the front principal plane to the entrance pupil, towards the subject. */
  readonly e: Length;
  /** From the entrance pupil to the plane in focus. */
  readonly reach: Length;
}

/**
 * The cone of light from a point in focus into the lens: everything about blur follows from it.
 *
 * Model: one entrance pupil of diameter f/N, at f(1 − 1/p) from the front principal plane towards the subject (behind
 * it when negative); aberrations and diffraction left out. Valid: s > f, p above 0; the pupil then lies nearer than s.
 * Throws: InputError for s ≤ f.
 * @example coneOf({ f: mm(85), N: fNumber(4), s: m(2.21), p: ratio(1) }).D // 0.02125
 */
export const coneOf = ({
  f,
  N,
  s,
  p,
}: {
  readonly f: Length;
  readonly N: FNumber;
  readonly s: Length;
  readonly p: Ratio;
}): Cone => {
  const m = magnification({ f, s });
  const e = (f * (1 - 1 / p)) as Length;
  return { D: (f / N) as Length, m, e, reach: (s - e) as Length };
};

/**
 * The blur disc, in the plane in focus, of a point `behind` it (negative: ahead of it).
 *
 * Model: similar triangles from the pupil through the plane in focus. Valid: behind > −reach; infinite gives D.
 * Throws: InputError for a point at or inside the pupil.
 * @example blurAt(cone, m(1.5)) // 8.59 mm for 85 mm f/4 at 2.21 m
 */
export const blurAt = ({ D, reach }: Cone, behind: Length): Length => {
  if (behind === Infinity) return D;
  if (!(behind > -1 * reach))
    throw new InputError(
      'That is inside the lens: it must lie between the lens and the child. Try a shorter distance ahead.',
      'ahead-distance',
    );
  return ((D * Math.abs(behind)) / (reach + behind)) as Length;
};

/** How far ahead of and behind the plane in focus the blur on the sensor stays within a circle; behind may be infinite. */
export const sharpDepths = (
  { D, m, reach }: Cone,
  c: Length,
): { readonly ahead: Length; readonly behind: Length } => {
  const disc = m * D;
  return {
    ahead: ((reach * c) / (disc + c)) as Length,
    behind: (disc <= c ? Infinity : (reach * c) / (disc - c)) as Length,
  };
};

/** Light lost at close focus, as a factor on N: the working f-number is N(1 + m/p). */
export const bellows = ({ m, p }: { readonly m: Ratio; readonly p: Ratio }): Ratio =>
  (1 + m / p) as Ratio;
