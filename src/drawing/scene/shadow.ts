import type { Point } from '../clip.ts';

/** What a shadow covers of a line behind it, in metres along that line: none of the light, and less than all of it. */
export interface Shadow {
  /** From the least to the most; undefined where the light is so wide that no place is without any. */
  readonly full: readonly [number, number] | undefined;
  readonly edge: readonly [number, number];
}

/**
 * The shadow of an edge-on body on a surface square to the view's axis, in one view, by plain geometry.
 *
 * Model: straight rays from both ends of the source past both ends of the body. Valid: the source stands before the body
 * and the body before the surface; undefined otherwise.
 * @param source both ends of the source, as pairs of distance and height or breadth
 * @param body both ends of the body
 * @param surface the distance at which the surface stands
 * @example castBy([[-1, 0], [-1, 0]], [[0, -0.1], [0, 0.1]], 1)?.edge // from −0.2 to 0.2
 */
export const castBy = (
  source: readonly [Point, Point],
  body: readonly [Point, Point],
  surface: number,
): Shadow | undefined => {
  const front = Math.min(body[0][0], body[1][0]);
  if (source.some(([p]) => p >= front - 1e-6) || surface <= Math.max(body[0][0], body[1][0]))
    return undefined;
  const past = (end: Point): number[] =>
    source.map(([p, q]) => q + ((surface - p) / (end[0] - p)) * (end[1] - q));
  const [low, high] = body[0][1] <= body[1][1] ? body : [body[1], body[0]];
  const [lows, highs] = [past(low), past(high)];
  const full = [Math.max(...lows), Math.min(...highs)] as const;
  return {
    full: full[0] < full[1] ? full : undefined,
    edge: [Math.min(...lows), Math.max(...highs)],
  };
};
