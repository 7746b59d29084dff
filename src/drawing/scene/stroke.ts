import { clip, type Box, type Point } from '../clip.ts';
import type { Pen } from '../pen.ts';
import type { Role } from '../sheet.ts';

/** A straight line, or what of it lies in a view: drawn once from end to end, so that its dashes stay dashes. */
export const stroke = (on: Pen, role: Role, a: Point, b: Point, box: Box): void => {
  const kept = clip([a, b], box);
  const [first] = kept;
  if (!first) return;
  const far = kept.reduce((one, other) =>
    Math.hypot(other[0] - first[0], other[1] - first[1]) >
    Math.hypot(one[0] - first[0], one[1] - first[1])
      ? other
      : one,
  );
  if (far !== first) on.line(role, [first, far]);
};

/** A line through many points, piece by piece: what lies in the view is never joined across what does not. */
export const strokes = (on: Pen, role: Role, points: readonly Point[], box: Box): void => {
  const inside = ([x, y]: Point): boolean =>
    x >= box[0] && x <= box[2] && y >= box[1] && y <= box[3];
  if (points.every(inside)) on.line(role, points);
  else
    points.slice(1).forEach((b, i) => {
      stroke(on, role, points[i] ?? b, b, box);
    });
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
