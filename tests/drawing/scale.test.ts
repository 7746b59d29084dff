import { expect, it } from 'vitest';
import { clip } from '~/drawing/clip.ts';
import { pen } from '~/drawing/pen.ts';
import { bar, scaleFor } from '~/drawing/scale.ts';

it.each([
  [67.9, 63],
  [100, 100],
  [99.9, 80],
  [0.17, 0.16],
  [1260, 1250],
])('of %s units a metre that would fit takes %s', (fits, taken) => {
  expect(scaleFor(fits)).toBeCloseTo(taken, 9);
});

it.each([
  [100, {}, '50 cm', 50],
  [25, {}, '2 m', 50],
  [0.01, {}, '5000 m', 50],
  [5000, {}, '1 cm', 50],
  [20_000, {}, '2 mm', 40],
  [100, { system: 'imperial' }, '2′', 2 * 30.48],
  [1000, { system: 'imperial' }, '2″', 2 * 25.4],
] as const)('at %s units a metre, %o, draws a bar of %s', (scale, style, text, length) => {
  const on = pen(style);
  bar(on, 0, 0, scale);
  const [line] = on.marks;
  expect(on.marks.some((mark) => mark.kind === 'text' && mark.text === text)).toBe(true);
  expect(line?.kind === 'path' && line.d).toContain(`L${Number(length.toFixed(6))} 0L`);
});

it('clips an outline to a box, and gives nothing for what lies outside', () => {
  const square = [
    [-5, -5],
    [5, -5],
    [5, 5],
    [-5, 5],
  ] as const;
  const kept = clip(square, [0, 0, 10, 10]);
  expect(kept).toHaveLength(4);
  expect(kept.map(([x, y]) => `${Math.abs(x)},${Math.abs(y)}`).sort()).toEqual([
    '0,0',
    '0,5',
    '5,0',
    '5,5',
  ]);
  expect(clip(square, [6, 6, 7, 7])).toEqual([]);
});
