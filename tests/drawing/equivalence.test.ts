import { expect, it } from 'vitest';
import { draw } from '~/drawing/equivalence.ts';
import { showResult } from '~/formula/show.ts';
import formula from '~/optics/lens/equivalence.ts';
import { high, paths, scaleOf, sheetOf, texts, wide } from './sheets.ts';

it('draws both formats in their millimetres', () => {
  const { sheet } = sheetOf(formula, draw);
  const scale = scaleOf(sheet);
  const [[given = []], [other = []]] = [paths(sheet, 'object'), paths(sheet, 'shade')];
  expect(wide(given) / scale).toBeCloseTo(0.036, 9);
  expect(high(given) / scale).toBeCloseTo(0.024, 9);
  expect(wide(other) / scale).toBeCloseTo(0.0236, 9);
  expect(high(other) / scale).toBeCloseTo(0.0158, 9);
  expect(texts(sheet)).toEqual(
    expect.arrayContaining(['outer: 36 × 24 mm', 'inner: 23.6 × 15.8 mm']),
  );
});

it('opens one angle for both lenses, each its focal length from its sensor', () => {
  const { sheet, results } = sheetOf(formula, draw);
  const scale = scaleOf(sheet, 224);
  const sensor = (role: 'object' | 'shade') =>
    paths(sheet, role).find((line) => line.length === 2) ?? [];
  const apex = 320;
  const [one, other] = [sensor('object'), sensor('shade')];
  expect(high(one) / scale).toBeCloseTo(Math.hypot(0.036, 0.024), 6);
  expect((apex - (one[0]?.[0] ?? 0)) / scale).toBeCloseTo(0.085, 6);
  // 85 × √(23.6² + 15.8²)/√(36² + 24²) = 55.79 mm
  expect((apex - (other[0]?.[0] ?? 0)) / scale).toBeCloseTo(
    (0.085 * Math.hypot(23.6, 15.8)) / Math.hypot(36, 24),
    6,
  );
  expect(texts(sheet)).toEqual(
    expect.arrayContaining([
      '85 mm',
      showResult(formula.outputs.fEquivalent, results['fEquivalent']),
    ]),
  );
});

it('dashes the print’s crop in both', () => {
  const { sheet } = sheetOf(formula, draw, { 'print-aspect': '4:5' });
  const crops = paths(sheet, 'hidden');
  expect(crops).toHaveLength(2);
  for (const crop of crops) expect(wide(crop) / high(crop)).toBeCloseTo(5 / 4, 6);
});

it('leaves the lenses out when no focal length is given', () => {
  const { sheet } = sheetOf(formula, draw, { 'focal-length': '' });
  expect(paths(sheet, 'light', true)).toEqual([]);
});
