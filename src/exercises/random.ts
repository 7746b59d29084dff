import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { skipN } from 'pure-rand/utils/skipN';

/** A 32-bit number from a text: FNV-1a, in whole numbers alone, so that every engine gives the same. */
const hash = (text: string): number => {
  let sum = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) {
    sum ^= text.charCodeAt(i);
    sum = Math.imul(sum, 0x01000193);
  }
  return sum | 0;
};

/** The generator's first numbers still show the seed. */
const WARM_UP = 16;

/**
 * The one source of chance: whole numbers from 0 up to, and without, the count asked for.
 *
 * Model: a stream of its own for every name, so that a quantity added to a template moves no other.
 * Valid: counts from 1 to 2³¹.
 * @param name what the stream is for; the same name gives the same numbers for ever
 * @example stream('walk-back/1/7/focal-length')(4) // 0, 1, 2 or 3, and always the same
 */
export const stream = (name: string): ((count: number) => number) => {
  const source = xoroshiro128plus(hash(name));
  skipN(source, WARM_UP);
  return (count) => uniformInt(source, 0, count - 1);
};

/** The same things in an order drawn from the stream (Fisher and Yates). */
export const shuffled = <T>(things: readonly T[], next: (count: number) => number): T[] => {
  const out = [...things];
  for (let last = out.length - 1; last > 0; last--) {
    const other = next(last + 1);
    [out[last], out[other]] = [out[other] as T, out[last] as T];
  }
  return out;
};
