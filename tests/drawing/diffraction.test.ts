import { expect, it } from 'vitest';
import { draw } from '~/drawing/diffraction.ts';
import { showResult } from '~/formula/show.ts';
import formula from '~/optics/aperture/diffraction.ts';
import { discs, placeOf } from './path-parts.ts';
import { paths, scaleOf, sheetOf, texts, wide } from './sheets.ts';

it.each([
  [4, 0.04, 6],
  [16, 0, 4],
  [32, 0.5, 3.76],
])(
  'draws the Airy disc at f/%s, magnification %s, beside circle and a %s µm pixel to one scale',
  (N, m, pitch) => {
    const { sheet, results } = sheetOf(formula, draw, {
      'f-number': `f/${N}`,
      magnification: String(m),
      'pixel-pitch': `${pitch}um`,
      circle: '0.030mm',
    });
    const scaleBar = scaleOf(sheet);
    const micro = (units: number): number => (units / scaleBar) * 1e6;
    const airy = discs(sheet, 'light', true);
    expect(airy).toHaveLength(3);
    for (const { radius } of airy)
      expect(micro(2 * radius)).toBeCloseTo(2.44 * 0.55 * N * (1 + m), 4);
    expect(micro(2 * (discs(sheet, 'object')[0]?.radius ?? 0))).toBeCloseTo(30, 4);
    expect(micro(wide(paths(sheet, 'shade')[0] ?? []))).toBeCloseTo(pitch, 4);
    expect(texts(sheet)).toContain(showResult(formula.outputs.airy, results['airy']));
  },
);

it('stands the limits on a scale of stops', () => {
  const { sheet } = sheetOf(formula, draw, { magnification: '0', circle: '0.030mm' });
  const step = placeOf(sheet, 'f/8').x - placeOf(sheet, 'f/5.6').x;
  const from4 = (x: number): number => (x - placeOf(sheet, 'f/8').x) / step;
  const [at = []] = paths(sheet, 'emphasis');
  expect(from4(at[0]?.[0] ?? 0)).toBeCloseTo(-2, 4);
  const ticks = paths(sheet, 'object')
    .filter((line) => line.length === 2 && wide(line) < 1e-9 && (line[0]?.[1] ?? 0) < 240)
    .map((line) => from4(line[0]?.[0] ?? 0));
  expect(ticks[0]).toBeCloseTo(2 * Math.log2(30 / (2.44 * 0.55) / 8), 4);
  expect(ticks[1]).toBeCloseTo(2 * Math.log2(6 / (2.44 * 0.55) / 8), 4);
});

it('leaves out what is not given', () => {
  const { sheet } = sheetOf(formula, draw, { 'f-number': '', 'pixel-pitch': '' });
  expect(discs(sheet, 'light', true)).toEqual([]);
  expect(paths(sheet, 'shade')).toEqual([]);
  expect(paths(sheet, 'emphasis')).toEqual([]);
});
