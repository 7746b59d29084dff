import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evaluateText } from '../../../src/formula/evaluate.ts';
import { idOf } from '../../../src/formula/record.ts';
import { m } from '../../../src/formula/quantities.ts';
import record, { perspectiveRatio } from '../../../src/optics/lens/perspective.ts';
import { expectClose } from '../../support/close.ts';
import { recordOf } from '../../support/records.ts';

const away = fc.double({ min: 0.05, max: 100, noNaN: true });

describe('perspective', () => {
  it('takes no focal length and no format, and refuses one that is given', () => {
    expect(Object.values(record.inputs).map(idOf)).toEqual([
      'subject-distance',
      'depth',
      'compare-distance',
    ]);
    for (const f of ['24mm', '200mm'])
      expect(() =>
        evaluateText(record, [
          ['subject-distance', '1m'],
          ['depth', '0.1m'],
          ['focal-length', f],
        ]),
      ).toThrow(/no input/);
  });

  it('is the ratio a thin lens draws, whatever its focal length', () => {
    // Image sizes of equal near and far features through one pupil go as 1/distance; frame-size must agree as f shrinks out.
    fc.assert(
      fc.property(
        away,
        fc.double({ min: 0.001, max: 1, noNaN: true }),
        fc.double({ min: 0.001, max: 0.04, noNaN: true }),
        (s, depth, f) => {
          // With the lens focused at s the sensor stands at v; a feature at x is drawn at v/x.
          const v = 1 / (1 / f - 1 / s);
          expectClose(
            v / s / (v / (s + depth)),
            perspectiveRatio({ s: m(s), depth: m(depth) }),
            1e-12,
          );
        },
      ),
    );
  });

  it('falls towards 1 as the camera steps back, and never below', () => {
    fc.assert(
      fc.property(away, fc.double({ min: 0, max: 1, noNaN: true }), (s, depth) => {
        const [near, far] = [
          perspectiveRatio({ s: m(s), depth: m(depth) }),
          perspectiveRatio({ s: m(s * 2), depth: m(depth) }),
        ];
        expect(far).toBeGreaterThanOrEqual(1);
        expect(near).toBeGreaterThanOrEqual(far);
      }),
    );
  });

  it.each([
    // (0.25 + 0.10)/0.25 and (1.60 + 0.10)/1.60
    ['0.25 m', 1.4],
    ['1.60 m', 1.0625],
  ])('from %s a depth of 0.10 m draws the near feature %d times', (distance, ratio) => {
    const { results } = evaluateText(recordOf('perspective'), [
      ['subject-distance', distance],
      ['depth', '0.10 m'],
    ]);
    expectClose(results['ratio']?.value as number, ratio);
    expect(results['difference']?.value).toBeNull();
  });
});
