import { expect, it } from 'vitest';
import { draw } from '~/drawing/beam-spread.ts';
import formula from '~/optics/light/beam-spread.ts';
import { overlaps } from './overlaps.ts';
import { discs } from './path-parts.ts';
import { high, paths, scaleOf, sheetOf, texts, wide } from './sheets.ts';

const usual = { angle: '20deg', distance: '2m', tilt: '30deg', opening: '0.18m' };

it('draws the spot of a tilted grid: 0.823 by 0.709 m, 42 mm off the aim', () => {
  const { sheet } = sheetOf(formula, draw, usual);
  const scale = scaleOf(sheet);
  const [ring = []] = paths(sheet, 'emphasis').filter((line) => line.length === 64);
  expect(wide(ring) / scale).toBeCloseTo(0.709, 2);
  expect(high(ring) / scale).toBeCloseTo(0.823, 2);
  const cross = paths(sheet, 'object').find((line) => Math.abs(wide(line) - 10) < 0.01);
  const aim = cross?.[0]?.[1] ?? 0;
  const ys = ring.map(([, y]) => y);
  expect((Math.max(...ys) + Math.min(...ys)) / 2 - aim).toBeCloseTo(0.042 * scale, 0);
  expect(texts(sheet)).toContain('spot 0.823 m by 0.709 m, 42 mm off the aim');
});

it('is a circle on a backdrop square to the beam: 0.705 m', () => {
  const { sheet } = sheetOf(formula, draw, { ...usual, tilt: '0deg' });
  const scale = scaleOf(sheet);
  const [ring = []] = paths(sheet, 'emphasis').filter((line) => line.length === 64);
  expect(wide(ring) / scale).toBeCloseTo(0.705, 2);
  expect(high(ring)).toBeCloseTo(wide(ring), 1);
  expect(texts(sheet)).toContain('spot 0.705 m by 0.705 m');
});

it('draws the opening to the same scale, and warns inside five of them', () => {
  const { sheet } = sheetOf(formula, draw, { ...usual, distance: '0.8m' });
  const [opening] = discs(sheet, 'hidden');
  expect((2 * (opening?.radius ?? 0)) / scaleOf(sheet)).toBeCloseTo(0.18, 6);
  expect(texts(sheet)).toContain('within five openings: no cone yet');
  expect(texts(sheetOf(formula, draw, usual).sheet)).toContain('edge 1.00 stops under the middle');
});

it('leaves the spot open where its far side misses the backdrop', () => {
  const { sheet } = sheetOf(formula, draw, { ...usual, angle: '70deg', tilt: '60deg' });
  expect(texts(sheet)).toEqual(
    expect.arrayContaining(['its far side misses the backdrop', 'no far edge']),
  );
  expect(paths(sheet, 'emphasis').filter((line) => line.length === 64)).toEqual([]);
  expect(sheet.says).not.toContain('∞');
});

it('keeps its words apart', () => {
  for (const angle of ['5deg', '20deg', '70deg', '110deg'])
    for (const distance of ['0.3m', '2m', '6m'])
      for (const tilt of ['-75deg', '-30deg', '0deg', '10deg', '60deg'])
        for (const opening of ['', '0.18m', '1m'])
          expect(
            overlaps(sheetOf(formula, draw, { angle, distance, tilt, opening }).sheet),
            [angle, distance, tilt, opening].join(' '),
          ).toEqual([]);
});
