import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { InputError } from '../../../src/formula/errors.ts';
import record from '../../../src/optics/aperture/face-in-focus.ts';
import { expectClose } from '../../support/close.ts';
import { run, value } from './support.ts';

const set = 'focal-length=85mm, subject-distance=2.210m, circle=0.030mm';
const face = `${set}, reach-ahead=25mm, reach-behind=75mm`;

describe('face in focus', () => {
  it('needs f/3.72 for a nose at 25 and an ear at 75 mm; f/4 covers with 6 mm to spare behind', () => {
    const { results } = run(record, `${face}, f-number=f/4`);
    // Behind: fm/c × b/(s + b) = 85 × 0.04/0.03 × 75/2285
    expectClose(
      results['widest-f-number']?.value as number,
      ((0.085 * 0.04) / 0.00003) * (0.075 / 2.285),
      1e-12,
    );
    expect(results['widest-f-number']?.text).toBe('f/3.72');
    expect(results['widest-marked']?.value).toBe(4);
    expect(results).toMatchObject({
      covered: { value: true },
      'binding-side': { value: 'behind' },
    });
    expect(Math.round((results['spare']?.value as number) * 1000)).toBe(6);
  });

  it('just covers at its own widest aperture and least distance, and not beyond them', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.005, max: 0.3, noNaN: true }),
        fc.double({ min: 0.005, max: 0.3, noNaN: true }),
        fc.double({ min: 1, max: 6, noNaN: true }),
        fc.double({ min: 0.7, max: 1.4, noNaN: true }),
        (a, b, s, p) => {
          const line = (N: number, distance: number): string =>
            `focal-length=85mm, circle=0.03mm, pupil-magnification=${p}, reach-ahead=${a}m, reach-behind=${b}m, f-number=${N}, subject-distance=${distance}m`;
          const widest = value(record, line(8, s), 'widest-f-number');
          if (widest > 0.6 && widest < 200)
            expectClose(value(record, line(widest, s), 'spare'), 0, 0, 1e-9);
          const least = value(record, line(8, s), 'least-distance');
          expectClose(value(record, line(8, least), 'spare'), 0, 0, 1e-9);
          expect(value(record, line(8, least * 1.01), 'spare')).toBeGreaterThan(0);
        },
      ),
    );
  });

  it('asks for more when the child sways, less when the head turns, and for the feet if they are wanted', () => {
    const spare = (extra: string): number =>
      value(record, `${face}, f-number=f/4${extra}`, 'spare');
    expectClose(spare(', sway=5mm'), spare('') - 0.005, 1e-9);
    // Behind binds: 75 mm × (1 − cos 30°) comes back.
    expectClose(spare(', head-turn=30deg') - spare(''), 0.075 * (1 - Math.cos(Math.PI / 6)), 1e-9);
    const feet = run(record, `${face}, f-number=f/4, knees-ahead=200mm, toes-ahead=350mm`).results;
    expect(feet).toMatchObject({ covered: { value: false }, 'binding-side': { value: 'ahead' } });
    // In front there are 75.3 mm, and 350 are wanted.
    expectClose(feet['spare']?.value as number, 2.21 - (2.21 * 0.85) / 0.88 - 0.35, 1e-9);
  });

  it('takes typed or exact marks for the widest marked aperture', () => {
    // f/3.5 stands for 3.564: enough for f/3.55 only when marks are exact.
    const line = `${set}, f-number=f/4, reach-ahead=25mm, reach-behind=71.5mm`;
    const needed = value(record, line, 'widest-f-number');
    expect(needed).toBeGreaterThan(3.5);
    expect(needed).toBeLessThan(3.5636);
    expect(value(record, line, 'widest-marked')).toBe(4);
    expect(value(record, `${line}, marks=exact`, 'widest-marked')).toBe(3.5);
  });

  it('is covered by a mark that is exactly enough', () => {
    // 85 × 0.04/0.034 = 100, and b/(s + b) = 0.04 for b = 0.04 × 2210/0.96: f/4 and nothing to spare.
    const line = `focal-length=85mm, subject-distance=2.21m, circle=0.034mm, f-number=4, reach-ahead=0mm, reach-behind=${(0.04 * 2210) / 0.96}mm`;
    const { results } = run(record, line);
    expectClose(results['widest-f-number']?.value as number, 4);
    expect(results).toMatchObject({
      covered: { value: true },
      'widest-marked': { value: 4 },
      'binding-side': { value: 'behind' },
    });
    expectClose(results['spare']?.value as number, 0, 0, 1e-12);
  });

  it('says so when no mark is small enough', () => {
    expect(
      run(
        record,
        'focal-length=200mm, circle=0.005mm, subject-distance=1.2m, f-number=22, reach-ahead=100mm, reach-behind=100mm',
      ).results['widest-marked']?.infinite,
    ).toBe(true);
  });

  it('counts the least distance from the sensor when the tape begins there', () => {
    const from = `focal-length=85mm, circle=0.03mm, f-number=4, reach-ahead=25mm, reach-behind=75mm`;
    const least = value(record, `${from}, subject-distance=2.21m`, 'least-distance');
    const counted = value(
      record,
      `${from}, subject-distance=2.2984m, measured-from=sensor`,
      'least-distance',
    );
    // Thin lens: the sensor lies f(1 + m) behind, at the least distance's own magnification.
    expectClose(counted, least + 0.085 * (1 + 0.085 / (least - 0.085)), 1e-9);
  });

  it.each([
    [`${set}, f-number=4, reach-ahead=0mm, reach-behind=0mm`, /no depth/],
    [
      'focal-length=85mm, circle=0.03mm, f-number=4, subject-distance=0.3m, reach-ahead=0.3m, reach-behind=0mm',
      /reaches into the lens/,
    ],
  ])('refuses %s', (line, message) => {
    expect(() => run(record, line)).toThrow(InputError);
    expect(() => run(record, line)).toThrow(message);
  });
});
