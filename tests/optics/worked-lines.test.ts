import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compute } from '../../src/formula/compute.ts';
import { InputError } from '../../src/formula/errors.ts';
import { complete } from '../../src/formula/read.ts';
import type { Formula, Given, Results } from '../../src/formula/record.ts';
import { expectClose } from '../support/close.ts';
import { givenFor, recordOf, records } from '../support/records.ts';

/** The worked line of every record once more, typed off its TeX: the right side's place, and the left side's arithmetic. */
const lines: Readonly<
  Record<string, readonly [string, (v: Readonly<Record<string, number>>) => number]>
> = {
  'angle-of-view': ['horizontal', ({ d = 0, f = 0, m = 0 }) => 2 * Math.atan(d / (2 * f * (1 + m)))],
  'framing-distance': ['s', ({ f = 0, H = 0, h = 0 }) => f * (1 + H / h)],
  'frame-size': ['H', ({ h = 0, s = 0, f = 0, f2 = 0 }) => (h * (s - f)) / f2],
  perspective: ['ratio', ({ s = 0, depth = 0, s2 = 0 }) => (s + depth) / s2],
  'backdrop-coverage': ['viewWidth', ({ w = 0, s = 0, b = 0, forward = 0 }) => (w * (s + b)) / forward],
  'room-fit': ['needed', ({ a = 0, b = 0, f = 0, m = 0, m2 = 0, c = 0 }) => a + b + f * (2 + m + 1 / m2) + c],
  'spotter-reach': ['gap', ({ W = 0, e = 0 }) => W / 2 - e],
  equivalence: ['fEquivalent', ({ f = 0, to = 0, from = 0 }) => (f * to) / from],
  'ambient-exposure': ['over', ({ light = 0, t = 0, N = 0 }) => Math.log2((light * t) / N ** 2)],
  'background-blur': ['sensor', ({ m = 0, D = 0, b = 0, away = 0 }) => (m * D * b) / away],
  'circle-of-confusion': ['c', ({ v = 0, acuity = 0, E = 0 }) => (2 * v * Math.tan(acuity / 2)) / E],
  'depth-of-field': ['near', ({ e = 0, reach = 0, disc = 0, disc2 = 0, c = 0 }) => e + (reach * disc) / (disc2 + c)],
  diffraction: ['airy', ({ wavelength = 0, N = 0, bellows = 0 }) => 2.44 * wavelength * N * bellows],
  'exposure-value': ['ev', ({ N = 0, t = 0 }) => Math.log2(N ** 2 / t)],
  'f-stop': ['stops', ({ from = 0, to = 0 }) => 2 * Math.log2(to / from)],
  'face-in-focus': ['widest', ({ f = 0, m = 0, c = 0, x = 0, away = 0 }) => ((f * m) / c) * (x / away)],
  'movement-blur': ['flash', ({ u = 0, m = 0, t = 0 }) => u * m * t],
  'recompose-error': ['error', ({ s = 0, angle = 0 }) => s * (1 - Math.cos(angle))],
}; // prettier-ignore

const attempt = (formula: Formula, given: Given): [Given, Results] | undefined => {
  try {
    const all = complete(formula, given);
    return [all, compute(formula, all)];
  } catch (error) {
    if (error instanceof InputError) return undefined;
    throw error;
  }
};

describe('the worked line', () => {
  it('of every record is tried here', () => {
    expect(Object.keys(lines).sort()).toEqual(records.map(({ id }) => id).sort());
  });

  it.each(Object.entries(lines))(
    'of %s is true: its numbers make its result',
    (id, [place, left]) => {
      const record = recordOf(id);
      let tried = 0;
      fc.assert(
        fc.property(givenFor(record), (given) => {
          const [all, results] = attempt(record, given) ?? [];
          if (!all || !results) return;
          const shown = record.worked.values(all, results);
          const values = Object.fromEntries(
            Object.entries(shown).map(([key, { value = NaN }]) => [key, value]),
          );
          const right = values[place] ?? NaN;
          // Where an input was left out there is an ellipsis, and nothing to try.
          if (!Object.values(values).every(Number.isFinite)) return;
          tried++;
          expect(right).toBe(results[place]);
          // A line that takes small differences of cosines loses the digits that the formula itself keeps.
          expectClose(left(values), right, 1e-7, 1e-12);
        }),
      );
      expect(tried).toBeGreaterThan(50);
    },
  );
});
