import { expect, it } from 'vitest';
import { draw } from '~/drawing/circle-of-confusion.ts';
import { showResult } from '~/formula/show.ts';
import formula from '~/optics/aperture/circle-of-confusion.ts';
import { discs } from './path-parts.ts';
import { high, paths, scaleOf, sheetOf, texts, wide } from './sheets.ts';

it.each([
  ['36x24', 20, 25, 3],
  ['23.6x15.8', 40, 50, 1],
  ['36x24', 4, 25, 3],
])(
  'draws the circle of a %s, %s cm print seen from %s cm at %s′ beside the conventions, to one scale',
  (format, print, view, arc) => {
    const { sheet, results } = sheetOf(formula, draw, {
      format,
      'print-height': `${print}cm`,
      'viewing-distance': `${view}cm`,
      acuity: `${arc}arcmin`,
    });
    const [width, height] = format.split('x').map(Number) as [number, number];
    const scale = scaleOf(sheet, 12);
    const size = (one: { radius: number } | undefined): number =>
      ((one?.radius ?? 0) * 2 * 1000) / scale;
    const [mine] = discs(sheet, 'light', true);
    const allowed = 2 * view * 10 * Math.tan((arc / 60 / 2) * (Math.PI / 180));
    expect(size(mine)).toBeCloseTo(allowed / ((print * 10) / height), 6);
    const others = discs(sheet, 'shade', true);
    expect(size(others[0])).toBeCloseTo(Math.hypot(width, height) / 1500, 5);
    expect(size(others[1])).toBeCloseTo(0.03, 6);
    expect(size(others[2])).toBeCloseTo(1 / 30, 6);
    // All of them stand on the sensor's edge.
    for (const { y, radius } of [...discs(sheet, 'light', true), ...others])
      expect(y + radius).toBeCloseTo(118, 4);
    expect(texts(sheet)).toContain(showResult(formula.outputs.c, results['c']));
  },
);

it('draws the whole frame in its shape', () => {
  const { sheet } = sheetOf(formula, draw);
  const frame = paths(sheet, 'frame').at(-1) ?? [];
  expect(wide(frame) / high(frame)).toBeCloseTo(36 / 24, 6);
});
