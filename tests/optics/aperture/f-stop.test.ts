import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import record from '../../../src/optics/aperture/f-stop.ts';
import { exactTime, marked, nearestMark, thirdMarks } from '../../../src/optics/aperture/marks.ts';
import { fNumber, seconds } from '../../../src/formula/quantities.ts';
import { expectClose } from '../../support/close.ts';
import { run, value } from './support.ts';

describe('f-numbers and stops', () => {
  it('counts one stop where the light doubles, two where the f-number doubles', () => {
    expectClose(value(record, 'from=f/4, to=f/8', 'stops'), 2);
    expectClose(value(record, 'from=f/8, to=f/4', 'stops'), -2);
    expectClose(value(record, 'from=f/4, to=f/8', 'light-ratio'), 4);
    // The marks 4 and 5.6 are not quite a stop: 2 log2 1.4.
    expectClose(value(record, 'from=f/4, to=f/5.6', 'stops'), 0.9708536543, 1e-9);
  });

  it('adds stops along the way', () => {
    const N = fc.double({ min: 0.7, max: 90, noNaN: true });
    fc.assert(
      fc.property(N, N, N, (a, b, c) => {
        const stops = (from: number, to: number): number =>
          value(record, `from=${from}, to=${to}`, 'stops');
        expectClose(stops(a, b) + stops(b, c), stops(a, c), 1e-9, 1e-9);
      }),
    );
  });

  it('gives the pupil as focal length over f-number, and none without a focal length', () => {
    expectClose(value(record, 'from=f/4, to=f/8, focal-length=85mm', 'from-pupil'), 0.02125);
    expectClose(value(record, 'from=f/4, to=f/8, focal-length=85mm', 'to-pupil'), 0.010625);
    expect(run(record, 'from=f/4, to=f/8').results['from-pupil']?.text).toBe('not given');
  });

  it.each([
    [5.6, 5.6, 5.6, 5.6, 2 ** 2.5],
    [6, 5.6, 5.6, 6.3, 2 ** (16 / 6)],
    [3.4, 4, 3.3, 3.5, 2 ** (11 / 6)],
    [3.72, 4, 4, 3.5, 2 ** (11 / 6)],
    [1.2, 1.4, 1.2, 1.2, 2 ** (2 / 6)],
    [13, 11, 13, 13, 2 ** (22 / 6)],
    [0.5, 0.7, 0.7, 0.7, 2 ** -0.5],
    [200, 128, 128, 128, 128],
  ])(
    'f/%d lies nearest to the full mark %d, the half %d, the third %d, exactly %d',
    (to, full, half, third, exact) => {
      const { results } = run(record, `from=f/1, to=${to}`);
      expect(results['nearest-full']?.value).toBe(full);
      expect(results['nearest-half']?.value).toBe(half);
      expect(results['nearest-third']?.value).toBe(third);
      expectClose(results['exact']?.value as number, exact);
    },
  );

  it('finds each mark from itself, and each exact value within a twelfth of a stop of its mark', () => {
    for (const { mark, exact } of thirdMarks) {
      expect(nearestMark(mark, 'third').mark).toBe(mark);
      expect(Math.abs(2 * Math.log2(mark / exact))).toBeLessThan(1 / 6);
    }
    expect(thirdMarks).toHaveLength(46);
  });

  it('takes a setting as typed or as its mark stands for', () => {
    expect(marked(fNumber(5.6), 'typed')).toBe(5.6);
    expectClose(marked(fNumber(5.6), 'exact'), 2 ** 2.5);
  });

  it.each([
    [1 / 125, 1 / 128],
    [1 / 60, 1 / 64],
    [1 / 15, 1 / 16],
    [1 / 160, 2 ** (-22 / 3)],
    [30, 32],
  ])('takes the shutter mark %d s as %d s exactly', (mark, exact) => {
    expectClose(exactTime(seconds(mark)), exact);
  });
});
