import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { InputError } from '../../../src/formula/errors.ts';
import { fNumber, m, mm, ratio } from '../../../src/formula/quantities.ts';
import dof, { hyperfocal } from '../../../src/optics/aperture/depth-of-field.ts';
import { bellows, blurAt, coneOf, sharpDepths } from '../../../src/optics/aperture/pupil.ts';
import { expectClose } from '../../support/close.ts';
import { run, value } from './support.ts';

const set = 'focal-length=85mm, f-number=f/4, subject-distance=2.210m, circle=0.030mm';
const lens = fc.record({
  f: fc.double({ min: 0.02, max: 0.2, noNaN: true }),
  N: fc.double({ min: 1, max: 22, noNaN: true }),
  s: fc.double({ min: 0.5, max: 20, noNaN: true }),
  p: fc.double({ min: 0.6, max: 1.6, noNaN: true }),
  c: fc.double({ min: 5e-6, max: 1e-4, noNaN: true }),
});

describe('depth of field', () => {
  it('is 2134.7 to 2290.9 mm, 156.2 mm in all, for 85 mm f/4 at 2.210 m', () => {
    // mD = 0.04 × 21.25 = 0.85 mm; near 2210 × 0.85/0.88, far 2210 × 0.85/0.82
    expectClose(value(dof, set, 'near'), (2.21 * 0.85) / 0.88, 1e-12);
    expectClose(value(dof, set, 'far'), (2.21 * 0.85) / 0.82, 1e-12);
    expect((value(dof, set, 'total') * 1000).toFixed(1)).toBe('156.2');
    expectClose(value(dof, set, 'in-front') + value(dof, set, 'behind'), value(dof, set, 'total'));
  });

  it('has blur equal to the circle at both limits, whatever the pupil magnification', () => {
    fc.assert(
      fc.property(lens, ({ f, N, s, p, c }) => {
        const cone = coneOf({ f: m(f), N: fNumber(N), s: m(s), p: ratio(p) });
        const { ahead, behind } = sharpDepths(cone, m(c));
        expectClose(cone.m * blurAt(cone, m(-1 * ahead)), c, 1e-6);
        if (behind === Infinity) expect(cone.m * cone.D).toBeLessThanOrEqual(c);
        else expectClose(cone.m * blurAt(cone, behind), c, 1e-6);
      }),
    );
  });

  it.each([0.7, 1, 1.3])('blurs a point by the law of the pupil itself at p = %d', (p) => {
    // Another route: the image of the point by Newton's equation, and the cone from the exit pupil (p·D wide, p·f in
    // front of the rear focal plane) cut at the sensor.
    const [f, N, s, x] = [0.085, 4, 2.21, 3.71];
    const imageOf = (distance: number): number => (f * f) / (distance - f); // behind the rear focal point
    const [sensor, image] = [imageOf(s), imageOf(x)];
    const exitPupil = -f * p; // before the rear focal point, by the pupil-position theorem
    const width = ((p * f) / N) * Math.abs((sensor - image) / (image - exitPupil));
    const cone = coneOf({ f: m(f), N: fNumber(N), s: m(s), p: ratio(p) });
    expectClose(cone.m * blurAt(cone, m(x - s)), width, 1e-9);
  });

  it('reaches infinity exactly from the hyperfocal distance on', () => {
    const H = hyperfocal({ f: mm(50), N: fNumber(8), c: mm(0.03) });
    expectClose(H, 10.466667, 1e-7);
    const at = (s: number): unknown =>
      run(dof, `focal-length=50mm, f-number=8, subject-distance=${s}m, circle=0.03mm`).results[
        'far'
      ];
    expect(at(H * (1 + 1e-9))).toMatchObject({ value: null, infinite: true, text: '∞' });
    expect(at(H * (1 - 1e-6))).toMatchObject({ unit: 'm' });
    expect((at(H * (1 - 1e-6)) as { value: number }).value).toBeGreaterThan(1e5);
    // Focused at H, the near limit is half of it (up to one focal length).
    expectClose(
      value(dof, `focal-length=50mm, f-number=8, subject-distance=${H}m, circle=0.03mm`, 'near'),
      H / 2,
      1e-2,
    );
  });

  it('at infinity starts sharp where blur from infinity would equal the circle', () => {
    const { results } = run(
      dof,
      'focal-length=85mm, f-number=4, subject-distance=infinity, circle=0.03mm',
    );
    expectClose(results['near']?.value as number, 0.085 ** 2 / (4 * 0.00003));
    for (const id of ['far', 'total', 'in-front', 'behind'])
      expect(results[id]?.infinite).toBe(true);
  });

  it('is shared 48 to 52 at 2.21 m, and one to two only at 20.2 m', () => {
    const share = (s: number): number => {
      const line = `focal-length=85mm, f-number=4, subject-distance=${s}m, circle=0.03mm`;
      return value(dof, line, 'in-front') / value(dof, line, 'total');
    };
    expect(share(2.21).toFixed(2)).toBe('0.48');
    expectClose(share(20.2), 1 / 3, 2e-3);
  });

  it('deepens as the aperture closes, the circle grows or the subject moves off', () => {
    fc.assert(
      fc.property(lens, ({ f, N, s, c }) => {
        const total = (change: { N?: number; s?: number; c?: number }): number => {
          const d = sharpDepths(
            coneOf({ f: m(f), N: fNumber(change.N ?? N), s: m(change.s ?? s), p: ratio(1) }),
            m(change.c ?? c),
          );
          return d.ahead + d.behind;
        };
        for (const change of [{ N: N * 1.1 }, { s: s * 1.1 }, { c: c * 1.1 }])
          expect(total(change)).toBeGreaterThanOrEqual(total({}));
      }),
    );
  });

  it('counts from the sensor when asked: the same depth, moved by the offset', () => {
    const moved =
      'focal-length=85mm, f-number=f/4, subject-distance=2.310m, circle=0.030mm, measured-from=sensor, lens-offset=100mm';
    expectClose(value(dof, moved, 'near') - value(dof, set, 'near'), 0.1);
    expectClose(value(dof, moved, 'total'), value(dof, set, 'total'));
  });

  it('takes the diagonal over 1500 for its circle, and refuses to go without either', () => {
    const line = 'focal-length=85mm, f-number=f/4, subject-distance=2.210m';
    expect(run(dof, `format=36x24, ${line}`).given['circle']).toBe(
      `${Number((Math.hypot(36, 24) / 1500).toPrecision(15))} mm`,
    );
    expect(() => run(dof, line)).toThrow(/needs circle/);
  });

  it.each([
    [
      'focal-length=85mm, f-number=4, subject-distance=0.08m, circle=0.03mm',
      /farther away than the focal length/,
    ],
    [
      'focal-length=85mm, f-number=f/0, subject-distance=2m, circle=0.03mm',
      /between f\/0.5 and f\/256/,
    ],
    ['focal-length=-85mm, f-number=4, subject-distance=2m, circle=0.03mm', /between 1 mm/],
    ['focal-length=85mm, f-number=4, subject-distance=1m 3in, circle=0.03mm', /two systems/],
  ])('refuses %s', (line, message) => {
    expect(() => run(dof, line)).toThrow(InputError);
    expect(() => run(dof, line)).toThrow(message);
  });

  it('refuses a point inside the lens, and a subject inside the focal length', () => {
    const cone = coneOf({ f: mm(85), N: fNumber(4), s: m(1), p: ratio(1) });
    expect(() => blurAt(cone, m(-1))).toThrow(/inside the lens/);
    expect(blurAt(cone, m(Infinity))).toBe(cone.D);
    expect(() => coneOf({ f: mm(85), N: fNumber(4), s: mm(80), p: ratio(1) })).toThrow(InputError);
  });

  it('always has its pupil nearer than the subject, however the pupil lies', () => {
    fc.assert(
      fc.property(lens, fc.double({ min: 0.1, max: 10, noNaN: true }), ({ f, N, s }, p) => {
        const cone = coneOf({ f: m(f), N: fNumber(N), s: m(s), p: ratio(p) });
        expect(cone.reach).toBeGreaterThan(0);
        expectClose(cone.reach + cone.e, s);
      }),
    );
  });

  it('loses 0.11 stop of light at a magnification of 0.04, and 0.28 at 0.10', () => {
    const loss = (at: number): string =>
      (2 * Math.log2(bellows({ m: ratio(at), p: ratio(1) }))).toFixed(2);
    expect([loss(0.04), loss(0.1)]).toEqual(['0.11', '0.28']);
  });
});
