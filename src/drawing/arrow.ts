import type { Pen } from './pen.ts';
import type { Role } from './sheet.ts';

/** An arrow from one place to another: movement, or what goes on past the sheet. */
export const arrow = (
  on: Pen,
  role: Role,
  x1: number,
  y1: number,
  x2: number,
  y2: number,
): void => {
  const length = Math.hypot(x2 - x1, y2 - y1) || 1;
  const [u, v] = [((x2 - x1) / length) * 5, ((y2 - y1) / length) * 5];
  on.line(role, [
    [x1, y1],
    [x2, y2],
  ]);
  on.line(role, [
    [x2 - u - v * 0.7, y2 - v + u * 0.7],
    [x2, y2],
    [x2 - u + v * 0.7, y2 - v - u * 0.7],
  ]);
};
