import type { Role } from './sheet.ts';
import { WIDTH, widthOf, type Pen } from './pen.ts';

/** Words over or under places along x: each at its place where there is room, else in a second row, else moved aside. */
export const words = (
  on: Pen,
  y: number,
  all: readonly (readonly [x: number, text: string, role?: Role | undefined])[],
  step = 14,
): void => {
  const ends = [0, 0];
  for (const [x, text, role] of [...all].sort(([a], [b]) => a - b)) {
    const half = widthOf(text) / 2;
    const middle = Math.max(3 + half, Math.min(WIDTH - 3 - half, x));
    const row = ends.findIndex((end) => end <= middle - half);
    const use = row < 0 ? ((ends[0] ?? 0) <= (ends[1] ?? 0) ? 0 : 1) : row;
    const at = Math.max(middle, (ends[use] ?? 0) + half);
    ends[use] = at + half + 5;
    on.text(at, y + use * step, text, 'middle', role);
  }
};
