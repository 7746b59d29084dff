import { expect, it } from 'vitest';
import { draw } from '~/drawing/exposure-value.ts';
import { showResult } from '~/formula/show.ts';
import formula from '~/optics/aperture/exposure-value.ts';
import { discs, placeOf } from './path-parts.ts';
import { paths, sheetOf, texts, wide } from './sheets.ts';

it('stands the setting and the light where they are on the scale', () => {
  const { sheet, results } = sheetOf(formula, draw, {
    'f-number': 'f/8',
    shutter: '1/60s',
    iso: '400',
  });
  const [set = [], light = []] = paths(sheet, 'emphasis');
  const unit = (placeOf(sheet, '12').x - placeOf(sheet, '10').x) / 2;
  const at = (line: [number, number][]): number =>
    10 + ((line[0]?.[0] ?? 0) - placeOf(sheet, '10').x) / unit;
  expect(at(set)).toBeCloseTo(Math.log2(64 * 60), 4);
  expect(at(light)).toBeCloseTo(Math.log2(64 * 60) - 2, 4);
  expect(texts(sheet)).toContain(`set ${showResult(formula.outputs.ev, results['ev'])}`);
  expect(texts(sheet)).toContain(`light ${showResult(formula.outputs.ev100, results['ev100'])}`);
});

it('lists settings a stop apart, the opening’s area times the time the same', () => {
  const { sheet } = sheetOf(formula, draw, { 'f-number': 'f/4.3' });
  const areas = discs(sheet, 'light', true).map(({ radius }) => radius ** 2);
  const times = paths(sheet, 'shade', true).map(wide);
  expect(areas).toHaveLength(5);
  const all = areas.map((area, i) => area * (times[i] ?? 0));
  for (const one of all) expect(one / (all[2] ?? 1)).toBeCloseTo(1, 4);
  expect((times[4] ?? 0) / (times[0] ?? 1)).toBeCloseTo(16, 4);
});

it('writes marks for marks', () => {
  const { sheet } = sheetOf(formula, draw, { 'f-number': 'f/5.6', shutter: '1/60s', iso: '' });
  expect(sheet.table.rows.map(([stop]) => stop)).toEqual(['f/2.8', 'f/4', 'f/5.6', 'f/8', 'f/11']);
  expect(sheet.table.rows.map(([, time]) => time)).toEqual([
    '1/240 s',
    '1/120 s',
    '1/60 s',
    '1/30 s',
    '1/15 s',
  ]);
  expect(texts(sheet).join()).not.toContain('light');
});
