import { expect, it } from 'vitest';
import { draw } from '~/drawing/movement-blur.ts';
import { showResult } from '~/formula/show.ts';
import formula from '~/optics/aperture/movement-blur.ts';
import { discs } from './path-parts.ts';
import { paths, scaleOf, sheetOf, texts, wide } from './sheets.ts';

const typed = { speed: '1m/s', magnification: '0.04', circle: '0.030mm' };

it('draws both smears and the circle to one stated scale', () => {
  const { sheet, results } = sheetOf(formula, draw, {
    ...typed,
    'flash-t05': '1/1000s',
    shutter: '1/200s',
  });
  const scale = scaleOf(sheet);
  expect(wide(paths(sheet, 'light', true)[0] ?? []) / scale).toBeCloseTo(0.04 * 0.00332, 8);
  expect(wide(paths(sheet, 'shade', true)[0] ?? []) / scale).toBeCloseTo(0.04 / 200, 8);
  const [circle] = discs(sheet, 'emphasis');
  expect(((circle?.radius ?? 0) * 2) / scale).toBeCloseTo(0.00003, 8);
  expect(texts(sheet)).toContain(`by flash ${showResult(formula.outputs.flash, results['flash'])}`);
  expect(texts(sheet)).toContain(
    `by ambient light ${showResult(formula.outputs.ambient, results['ambient'])}`,
  );
  // Whole circles that fit: 4 of 4.4 in the flash's, 6 of 6.7 in the other.
  expect(discs(sheet, 'construction')).toHaveLength(10);
});

it('takes focal length and distance in place of the magnification', () => {
  const { sheet } = sheetOf(formula, draw, {
    speed: '1m/s',
    'focal-length': '85mm',
    'subject-distance': '2.21m',
    circle: '0.030mm',
  });
  expect(wide(paths(sheet, 'light', true)[0] ?? []) / scaleOf(sheet)).toBeCloseTo(0.00004, 8);
});

it('lets a smear far longer than the rest run off the sheet', () => {
  const { sheet } = sheetOf(formula, draw, { ...typed, shutter: '2s' });
  expect(paths(sheet, 'shade').filter((line) => line.length === 3)).toHaveLength(1);
  expect(wide(paths(sheet, 'light', true)[0] ?? []) / scaleOf(sheet)).toBeCloseTo(0.00004, 8);
});

it('warns of a ghost and of a flash that outlasts the shutter', () => {
  const say = (more: Record<string, string>): string =>
    texts(sheetOf(formula, draw, { ...typed, ...more }).sheet).join('\n');
  expect(say({ 'ambient-under': '2stop' })).toContain('ghost: yes');
  expect(say({ 'ambient-under': '5stop' })).toContain('ghost: no');
  expect(say({ shutter: '1/8000s' })).toContain('the flash outlasts the shutter');
  expect(say({ 'ambient-under': '' })).not.toContain('ghost');
});

it('leaves out what is not given', () => {
  const { sheet } = sheetOf(formula, draw, { ...typed, 'flash-t01': '', shutter: '' });
  expect(paths(sheet, 'light', true)).toEqual([]);
  expect(paths(sheet, 'shade', true)).toEqual([]);
  expect(texts(sheet)).toContain('no shutter and no flash duration given');
});
