import { expect, it } from 'vitest';
import { draw } from '~/drawing/face-in-focus.ts';
import { showResult } from '~/formula/show.ts';
import formula from '~/optics/aperture/face-in-focus.ts';
import { discs, placeOf } from './path-parts.ts';
import { paths, scaleOf, sheetOf, texts, wide } from './sheets.ts';

const face = { 'knees-ahead': '', 'toes-ahead': '', circle: '0.030mm' };

/** Where words stand over: the upright construction lines, left to right. */
const lines = (sheet: Parameters<typeof paths>[0]): number[] =>
  paths(sheet, 'construction')
    .filter((line) => wide(line) < 1e-9)
    .map(([point]) => point?.[0] ?? 0)
    .sort((a, b) => a - b);

it('stands nose, eye and ear as far apart as they are, in the band between the limits', () => {
  const { sheet, results } = sheetOf(formula, draw, face);
  const scale = scaleOf(sheet);
  const [nose = 0, eye = 0, ear = 0] = lines(sheet);
  expect((eye - nose) / scale).toBeCloseTo(0.025, 6);
  expect((ear - eye) / scale).toBeCloseTo(0.075, 6);
  expect(discs(sheet, 'ground', true)[0]?.x).toBeCloseTo(eye, 4);
  // 2.21 × 0.03/(0.85 ± 0.03)
  const [band = []] = paths(sheet, 'light', true);
  expect((eye - Math.min(...band.map(([x]) => x))) / scale).toBeCloseTo((2.21 * 0.03) / 0.88, 6);
  expect((Math.max(...band.map(([x]) => x)) - eye) / scale).toBeCloseTo((2.21 * 0.03) / 0.82, 6);
  expect(showResult(formula.outputs.spare, results['spare'])).toBe('5.9 mm');
  expect(texts(sheet)).toContain('5.9 mm to spare, behind the eye');
  expect(texts(sheet)).toContain('widest mark: f/4');
});

it('marks the piece of the tighter side that is left over, or lacks', () => {
  const spare = (typed: Record<string, string>): number => {
    const { sheet } = sheetOf(formula, draw, { ...face, ...typed });
    return wide(paths(sheet, 'emphasis')[0] ?? []) / scaleOf(sheet);
  };
  expect(spare({})).toBeCloseTo((2.21 * 0.03) / 0.82 - 0.075, 6);
  // f/2: m D = 1.7 mm.
  expect(spare({ 'f-number': 'f/2' })).toBeCloseTo(0.075 - (2.21 * 0.03) / 1.67, 6);
});

it('squeezes a turned face, and adds sway in dashes both ways', () => {
  const { sheet } = sheetOf(formula, draw, { ...face, 'head-turn': '60deg', sway: '30mm' });
  const scale = scaleOf(sheet);
  const [nose = 0, eye = 0, ear = 0] = lines(sheet);
  expect((eye - nose) / scale).toBeCloseTo(0.0125, 6);
  expect((ear - eye) / scale).toBeCloseTo(0.0375, 6);
  const sway = paths(sheet, 'hidden').filter((line) => wide(line) > 0);
  expect(sway.map((line) => wide(line) / scale)).toEqual([
    expect.closeTo(0.03, 6),
    expect.closeTo(0.03, 6),
  ]);
  expect(texts(sheet)).toContain('dashed: sway 30 mm');
});

it('goes as far as the toes where they are wanted, and calls what lacks short', () => {
  const { sheet } = sheetOf(formula, draw, { circle: '0.030mm' });
  const [toes = 0, knees = 0, , eye = 0] = lines(sheet);
  expect((eye - toes) / scaleOf(sheet)).toBeCloseTo(0.4, 6);
  expect((eye - knees) / scaleOf(sheet)).toBeCloseTo(0.25, 6);
  expect(placeOf(sheet, 'toes').x).toBeCloseTo(toes, 4);
  // 400 mm wanted, 75.3 mm there.
  expect(texts(sheet)).toContain('320 mm short, ahead of the eye');
});
