/** A place on a sheet, or a corner of an outline: x, then y. */
export type Point = readonly [number, number];
/** Left, top, right, bottom. */
export type Box = readonly [number, number, number, number];

/** What of an outline lies where `side` is 0 or more; a line of two points comes back along itself. */
const keep = (points: readonly Point[], side: (point: Point) => number): Point[] =>
  points.flatMap((here, i) => {
    const before = points.at(i - 1) ?? here;
    const [a, b] = [side(here), side(before)];
    const t = a / (a - b);
    const cut: Point[] =
      a < 0 !== b < 0
        ? [[here[0] + (before[0] - here[0]) * t, here[1] + (before[1] - here[1]) * t]]
        : [];
    return a < 0 ? cut : [...cut, here];
  });

/**
 * What of an outline or a line lies in a box: nothing is ever drawn outside its view.
 * @example clip([[0, 0], [9, 0]], [2, -1, 5, 1]) // from 2 to 5
 */
export const clip = (points: readonly Point[], [left, top, right, bottom]: Box): Point[] =>
  [
    ([x]: Point) => x - left,
    ([x]: Point) => right - x,
    ([, y]: Point) => y - top,
    ([, y]: Point) => bottom - y,
  ].reduce<Point[]>(keep, [...points]);
