import type { Digits } from '../formula/record.ts';
import { dimensionOf, type Unit } from '../formula/units.ts';

/** How near an answer must come. Stops count as light does: an f-number’s twice over. */
export type Tolerance =
  | { readonly relative: number; readonly absolute: number }
  | { readonly stops: number; readonly perDoubling: 1 | 2 };

/** The accepted values of one key, ends included, in SI. */
export type Span = readonly [low: number, high: number];

const SIXTH = 1 / 6;

/**
 * What counts as near enough unless a template says otherwise: lengths 2 %, angles half a degree, anything that sets an
 * exposure a sixth of a stop, the rest 2 %.
 * @param digits as the record has them: times and powers written in parts of one set an exposure
 */
export const usualTolerance = (unit: Unit, digits?: Digits): Tolerance => {
  const dimension = dimensionOf(unit);
  if (dimension === 'f-number') return { stops: SIXTH, perDoubling: 2 };
  if (dimension === 'iso' || (typeof digits === 'object' && 'fraction' in digits))
    return { stops: SIXTH, perDoubling: 1 };
  if (dimension === 'stops' || dimension === 'ev') return { relative: 0, absolute: SIXTH };
  if (dimension === 'angle') return { relative: 0, absolute: Math.PI / 360 };
  return { relative: 0.02, absolute: 0 };
};

/**
 * The span of values taken for a key: max(absolute, relative × |key|) either way, or so many stops.
 * @example spanOf(2, { relative: 0.02, absolute: 0 }) // [1.96, 2.04]
 */
export const spanOf = (key: number, tolerance: Tolerance): Span => {
  if ('stops' in tolerance) {
    const times = 2 ** (tolerance.stops / tolerance.perDoubling);
    return key < 0 ? [key * times, key / times] : [key / times, key * times];
  }
  const room = Math.max(tolerance.absolute, tolerance.relative * Math.abs(key));
  return [key - room, key + room];
};

/** Whether a value lies in a span; its ends have a hair of slack, since 1.01 is not quite 1 + 1 %. */
export const holds = ([low, high]: Span, x: number): boolean => {
  const slack = 1e-9 * Math.max(Math.abs(low), Math.abs(high));
  return x >= low - slack && x <= high + slack;
};

/** Whether two spans have a value in common. */
export const meet = (a: Span, b: Span): boolean => a[0] <= b[1] && b[0] <= a[1];
