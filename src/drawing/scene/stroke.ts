import { clip, type Box, type Point } from '../clip.ts';
import type { Pen } from '../pen.ts';
import type { Role } from '../sheet.ts';

/** What of a straight line lies in a box, from its beginning to its end. */
const within = (a: Point, b: Point, box: Box): readonly [Point, Point] | undefined => {
  const kept = clip([a, b], box);
  const along = ([x, y]: Point): number => (x - a[0]) * (b[0] - a[0]) + (y - a[1]) * (b[1] - a[1]);
  const ends = kept.toSorted((one, other) => along(one) - along(other));
  const [first, last] = [ends[0], ends.at(-1)];
  return first && last && along(first) < along(last) ? [first, last] : undefined;
};

/** A straight line, or what of it lies in a view: drawn once from end to end, so that its dashes stay dashes. */
export const stroke = (on: Pen, role: Role, a: Point, b: Point, box: Box): void => {
  const kept = within(a, b, box);
  if (kept) on.line(role, kept);
};

/** A line through many points; where it leaves the view it ends, and begins anew where it comes back. */
export const strokes = (on: Pen, role: Role, points: readonly Point[], box: Box): void => {
  let run: Point[] = [];
  const flush = (): void => {
    if (run.length > 1) on.line(role, run);
    run = [];
  };
  points.slice(1).forEach((b, i) => {
    const kept = within(points[i] ?? b, b, box);
    const end = run.at(-1);
    if (end?.[0] !== kept?.[0][0] || end?.[1] !== kept?.[0][1]) flush();
    if (kept) run.push(...(run.length > 0 ? kept.slice(1) : kept));
  });
  flush();
};

/** A dimension line anywhere, its ends struck through as the others are. */
export const measure = (on: Pen, a: Point, b: Point, box: Box): void => {
  stroke(on, 'dimension', a, b, box);
  for (const [x, y] of [a, b])
    if (x >= box[0] && x <= box[2] && y >= box[1] && y <= box[3])
      on.line('dimension', [
        [x - 3, y + 3],
        [x + 3, y - 3],
      ]);
};
