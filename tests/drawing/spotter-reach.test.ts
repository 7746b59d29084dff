import { expect, it } from 'vitest';
import { draw } from '~/drawing/spotter-reach.ts';
import { showResult } from '~/formula/show.ts';
import formula from '~/optics/lens/spotter-reach.ts';
import { paths, scaleOf, sheetOf, texts, wide } from './sheets.ts';

const chainOf = (typed: Parameters<typeof sheetOf>[2]) => {
  const { sheet, results } = sheetOf(formula, draw, typed);
  const lines = paths(sheet, 'dimension').filter(
    (line) => line.length === 2 && line[0]?.[1] === line[1]?.[1],
  );
  return { sheet, results, scale: scaleOf(sheet), lines };
};

it('sets frame, gap, clearance and reach to one scale', () => {
  const { sheet, results, scale, lines } = chainOf({ 'child-offset': '0.1m' });
  const lengths = lines.map((line) => wide(line) / scale);
  // Reach to the hand, the frame, gap with clearance (0.30 - 0.10 + 0.25), the reach below.
  [0.65, 0.6, 0.45, 0.65].forEach((one, i) => expect(lengths[i]).toBeCloseTo(one, 6));
  expect(texts(sheet)).toContain(showResult(formula.outputs.gap, results['gap']));
  expect(texts(sheet)).toContain('within reach: yes');
});

it('puts the spotter at the nearer edge, on whichever side that is', () => {
  const side = (offset: string): number => {
    const [child = [], adult = []] = paths(
      chainOf({ 'child-offset': offset }).sheet,
      'figure',
      true,
    );
    return Math.sign((adult[0]?.[0] ?? 0) - (child[0]?.[0] ?? 0));
  };
  expect([side('0.2m'), side('-0.2m')]).toEqual([1, -1]);
});

it('marks a reach that does not reach', () => {
  const { sheet } = chainOf({ 'frame-width': '1.4m' });
  expect(paths(sheet, 'emphasis').length).toBe(2);
  expect(texts(sheet)).toContain('within reach: no');
});
