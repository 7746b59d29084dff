import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Length } from '../../../src/formula/quantities.ts';
import extended, { reach } from '../../../src/optics/light/extended-source.ts';
import falloff from '../../../src/optics/light/falloff.ts';
import flash from '../../../src/optics/light/flash-exposure.ts';
import { expectClose } from '../../support/close.ts';
import { run, value } from '../aperture/support.ts';

describe('fall-off', () => {
  it('twice as far is two stops less, a quarter of the light', () => {
    expectClose(value(falloff, 'near=1m, far=2m', 'stops'), 2);
    expectClose(value(falloff, 'near=1m, far=2m', 'percent'), 0.25);
  });

  it('a child leaning from 0.8 to 0.5 m gains 1.36 stops', () => {
    // 2 log2(0.5/0.8) = 2 × −0.678
    expect(run(falloff, 'near=0.8m, far=0.5m').results['stops']?.text).toBe('−1.36 stops');
  });

  it('keeps half a metre of twins within a third of a stop from 4.08 m', () => {
    // 0.5 / (2^(1/6) − 1) = 0.5 / 0.12246
    const line = 'near=1m, far=1.5m, wanted-stops=1/3';
    expect(run(falloff, line).results['distance-for-evenness']?.text).toBe('4.08 m');
    // From there the loss is what was wanted.
    const near = value(falloff, line, 'distance-for-evenness');
    expectClose(value(falloff, `near=${near}m, far=${near + 0.5}m`, 'stops'), 1 / 3, 1e-9);
  });

  it('counts depth alike whichever way it is named', () => {
    const there = value(falloff, 'near=1m, far=1.5m, wanted-stops=1', 'distance-for-evenness');
    expect(value(falloff, 'near=1.5m, far=1m, wanted-stops=1', 'distance-for-evenness')).toBe(
      there,
    );
  });

  it('measures from places on the plan: a 3-4-5 triangle and its double', () => {
    const line = 'light-place=0m; 0m, near-place=0.3m; 0.4m, far-place=0.6m; 0.8m';
    expectClose(value(falloff, line, 'stops'), 2);
  });

  it('refuses a point inside the light, and both ways at once', () => {
    const line = 'light-place=0m; 0m, near-place=0m; 0m, far-place=1m; 1m';
    expect(() => run(falloff, line)).toThrow(/lies in the light itself/);
    expect(() => run(falloff, `near=1m, far=2m, ${line}`)).toThrow(/exactly one of/);
    expect(() => run(falloff, 'near=1m, far=2m, wanted-stops=0')).toThrow(/between/);
  });
});

describe('flash exposure', () => {
  const set = 'guide-number=56m, distance=1.2m, iso=100';

  it('divides the guide number by the distance, and follows ISO and power by their roots', () => {
    expectClose(value(flash, 'guide-number=40m, distance=5m, iso=100', 'f-number'), 8);
    expectClose(value(flash, 'guide-number=40m, distance=5m, iso=400', 'f-number'), 16);
    expectClose(value(flash, 'guide-number=40m, distance=5m, iso=100, power=1/4', 'f-number'), 4);
    expectClose(value(flash, 'guide-number=40m, distance=5m, iso=100, loss=2', 'f-number'), 4);
    expectClose(value(flash, 'guide-number=40m, gn-iso=400, distance=5m, iso=100', 'f-number'), 4);
    expectClose(
      value(flash, 'guide-number=40m, distance=5m, iso=100, magnification=1', 'f-number'),
      4,
    );
  });

  it('reckons from a reading as from a guide number', () => {
    // f/8 at 2 m, ISO 200, quarter power: f/8 × √(4/2) at ISO 100 and full, times 2 m: a guide number of 22.6 m.
    const metered =
      'metered-f-number=f/8, metered-distance=2m, metered-iso=200, metered-power=1/4, distance=2m, iso=100';
    expectClose(value(flash, metered, 'f-number'), 8 * Math.SQRT2);
  });

  it('at 1.2 m a guide number of 56 m is 7.09 stops too strong for f/4, below 1/128', () => {
    const line = `${set}, wanted-f-number=f/4, lowest-power=1/128, step=1/3`;
    // (4 / (56/1.2))² = 0.0857² = 0.00735
    expectClose(-Math.log2(value(flash, line, 'power-needed')), 7.09, 1e-3);
    expect(value(flash, line, 'in-range')).toBe(false);
    expectClose(value(flash, line, 'marked'), 1 / 128);
    expectClose(value(flash, line, 'remainder'), 7 - 7.0886, 0, 1e-4);
    expect(value(flash, `${line}, loss=0.5`, 'in-range')).toBe(true);
  });

  it('finds the nearest mark in thirds or in tenths, and what is left', () => {
    // 56/1.2/√P: f/8 needs −5.09 stops: −5 1/3 is 0.24 off, −5 is 0.09 off; in tenths −5.1.
    const line = `${set}, wanted-f-number=f/8, lowest-power=1/256`;
    expectClose(value(flash, `${line}, step=1/3`, 'marked'), 1 / 32);
    expectClose(value(flash, `${line}, step=1/10`, 'marked'), 2 ** -5.1);
    expectClose(value(flash, `${line}, step=1/3`, 'remainder'), -0.0886, 0, 1e-4);
    expect(run(flash, line).results['marked']?.text).toBe('not given');
  });

  it('asks for more than full power where the flash is too weak, and says it is out of range', () => {
    const line =
      'guide-number=20m, distance=5m, iso=100, wanted-f-number=f/8, lowest-power=1/64, step=1/3';
    expectClose(value(flash, line, 'power-needed'), 4);
    expect(value(flash, line, 'in-range')).toBe(false);
    expectClose(value(flash, line, 'marked'), 1);
    expectClose(value(flash, line, 'remainder'), 2);
  });

  it('cautions against a bare head inside 1 m, and only then', () => {
    const at = (distance: string, diffused: string): unknown =>
      value(
        flash,
        `guide-number=56m, distance=${distance}, iso=100, diffused=${diffused}`,
        'too-close',
      );
    expect(at('0.99m', 'no')).toBe(true);
    expect(at('1m', 'no')).toBe(false);
    expect(at('0.5m', 'yes')).toBe(false);
    expect(run(flash, set).results['too-close']?.text).toBe('not given');
  });
});

