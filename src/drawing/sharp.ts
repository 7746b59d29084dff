import type { Box, Point } from './clip.ts';
import { CHILD_SIDE, figure } from './figure.ts';
import type { Pen } from './pen.ts';

/** The seated child from the side: pale as a whole, solid between two places along x, where it is sharp. */
export const sharpChild = (
  on: Pen,
  at: (x: number, y: number) => Point,
  [left, top, right, bottom]: Box,
  from: number,
  to: number,
): void => {
  const pale: Pen = { ...on, area: (_, points, box) => on.area('shade', points, box) };
  figure(pale, CHILD_SIDE, at, [left, top, right, bottom]);
  if (from < to)
    figure(on, CHILD_SIDE, at, [Math.max(left, from), top, Math.min(right, to), bottom]);
};
