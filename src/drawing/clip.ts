/** A place on a sheet, or a corner of an outline: x, then y. */
export type Point = readonly [number, number];
/** Left, top, right, bottom. */
export type Box = readonly [number, number, number, number];

/** What of an outline lies where `side` is 0 or more; a line of two points comes back along itself. */
const keep = (points: readonly Point[], side: (point: Point) => number): Point[] => {
  const kept: Point[] = [];
  let before = points.at(-1) ?? [0, 0];
  let b = side(before);
  // A phone clips every line anew while something moves: a loop, since lists of lists cost it dear.
  for (const here of points) {
    const a = side(here);
    const t = a / (a - b);
    if (a < 0 !== b < 0)
      kept.push([here[0] + (before[0] - here[0]) * t, here[1] + (before[1] - here[1]) * t]);
    if (!(a < 0)) kept.push(here);
    before = here;
    b = a;
  }
  return kept;
};

const within = (points: readonly Point[], [left, top, right, bottom]: Box): boolean => {
  for (const [x, y] of points) if (x < left || x > right || y < top || y > bottom) return false;
  return true;
};

/**
 * What of an outline or a line lies in a box: nothing is ever drawn outside its view.
 * @example clip([[0, 0], [9, 0]], [2, -1, 5, 1]) // from 2 to 5
 */
export const clip = (points: readonly Point[], box: Box): Point[] => {
  // Most lines lie inside.
  if (within(points, box)) return [...points];
  const [left, top, right, bottom] = box;
  return [
    (at: Point) => at[0] - left,
    (at: Point) => right - at[0],
    (at: Point) => at[1] - top,
    (at: Point) => bottom - at[1],
  ].reduce<Point[]>(keep, [...points]);
};
