/** Digits after the decimal point, as the shortest text of the number has them. */
const decimalsOf = (x: number): number => {
  const [, fraction = '', exponent = '0'] = /^-?\d+(?:\.(\d+))?(?:e(.+))?$/.exec(String(x)) ?? [];
  return Math.max(0, fraction.length - Number(exponent));
};

const check = (from: number, to: number, step: number): void => {
  if (!Number.isFinite(from) || !Number.isFinite(to))
    throw new RangeError('A series runs from one finite number to another.');
  if (!Number.isFinite(step) || step <= 0)
    throw new RangeError('A step must be more than 0. Try 1, or 0.1.');
};

/** A hair of room, so that 0.1 to 0.7 by 0.2 ends at 0.7 whatever binary made of it. */
const HAIR = 1e-9;

/**
 * How many numbers a series has, without making them.
 * Throws: RangeError as spanOf does.
 * @example countOf(1, 4, 0.2) // 16
 */
export const countOf = (from: number, to: number, step: number): number => {
  check(from, to, step);
  return Math.floor(Math.abs(to - from) / step + HAIR) + 1;
};

/**
 * The numbers from one to another by a step, as exact decimals: 1, 1.2, 1.4 … and no 1.4000000000000001.
 *
 * Model: counts in whole units of the last digit either number has, so nothing adds up. Runs downwards where `to` is
 * the smaller; ends at `to`, or at the last number before it.
 * Valid: numbers of at most 15 digits between them.
 * Throws: RangeError for a step of 0 or less, or a number that is none.
 * @example spanOf(1, 2, 0.2) // [1, 1.2, 1.4, 1.6, 1.8, 2]
 */
export const spanOf = (from: number, to: number, step: number): readonly number[] => {
  const count = countOf(from, to, step);
  const scale = 10 ** Math.max(decimalsOf(from), decimalsOf(step));
  const [first, by] = [Math.round(from * scale), Math.round(step * scale) * (to < from ? -1 : 1)];
  return Array.from({ length: count }, (_none, i) => (first + i * by) / scale);
};