describe('a light that is no point', () => {
  /** The same share by adding up small pieces of the front: cos · cos / distance², over π. */
  const summed = (w: number, h: number, d: number): number => {
    const steps = 400;
    let sum = 0;
    for (let i = 0; i < steps; i++)
      for (let j = 0; j < steps; j++) {
        const x = ((i + 0.5) / steps - 0.5) * w;
        const y = ((j + 0.5) / steps - 0.5) * h;
        const r2 = x * x + y * y + d * d;
        sum += (d * d) / (r2 * r2);
      }
    return (sum * w * h) / steps ** 2 / Math.PI;
  };

  it.each([
    [0.9, 0.9, 0.9],
    [1.2, 0.3, 0.6],
    [0.3, 1.4, 2],
  ])('a rectangle %s by %s m at %s m agrees with its pieces added up', (w, h, d) => {
    const share = reach({ shape: 'rectangle', w: w as Length, h: h as Length }, d as Length);
    expectClose(share, summed(w, h, d), 1e-5);
  });

  it('is 1 % off at ten radii of a disc and a tenth of a stop at 3.73', () => {
    const line = 'shape=disc, width=1m, distance=1m';
    expectClose(value(extended, line, 'distance-1-percent'), 5, 1e-9);
    // 1/√(2^0.1 − 1) = 3.7326
    expectClose(value(extended, line, 'distance-tenth-stop'), 0.5 * 3.7326, 1e-4);
    expectClose(value(extended, line, 'error'), Math.log2(1.25));
  });

  it('loses 1.77 stops, not 2, from 0.9 to 1.8 m before a disc 0.9 m across', () => {
    const E = (d: string): number =>
      value(extended, `shape=disc, width=0.9m, distance=${d}, luminance=1000cd/m2`, 'illuminance');
    // (1 + 0.25·4²/4)… r²/(r² + d²): 0.2 against 0.0588
    expectClose(Math.log2(E('0.9m') / E('1.8m')), Math.log2(0.2 * 17), 1e-9);
    expect(Math.log2(E('0.9m') / E('1.8m')).toFixed(2)).toBe('1.77');
  });

  it('finds for a rectangle the distances at which the law is off by what they say', () => {
    const size = 'shape=rectangle, width=1.2m, height=0.4m';
    for (const [result, stops] of [
      ['distance-1-percent', Math.log2(1.01)],
      ['distance-tenth-stop', 0.1],
    ] as const) {
      const at = value(extended, `${size}, distance=1m`, result);
      expectClose(value(extended, `${size}, distance=${at}m`, 'error'), stops, 1e-9);
    }
  });

  it('takes the luminance from a reading, and gives that reading back where it was taken', () => {
    const line = 'shape=disc, width=0.9m, reading=800lx, reading-distance=1.1m';
    expectClose(value(extended, `${line}, distance=1.1m`, 'illuminance'), 800);
    expect(run(extended, 'shape=disc, width=1m, distance=1m').results['illuminance']?.text).toBe(
      'not given',
    );
  });

  it('close to a wide front gives what an endless one would: π L', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 1e5, noNaN: true }), (L) => {
        const line = `shape=disc, width=100m, distance=0.01m, luminance=${L}cd/m2`;
        expectClose(value(extended, line, 'illuminance'), Math.PI * L, 1e-6);
      }),
    );
  });

  it('asks a rectangle for its height', () => {
    expect(() => run(extended, 'shape=rectangle, width=1m, distance=1m')).toThrow(/needs a height/);
  });
});
