import { expect, it } from 'vitest';
import { draw } from '~/drawing/recompose-error.ts';
import { showResult } from '~/formula/show.ts';
import formula from '~/optics/aperture/recompose-error.ts';
import { discs } from './path-parts.ts';
import { paths, scaleOf, sheetOf, texts, wide } from './sheets.ts';

const typed = {
  angle: '15deg',
  'subject-distance': '2.0m',
  'f-number': 'f/2.8',
  circle: '0.030mm',
  sway: '0mm',
};

it('turns the line of sight by the angle, as long as the distance', () => {
  const { sheet } = sheetOf(formula, draw, typed);
  const [old = []] = paths(sheet, 'construction');
  const sight = paths(sheet, 'light')[0] ?? [];
  const [from = [0, 0], to = [0, 0]] = sight;
  expect(Math.atan2(to[1] - from[1], to[0] - from[0])).toBeCloseTo(Math.PI / 12, 6);
  expect(Math.hypot(to[0] - from[0], to[1] - from[1])).toBeCloseTo(wide(old), 4);
  // The new plane stands square on the new line of sight.
  const [one = [0, 0], other = [0, 0]] = paths(sheet, 'frame')[0] ?? [];
  expect(
    (other[0] - one[0]) * (to[0] - from[0]) + (other[1] - one[1]) * (to[1] - from[1]),
  ).toBeCloseTo(0, 3);
  expect(Math.hypot(other[0] - one[0], other[1] - one[1])).toBeGreaterThan(30);
});

it('enlarges the miss beside what is sharp: 68 of 43.6 mm at 15°, 2.0 m and f/2.8', () => {
  const { sheet, results } = sheetOf(formula, draw, typed);
  const fine = scaleOf(sheet);
  const eye = discs(sheet, 'figure', true)[0]?.x ?? 0;
  const plane = paths(sheet, 'frame').at(-1)?.[0]?.[0] ?? 0;
  expect((plane - eye) / fine).toBeCloseTo(2 * (1 - Math.cos(Math.PI / 12)), 6);
  const [band = []] = paths(sheet, 'light', true);
  const disc = (0.085 / (2 - 0.085)) * (85 / 2.8);
  expect((plane - Math.min(...band.map(([x]) => x))) / fine).toBeCloseTo(
    (2 * 0.03) / (disc + 0.03),
    6,
  );
  expect(texts(sheet)).toContain(showResult(formula.outputs.error, results['error']));
  expect(texts(sheet)).toContain('used up: 156 %');
});

it('works from a shift as from its angle', () => {
  const { sheet } = sheetOf(formula, draw, { shift: '0.3m', 'subject-distance': '2.0m' });
  const [from = [0, 0], to = [0, 0]] = paths(sheet, 'light')[0] ?? [];
  expect((to[1] - from[1]) / (to[0] - from[0])).toBeCloseTo(0.15, 6);
  expect(texts(sheet)).toContain('shift 0.30 m');
});

it('shows sway either way of the eye, and no band where no aperture is given', () => {
  const { sheet } = sheetOf(formula, draw, { angle: '8deg', 'f-number': '', sway: '20mm' });
  const fine = scaleOf(sheet);
  const sway = paths(sheet, 'hidden').slice(-2);
  expect(((sway[1]?.[0]?.[0] ?? 0) - (sway[0]?.[0]?.[0] ?? 0)) / fine).toBeCloseTo(0.04, 6);
  expect(paths(sheet, 'light', true)).toEqual([]);
  expect(texts(sheet).join()).not.toContain('used up');
});
