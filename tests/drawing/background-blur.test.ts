import { expect, it } from 'vitest';
import { draw } from '~/drawing/background-blur.ts';
import { showResult } from '~/formula/show.ts';
import formula from '~/optics/aperture/background-blur.ts';
import { discs } from './path-parts.ts';
import { high, paths, scaleOf, sheetOf, texts, wide } from './sheets.ts';

// m D b/(s + b): 0.04 × 85/N × 1.5/3.71 mm.
const disc = (N: number): number => (0.04 * 0.085 * 1.5) / 3.71 / N;

it('draws a point of light as wide in the frame as it is on the sensor, at three apertures', () => {
  const { sheet } = sheetOf(formula, draw, { 'ahead-distance': '' });
  const frame = paths(sheet, 'frame')[0] ?? [];
  expect(high(frame) / wide(frame)).toBeCloseTo(36 / 24, 6);
  const scale = high(frame) / 0.036;
  const seen = paths(sheet, 'light', true).slice(0, 3);
  // Set down to a hundredth of a unit.
  [2.8, 4, 5.6].forEach((N, i) =>
    expect(Math.abs(wide(seen[i] ?? []) - disc(N) * scale)).toBeLessThan(0.011),
  );
});

it('draws the same discs enlarged, to a scale that is stated', () => {
  const { sheet, results } = sheetOf(formula, draw, { 'ahead-distance': '' });
  const scale = scaleOf(sheet, 126);
  const large = discs(sheet, 'light', true);
  [2.8, 4, 5.6].forEach((N, i) =>
    expect(((large[i]?.radius ?? 0) * 2) / scale).toBeCloseTo(disc(N), 8),
  );
  expect(sheet.table.rows[1]?.[1]).toBe(showResult(formula.outputs.sensor, results['sensor']));
  expect(texts(sheet)).toContain(showResult(formula.outputs.backdrop, results['backdrop']));
});

it('adds what lies ahead of the child to the same scale, where it is given', () => {
  const { sheet } = sheetOf(formula, draw);
  const ahead = discs(sheet, 'shade', true);
  // 0.04 × 85/4 × 0.5/(2.21 − 0.5) mm.
  expect(((ahead[1]?.radius ?? 0) * 2) / scaleOf(sheet, 126)).toBeCloseTo(
    (0.04 * 0.02125 * 0.5) / 1.71,
    8,
  );
});

it('opens the cone from the pupil through the plane in focus to the disc on the backdrop', () => {
  const { sheet } = sheetOf(formula, draw);
  const along = scaleOf(sheet);
  const [ray = []] = paths(sheet, 'light').filter((line) => line.length === 3);
  const [pupil, plane, wall] = ray;
  expect(((plane?.[0] ?? 0) - (pupil?.[0] ?? 0)) / along).toBeCloseTo(2.21, 6);
  expect(((wall?.[0] ?? 0) - (plane?.[0] ?? 0)) / along).toBeCloseTo(1.5, 6);
  const [, larger] = /across: ([\d.]+) times larger/.exec(texts(sheet).join('\n')) ?? [];
  const axis = plane?.[1] ?? 0;
  const across = along * Number(larger);
  expect((2 * (axis - (pupil?.[1] ?? 0))) / across).toBeCloseTo(0.085 / 4, 6);
  expect((2 * ((wall?.[1] ?? 0) - axis)) / across).toBeCloseTo((0.02125 * 1.5) / 2.21, 6);
});

it('sends the cone on in an arrow where the backdrop is endlessly far', () => {
  const { sheet } = sheetOf(formula, draw, { 'backdrop-distance': 'infinity' });
  expect(texts(sheet).filter((text) => text === '∞')).toHaveLength(2);
});

it('draws no disc where neither backdrop nor thing ahead is given', () => {
  const { sheet } = sheetOf(formula, draw, { 'backdrop-distance': '', 'ahead-distance': '' });
  expect(paths(sheet, 'light', true)).toEqual([]);
  expect(discs(sheet, 'shade', true)).toEqual([]);
});
