import fc from 'fast-check';
import { expect, it } from 'vitest';
import { countOf, spanOf } from '../../src/tabulate/series.ts';

it('counts in whole steps of the last digit, so that no binary dust gathers', () => {
  expect(spanOf(1, 4, 0.2)).toEqual([
    1, 1.2, 1.4, 1.6, 1.8, 2, 2.2, 2.4, 2.6, 2.8, 3, 3.2, 3.4, 3.6, 3.8, 4,
  ]);
  expect(spanOf(0.1, 0.7, 0.2)).toEqual([0.1, 0.3, 0.5, 0.7]);
  expect(spanOf(2, 1, 0.25)).toEqual([2, 1.75, 1.5, 1.25, 1]);
  expect(spanOf(-1, 1, 0.5)).toEqual([-1, -0.5, 0, 0.5, 1]);
});

it('ends at the last number before the end where the step does not meet it', () => {
  expect(spanOf(35, 100, 20)).toEqual([35, 55, 75, 95]);
  expect(spanOf(85, 85, 5)).toEqual([85]);
  expect(spanOf(1, 2, 1e9)).toEqual([1]);
});

it('gives numbers that are their own shortest decimals, however many', () => {
  const decimal = fc
    .tuple(fc.integer({ min: 0, max: 9_999 }), fc.integer({ min: 0, max: 4 }))
    .map(([digits, places]) => Number(`${digits}e-${places}`));
  fc.assert(
    fc.property(
      decimal,
      decimal.filter((x) => x > 0),
      fc.integer({ min: 0, max: 300 }),
      (from, step, steps) => {
        const all = spanOf(from, from + steps * step, step);
        expect(all).toHaveLength(steps + 1);
        // Typed by hand, the number would have no more than the four places of its parts.
        for (const x of all) expect(x).toBe(Number(x.toFixed(4)));
      },
    ),
  );
});

it('says how long a series is before anyone makes it', () => {
  expect(countOf(0, 1e9, 1)).toBe(1_000_000_001);
  expect(countOf(4, 1, 0.2)).toBe(16);
});

it.each([
  [1, 2, 0, /more than 0/],
  [1, 2, -0.1, /more than 0/],
  [1, 2, Number.NaN, /more than 0/],
  [1, Infinity, 1, /finite/],
  [Number.NaN, 2, 1, /finite/],
])('refuses %s to %s by %s', (from, to, step, why) => {
  expect(() => spanOf(from, to, step)).toThrow(why);
  expect(() => spanOf(from, to, step)).toThrow(RangeError);
});
