import { widthOf, type Pen } from './pen.ts';

/** The oblique stroke that ends a dimension line. */
const tick = (on: Pen, x: number, y: number): void =>
  on.line('dimension', [
    [x - 3, y + 3],
    [x + 3, y - 3],
  ]);

/** A row of dimensions end to end: places along x, and what is written between each and the next. */
export const chain = (
  on: Pen,
  y: number,
  places: readonly number[],
  texts: readonly string[],
): void => {
  on.line('dimension', [
    [Math.min(...places), y],
    [Math.max(...places), y],
  ]);
  for (const x of places) tick(on, x, y);
  // Numbers stand over the line; one too wide for its place goes under it, and both rows stay free of collisions.
  const ends = [-Infinity, -Infinity];
  texts.forEach((text, i) => {
    const [a = 0, b = 0] = [places[i], places[i + 1]];
    const half = widthOf(text) / 2;
    const middle = (a + b) / 2;
    const row =
      middle - half < (ends[0] ?? 0) || (texts.length > 1 && half > Math.abs(b - a) / 2 + 4)
        ? 1
        : 0;
    const at = Math.max(middle, (ends[row] ?? 0) + half);
    ends[row] = at + half + 4;
    on.text(at, y + (row ? 15 : -5), text, 'middle');
  });
};

/** One dimension along x, its number over the middle. */
export const across = (on: Pen, y: number, x1: number, x2: number, text: string): void =>
  chain(on, y, [x1, x2], [text]);

/** One dimension along y, downwards; its number to the right, or before its upper end. */
export const upright = (
  on: Pen,
  x: number,
  y1: number,
  y2: number,
  text: string,
  before = false,
): void => {
  on.line('dimension', [
    [x, y1],
    [x, y2],
  ]);
  tick(on, x, y1);
  tick(on, x, y2);
  if (before) on.text(x - 4, y1 - 6, text, 'end');
  else on.text(x + 6, (y1 + y2) / 2 + 4, text);
};
