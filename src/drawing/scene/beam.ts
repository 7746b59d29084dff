import type { Point } from '../clip.ts';
import type { Light, Place } from './scene.ts';
import { towards } from './vector.ts';
import type { View } from './views.ts';

/** A light's axis and what stands square to it, as one view shows them: metres of the view for a metre along each. */
export interface Axes {
  readonly at: Point;
  readonly along: Point;
  readonly across: Point;
}

/**
 * A view cuts a cone along its axis and square to the line of sight. So the axis is foreshortened by its tilt out of the
 * view, and what lies across it is not.
 */
export const axesIn = (view: View, at: Place, aim: Place): Axes => {
  const along = view.flat(towards(at, aim));
  const length = Math.hypot(...along);
  return {
    at: view.flat(at),
    along,
    // Seen along its axis a beam has no along, and is as wide as it is.
    across: length > 1e-9 ? [-along[1] / length, along[0] / length] : [0, 1],
  };
};

/** A point so far along the axis and so far across it. */
export const pointAt = ({ at, along, across }: Axes, u: number, v: number): Point => [
  at[0] + u * along[0] + v * across[0],
  at[1] + u * along[1] + v * across[1],
];

/**
 * How a beam falls off from its axis: as the nth power of the cosine, half at the edge.
 * @example exponent(Math.PI / 3) // 4.82
 */
export const exponent = (angle: number): number =>
  angle >= Math.PI ? 0 : Math.log(0.5) / Math.log(Math.cos(angle / 2));

/**
 * How far from a light its exposure is so many stops under what the axis gets at a distance: inverse square along each
 * ray, the nth power of the cosine from ray to ray.
 * @example reachOf(2, 1, 0, 0) // 2: one metre twice over loses two stops
 */
export const reachOf = (stops: number, from: number, off: number, n: number): number =>
  from * 2 ** (stops / 2) * Math.max(0, Math.cos(off)) ** (n / 2);

/** The line where a light has lost so many stops, from one edge of its first beam to the other. */
export const contour = (axes: Axes, angle: number, from: number, stops: number): Point[] => {
  const n = exponent(angle);
  const steps = angle > 2 ? 48 : 24;
  return Array.from({ length: steps + 1 }, (_, i) => {
    const off = (i / steps - 0.5) * Math.min(angle, 2 * Math.PI);
    const r = reachOf(stops, from, off, n);
    return pointAt(axes, r * Math.cos(off), r * Math.sin(off));
  });
};

/**
 * A beam's outline as far as it goes: from the edges of the opening, where the cone is not yet wider, to an end square to
 * its axis. A cone of half a turn or more is a disc.
 */
export const outline = (axes: Axes, light: Light, angle: number, length: number): Point[] => {
  const half = light.width / 2;
  if (angle >= Math.PI * 0.98)
    return Array.from({ length: 48 }, (_, i) =>
      pointAt(axes, length * Math.cos((i * Math.PI) / 24), length * Math.sin((i * Math.PI) / 24)),
    );
  const slope = Math.tan(angle / 2);
  const widens = Math.min(length, half / Math.max(slope, 1e-9));
  const end = Math.max(half, length * slope);
  return [
    pointAt(axes, 0, -half),
    pointAt(axes, widens, -half),
    pointAt(axes, length, -end),
    pointAt(axes, length, end),
    pointAt(axes, widens, half),
    pointAt(axes, 0, half),
  ];
};
