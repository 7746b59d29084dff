import { expect, it } from 'vitest';
import { draw } from '~/drawing/perspective.ts';
import formula from '~/optics/lens/perspective.ts';
import { high, paths, scaleOf, sheetOf, texts, wide } from './sheets.ts';

it('draws both distances to one scale, and the sizes they make', () => {
  const { sheet } = sheetOf(formula, draw, {
    'subject-distance': '0.25m',
    'compare-distance': '1.6m',
  });
  const scale = scaleOf(sheet);
  const features = paths(sheet, 'object').filter((line) => line.length === 2);
  const at = features.map(([point]) => ((point?.[0] ?? 0) - 32) / scale);
  [0.25, 0.35, 1.6, 1.7].forEach((x, i) => expect(at[i]).toBeCloseTo(x, 6));
  for (const line of features) expect(high(line)).toBeCloseTo(high(features[0] ?? []), 6);
  const near = paths(sheet, 'light', true).map(high);
  const far = paths(sheet, 'figure', true)
    .filter((area) => wide(area) === 22)
    .map(high);
  // 0.35/0.25 = 1.4 and 1.7/1.6 = 1.0625; the near ones are enlarged to one height.
  expect((near[0] ?? 0) / (far[0] ?? 0)).toBeCloseTo(1.4, 6);
  expect((near[1] ?? 0) / (far[1] ?? 0)).toBeCloseTo(1.0625, 6);
  expect(near[0]).toBe(near[1]);
  expect(texts(sheet)).toEqual(expect.arrayContaining(['1.400 : 1', '1.063 : 1', '0.10 m']));
});

it('runs each ray straight from the pupil past the near feature', () => {
  const { sheet } = sheetOf(formula, draw);
  for (const ray of paths(sheet, 'light')) expect(ray[0]?.[0]).toBe(32);
  expect(paths(sheet, 'light')).toHaveLength(4);
});

it('leaves the second view out when no distance is set beside the first', () => {
  const { sheet } = sheetOf(formula, draw, { 'compare-distance': '' });
  expect(paths(sheet, 'light', true)).toHaveLength(1);
  expect(sheet.table.rows).toEqual([['2.21 m', '1.045']]);
});
