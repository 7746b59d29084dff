import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { deg, m, mm } from '../../../src/formula/quantities.ts';
import { angleOfView, imageDistanceFor } from '../../../src/optics/lens/angle-of-view.ts';
import record from '../../../src/optics/lens/angle-of-view.ts';
import { expectClose } from '../../support/close.ts';
import { startsOf } from '../../support/records.ts';

const positive = (max: number): fc.Arbitrary<number> =>
  fc.double({ min: max / 1e5, max, noNaN: true });

describe('angle of view', () => {
  it('is a right angle when the side is twice the image distance', () => {
    expectClose(angleOfView({ d: mm(36), v: mm(18) }), deg(90));
  });

  it('keeps its value when side and distance grow alike', () => {
    fc.assert(
      fc.property(positive(0.2), positive(1), positive(100), (d, v, k) => {
        expectClose(
          angleOfView({ d: m(d), v: m(v) }),
          angleOfView({ d: m(k * d), v: m(k * v) }),
          1e-9,
        );
      }),
    );
  });

  it('narrows as the image distance grows, and widens with the side', () => {
    fc.assert(
      fc.property(positive(0.2), positive(1), (d, v) => {
        const angle = angleOfView({ d: m(d), v: m(v) });
        expect(angleOfView({ d: m(d), v: m(v * 1.01) })).toBeLessThan(angle);
        expect(angleOfView({ d: m(d * 1.01), v: m(v) })).toBeGreaterThan(angle);
      }),
    );
  });

  it('comes to d/v for a small angle', () => {
    expectClose(angleOfView({ d: mm(1), v: m(1) }), 0.001, 1e-6);
  });

  it('is undone by the image distance for that angle', () => {
    fc.assert(
      fc.property(positive(0.2), positive(1), (d, v) => {
        expectClose(
          imageDistanceFor({ d: m(d), angle: angleOfView({ d: m(d), v: m(v) }) }),
          v,
          1e-9,
        );
      }),
    );
  });

  it('narrows when the lens focuses nearer, as the lens moves out', () => {
    const given = startsOf(record) as Parameters<typeof record.compute>[0];
    const far = record.compute({ ...given, s: m(Infinity), o: given.f });
    const near = record.compute({ ...given, s: m(0.5) });
    expect(near.horizontal).toBeLessThan(far.horizontal ?? 0);
  });
});
