import { expect, it } from 'vitest';
import { draw } from '~/drawing/angle-of-view.ts';
import { showResult } from '~/formula/show.ts';
import formula from '~/optics/lens/angle-of-view.ts';
import { high, paths, scaleOf, sheetOf, texts, wide } from './sheets.ts';

// Upright thin-lens arithmetic: at s a frame of width w takes in w(s - f)/f.
it.each([
  [85, 2.21, 0.9],
  [50, 2.05, (36 * (2.05 - 0.05)) / 50],
  [35, 0.5, (36 * (0.5 - 0.035)) / 35],
  [200, 12, (36 * (12 - 0.2)) / 200],
])('draws %s mm at %s m with the frame %s m wide, to scale', (f, s, width) => {
  const { sheet } = sheetOf(formula, draw, {
    'focal-length': `${f}mm`,
    'subject-distance': `${s}m`,
  });
  const scale = scaleOf(sheet);
  const [fan = []] = paths(sheet, 'light', true);
  expect(wide(fan) / scale).toBeCloseTo(s, 6);
  expect(high(fan) / 2 / scale).toBeCloseTo(width / 2, 6);
  const [frame = []] = paths(sheet, 'frame');
  expect(high(frame) / scale).toBeCloseTo(width, 6);
});

it('opens the fan by the angle it computes, focused at infinity too', () => {
  const { sheet, results } = sheetOf(formula, draw, {
    'focal-length': '50mm',
    'subject-distance': 'infinity',
  });
  const [fan = []] = paths(sheet, 'light', true);
  // 2 arctan(36/100) = 39.598°
  expect((2 * Math.atan(high(fan) / 2 / wide(fan)) * 180) / Math.PI).toBeCloseTo(39.598, 3);
  expect(texts(sheet)).toContain(showResult(formula.outputs.horizontal, results['horizontal']));
  expect(texts(sheet)).toContain('∞');
});

it('shows the neighbours in the series of focal lengths, each with its own angle', () => {
  const { sheet } = sheetOf(formula, draw);
  expect(texts(sheet)).toEqual(expect.arrayContaining(['60 mm', '85 mm', '105 mm']));
  const [fan = []] = paths(sheet, 'light', true);
  const slopes = paths(sheet, 'construction')
    .filter((line) => wide(line) > 0.9 * wide(fan) && high(line) > 1)
    .map((line) => high(line) / wide(line));
  // Half the frame over the image distance: 18(s - f)/(f s), at 2.21 m.
  const slope = (f: number): number => (18 * (2210 - f)) / (f * 2210);
  expect(slopes).toHaveLength(4);
  [slope(60), slope(60), slope(105), slope(105)].forEach((one, i) =>
    expect(slopes[i]).toBeCloseTo(one, 6),
  );
});

it('names the shortest and the longest lens without a neighbour beyond them', () => {
  const longest = texts(sheetOf(formula, draw, { 'focal-length': '135mm' }).sheet);
  expect(longest).toContain('105 mm');
  expect(longest.filter((text) => text.endsWith(' mm'))).toHaveLength(2);
});
