import { expect, it } from 'vitest';
import { draw } from '~/drawing/room-fit.ts';
import formula from '~/optics/lens/room-fit.ts';
import { high, paths, scaleOf, sheetOf, texts, wide } from './sheets.ts';

const sensorToChild = 0.085 * (2 + 0.04 + 25); // 2.2984 m

it('lays out the chain from wall to wall', () => {
  const { sheet } = sheetOf(formula, draw);
  const scale = scaleOf(sheet);
  const [chain = []] = paths(sheet, 'dimension');
  // 0.80 + 2.2984 + 1.50 + 0.30 m
  expect(wide(chain) / scale).toBeCloseTo(0.8 + sensorToChild + 1.5 + 0.3, 6);
  const [room = []] = paths(sheet, 'ground', true);
  expect(wide(room) / scale).toBeCloseTo(5, 6);
  expect(high(room) / scale).toBeCloseTo(3.6, 6);
  expect(texts(sheet)).toEqual(
    expect.arrayContaining(['0.80 m', '2.30 m', '1.50 m', '0.30 m', 'room 5.00 m, 0.10 m spare']),
  );
  expect(paths(sheet, 'emphasis')).toEqual([]);
});

it('shows what a short room lacks, behind its wall', () => {
  const { sheet } = sheetOf(formula, draw, { 'room-length': '4.2m' });
  const [out = []] = paths(sheet, 'emphasis');
  expect(wide(out) / scaleOf(sheet)).toBeCloseTo(0.8 + sensorToChild + 1.8 - 4.2, 6);
  expect(texts(sheet)).toContain('room 4.20 m, 0.70 m short');
});

it('opens the field to the backdrop, and stands a light’s room beside the frame', () => {
  const { sheet } = sheetOf(formula, draw);
  const scale = scaleOf(sheet);
  const [left = [], right = [], fan = []] = paths(sheet, 'light', true);
  expect(high(left) / scale).toBeCloseTo(1.2, 6);
  expect(high(right) / scale).toBeCloseTo(1.2, 6);
  // 0.60 m at 2.21 m is 0.60 × 3.71/2.21 at the backdrop.
  expect(high(fan) / scale).toBeCloseTo((0.6 * 3.71) / 2.21, 6);
});

it('marks the light that stands in a wall', () => {
  const { sheet } = sheetOf(formula, draw, { 'room-width': '2.4m' });
  const out = paths(sheet, 'emphasis').map((line) => high(line) / scaleOf(sheet));
  // 0.30 + 1.20 - 1.20 m on each side
  expect(out).toHaveLength(2);
  for (const one of out) expect(one).toBeCloseTo(0.3, 6);
});

it('draws the longest lens that fits when none is given', () => {
  const { sheet } = sheetOf(formula, draw, { 'focal-length': '' });
  const [chain = []] = paths(sheet, 'dimension');
  expect(wide(chain) / scaleOf(sheet)).toBeCloseTo(5, 6);
});
