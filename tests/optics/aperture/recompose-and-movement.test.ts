import { describe, expect, it } from 'vitest';
import movement from '../../../src/optics/aperture/movement-blur.ts';
import recompose from '../../../src/optics/aperture/recompose-error.ts';
import { expectClose } from '../../support/close.ts';
import { run, value } from './support.ts';

describe('focus and recompose', () => {
  const set = 'focal-length=85mm, f-number=f/2.8, subject-distance=2.0m, circle=0.030mm';

  it('by 15 degrees at 2.0 m puts the focus 68 mm behind the eye, 156 % of the depth in front', () => {
    expectClose(
      value(recompose, `${set}, angle=15deg`, 'focus-error'),
      2 * (1 - Math.cos(Math.PI / 12)),
      1e-12,
    );
    // In front there are 2000 × c/(mD + c) = 43.6 mm.
    const front = (2 * 0.03) / ((85 / 1915) * (85 / 2.8) + 0.03);
    expect((front * 1000).toFixed(1)).toBe('43.6');
    expectClose(
      value(recompose, `${set}, angle=15deg`, 'depth-share'),
      (2 * (1 - Math.cos(Math.PI / 12))) / front,
      1e-12,
    );
    expectClose(
      value(recompose, `${set}, angle=15deg, sway=20mm`, 'sway-share'),
      0.02 / front,
      1e-12,
    );
  });

  it('takes a shift across the frame as the angle it makes', () => {
    expectClose(
      value(recompose, `${set}, shift=${2 * Math.tan(Math.PI / 12)}m`, 'focus-error'),
      value(recompose, `${set}, angle=15deg`, 'focus-error'),
      1e-12,
    );
  });

  it('keeps its digits for the smallest turn, and is nothing for none', () => {
    expectClose(
      value(recompose, 'subject-distance=2m, angle=0.001deg', 'focus-error'),
      ((0.001 * Math.PI) / 180) ** 2,
      1e-9,
    );
    expect(value(recompose, 'subject-distance=2m, angle=0deg', 'focus-error')).toBe(0);
  });

  it('gives the error without a lens, and no shares', () => {
    const { results } = run(recompose, 'subject-distance=2m, angle=15deg');
    expect(results['depth-share']?.text).toBe('not given');
    expect(results['sway-share']?.text).toBe('not given');
    for (const left of ['focal-length', 'f-number', 'circle']) {
      const rest = `${set}, angle=15deg`.split(', ').filter((pair) => !pair.startsWith(left));
      const without = run(recompose, rest.join(', ')).results;
      expectClose(without['focus-error']?.value as number, 2 * (1 - Math.cos(Math.PI / 12)), 1e-12);
      expect(without['depth-share']?.text).toBe('not given');
    }
  });

  it('refuses both angle and shift, neither, and infinity', () => {
    expect(() => run(recompose, `${set}, angle=15deg, shift=0.3m`)).toThrow(
      /exactly one of: angle, or shift/,
    );
    expect(() => run(recompose, set)).toThrow(/exactly one of/);
    expect(() => run(recompose, 'subject-distance=infinity, angle=1deg')).toThrow(/finite/);
  });
});

describe('movement blur', () => {
  it('at 1 m/s and magnification 0.04: 0.040 mm in t0.1 1/1000 s, 0.133 mm in t0.5 1/1000 s', () => {
    expectClose(
      value(movement, 'speed=1m/s, magnification=0.04, flash-t01=1/1000s', 'flash-blur'),
      0.00004,
    );
    expect(
      (
        value(movement, 'speed=1m/s, magnification=0.04, flash-t05=1/1000s', 'flash-blur') * 1000
      ).toFixed(3),
    ).toBe('0.133');
  });

  it('takes focal length and distance for the magnification', () => {
    expectClose(
      value(
        movement,
        'speed=1m/s, focal-length=85mm, subject-distance=2.21m, flash-t01=1/1000s',
        'flash-blur',
      ),
      0.00004,
    );
    expect(() => run(movement, 'speed=1m/s, focal-length=85mm, flash-t01=1/1000s')).toThrow(
      /exactly one of: magnification, or focal-length with subject-distance/,
    );
    expect(() => run(movement, 'speed=1m/s, magnification=0.04, focal-length=85mm')).toThrow(
      /exactly one of/,
    );
    expect(() =>
      run(movement, 'speed=1m/s, magnification=0.04, flash-t01=1ms, flash-t05=1ms'),
    ).toThrow(/at most one of/);
  });

  it('counts circles, and goes without a flash by window light', () => {
    const { results } = run(
      movement,
      'speed=0.5m/s, magnification=0.04, shutter=1/100s, circle=0.02mm',
    );
    expectClose(results['ambient-blur']?.value as number, 0.0002);
    expectClose(results['ambient-circles']?.value as number, 10);
    expect(results['flash-blur']?.text).toBe('not given');
    expect(results['flash-circles']?.text).toBe('not given');
    expect(results['ghost']?.text).toBe('not given');
    expect(results['outlasts-shutter']?.text).toBe('not given');
    const dark = run(
      movement,
      'speed=0.5m/s, magnification=0.04, flash-t01=1ms, ambient-under=2stop, circle=0.02mm',
    ).results;
    for (const id of ['ambient-blur', 'ambient-circles', 'ghost', 'outlasts-shutter'])
      expect(dark[id]?.text).toBe('not given');
    expectClose(dark['flash-circles']?.value as number, 1);
  });

  it.each([
    [4, 0.05, true], // 2.5 circles, ambient 4 stops under: shows
    [4.01, 0.05, false],
    [4, 0.04, false], // exactly two circles do not
  ])('ambient %d stops under and %d mm of smear: ghost %s', (under, smear, ghost) => {
    const line = `speed=1m/s, magnification=${smear / 10}, shutter=1/100s, circle=0.02mm, ambient-under=${under}stop`;
    expect(run(movement, line).results['ghost']?.value).toBe(ghost);
  });

  it('warns when the flash burns longer than the shutter is open', () => {
    const outlasts = (flash: string): unknown =>
      run(movement, `speed=1m/s, magnification=0.04, shutter=1/200s, ${flash}`).results[
        'outlasts-shutter'
      ]?.value;
    expect(outlasts('flash-t01=1/200s')).toBe(false);
    expect(outlasts('flash-t01=1/199s')).toBe(true);
    expect(outlasts('flash-t05=1/600s')).toBe(true); // 3.32/600 s
  });

  it('takes exactly two circles for no ghost, however they are reckoned', () => {
    // 0.1 m/s × 0.05 × 1/125 s is 0.04 mm.
    const two =
      'speed=0.1m/s, magnification=0.05, shutter=1/125s, circle=0.02mm, ambient-under=0stop';
    expect(run(movement, two).results['ghost']?.value).toBe(false);
    expect(run(movement, two.replace('0.1m/s', '0.101m/s')).results['ghost']?.value).toBe(true);
  });
});
