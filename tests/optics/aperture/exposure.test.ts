import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import ambient from '../../../src/optics/aperture/ambient-exposure.ts';
import ev from '../../../src/optics/aperture/exposure-value.ts';
import { expectClose } from '../../support/close.ts';
import { run, value } from './support.ts';

describe('exposure value', () => {
  it('is 0 at f/1 and 1 s, and one more for each halving of light', () => {
    expect(value(ev, 'f-number=1, shutter=1s', 'ev')).toBe(0);
    expectClose(value(ev, 'f-number=2, shutter=1/4s', 'ev'), 4);
    expect(run(ev, 'f-number=2, shutter=1/4s').results['ev-100']?.text).toBe('not given');
  });

  it('at a higher ISO suits less light', () => {
    expectClose(value(ev, 'f-number=2, shutter=1/4s, iso=400', 'ev-100'), 2);
  });

  it('takes marks at their exact values beside the typed ones', () => {
    // f/5.6 as 2^2.5 and 1/125 as 1/128: EV 5 + 7.
    expectClose(value(ev, 'f-number=5.6, shutter=1/125s', 'ev-marked'), 12);
    expectClose(value(ev, 'f-number=5.6, shutter=1/125s', 'ev'), Math.log2(5.6 ** 2 * 125));
  });

  it('refuses a shutter of 1/0', () => {
    expect(() => run(ev, 'f-number=5.6, shutter=1/0s')).toThrow(/not a number that can be used/);
  });
});

describe('ambient light under a flash', () => {
  const set = 'f-number=f/8, shutter=1/160s, iso=100';

  it('of 500 lx is 5.68 stops under at f/8, 1/160 s, ISO 100', () => {
    // E S/C = 200 against N²/t = 10 240
    expectClose(value(ambient, `illuminance=500lx, ${set}`, 'over'), Math.log2(200 / 10240));
    expect(run(ambient, `illuminance=500lx, ${set}`).results['over']?.text).toBe('−5.68 stops');
    // Alone it would take 51 times as long: 0.32 s.
    expectClose(value(ambient, `illuminance=500lx, ${set}`, 'correct-shutter'), 0.32);
  });

  it('metered as an EV says the same as the illuminance behind it', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 15, noNaN: true }), (EV) => {
        const lux = 2.5 * 2 ** EV; // C 250 at ISO 100
        expectClose(
          value(ambient, `metered-ev=${EV}, ${set}`, 'over'),
          value(ambient, `illuminance=${lux}lx, ${set}`, 'over'),
          1e-9,
          1e-9,
        );
      }),
    );
  });

  it.each([
    [1, '0.58'],
    [2, '0.32'],
    [3, '0.17'],
    [4, '0.09'],
    [5, '0.04'],
  ])('%d stops under lifts the exposure %s stop', (under, rise) => {
    const line = `metered-ev=10, f-number=1, shutter=${2 ** -(10 + under)}s, iso=100`;
    expectClose(value(ambient, line, 'over'), -under);
    expect(value(ambient, line, 'rise').toFixed(2)).toBe(rise);
    expectClose(value(ambient, line, 'ambient-share'), 1 / (1 + 2 ** under));
  });

  it('falls with shutter and aperture, rises with ISO, and loses light close up and in glass', () => {
    const over = (line: string): number => value(ambient, `illuminance=500lx, ${line}`, 'over');
    const start = over(set);
    expectClose(over('f-number=f/8, shutter=1/320s, iso=100'), start - 1);
    expectClose(over('f-number=f/16, shutter=1/160s, iso=100'), start - 2);
    expectClose(over('f-number=f/8, shutter=1/160s, iso=400'), start + 2);
    expectClose(over(`${set}, magnification=1`), start - 2);
    expectClose(over(`${set}, transmission=0.5`), start - 1);
    expectClose(over(`${set}, calibration=500`), start - 1);
    // EV 10 is right for f/1 at 1/1024 s and ISO 100; at ISO 400 it is two stops over.
    const metered = 'metered-ev=10, f-number=1, shutter=1/1024s';
    expectClose(value(ambient, `${metered}, iso=100`, 'over'), 0, 0, 1e-12);
    expectClose(value(ambient, `${metered}, iso=400`, 'over'), 2);
  });

  it('takes both marks at their exact values when asked', () => {
    // 1/160 stands for 2^(−22/3), f/8 for itself.
    expectClose(value(ambient, `metered-ev=0, ${set}, marks=exact`, 'over'), -22 / 3 - 6);
  });

  it('judges against the margin and the sync speed, their ends included', () => {
    const results = (extra: string): unknown =>
      run(ambient, `metered-ev=10, f-number=1, shutter=1/16384s, iso=100${extra}`).results;
    expect(results(', margin=4stop')).toMatchObject({ 'below-margin': { value: true } });
    expect(results(', margin=4.01stop')).toMatchObject({ 'below-margin': { value: false } });
    expect(results('')).toMatchObject({ 'within-sync': { value: null } });
    expect(
      run(ambient, `metered-ev=10, ${set}, sync-speed=1/160s`).results['within-sync']?.value,
    ).toBe(true);
    expect(
      run(ambient, `metered-ev=10, ${set}, sync-speed=1/125s`).results['within-sync']?.value,
    ).toBe(false);
  });

  it('wants the light one way only', () => {
    expect(() => run(ambient, set)).toThrow(/exactly one of: illuminance, or metered-ev/);
    expect(() => run(ambient, `illuminance=500lx, metered-ev=7, ${set}`)).toThrow(/exactly one/);
  });
});
