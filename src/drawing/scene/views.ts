import type { Box, Point } from '../clip.ts';
import { scaleFor } from '../scale.ts';
import type { Place } from './scene.ts';

/** One look at a set: from above, or from the side with the camera on the left. */
export interface View {
  readonly name: 'plan' | 'side';
  readonly box: Box;
  /** Units a metre. */
  readonly scale: number;
  /** Where a place falls on the sheet. */
  readonly at: (place: Place) => Point;
  /** A place's two coordinates in this view, in metres: along the sheet, and up it or down it. */
  readonly flat: (place: Place) => Point;
  /** Where such a pair falls. */
  readonly onto: (pair: Point) => Point;
  /** The pair that falls on a point of the sheet. */
  readonly off: (x: number, y: number) => Point;
}

export interface Views {
  readonly scale: number;
  readonly side: View | undefined;
  readonly plan: View | undefined;
  readonly all: readonly View[];
}

/** What has to be seen, in metres: each from the least to the most. */
export interface Extent {
  readonly behind: readonly [number, number];
  readonly aside: readonly [number, number];
  readonly height: readonly [number, number];
}

/** What room a sheet gives the two views: the columns they share, and each view's rows. */
export interface Space {
  readonly columns: readonly [number, number];
  readonly side?: readonly [number, number];
  readonly plan?: readonly [number, number];
  /** What has to be seen stands still, as a room does: the paper is then filled from end to end. */
  readonly still?: boolean;
  /** Where in the plan the line through the sitter runs, as a share of its rows; the middle unless told. */
  readonly axis?: number;
}

const hundredth = (x: number): number => Math.round(x * 100) / 100;

const view = (name: View['name'], box: Box, scale: number, [x0, y0]: Point, down: 1 | -1): View => {
  const onto = ([p, q]: Point): Point => [
    hundredth(x0 + p * scale),
    hundredth(y0 + down * q * scale),
  ];
  const flat = ({ aside, behind, height }: Place): Point => [
    behind,
    name === 'plan' ? aside : height,
  ];
  return {
    name,
    box,
    scale,
    flat,
    onto,
    at: (place) => onto(flat(place)),
    off: (x, y) => [(x - x0) / scale, (down * (y - y0)) / scale],
  };
};

/** Where the sitter may stand between the ends of the sheet, the middle first. */
const FRACTIONS = [1 / 2, 2 / 3, 1 / 3, 4 / 5, 1 / 5, 9 / 10, 1 / 10];
/** What symbols take beyond the places they stand at, in units. */
const RIM = 10;

/**
 * The plan under the side view: one scale, and what stands under one another is as far behind the sitter. The scale goes
 * by preferred steps, and the sitter stands at one of a few places: a thing that is moved moves, and the paper does not.
 */
export const viewsFor = ({ behind, aside, height }: Extent, space: Space): Views => {
  const [left, right] = space.columns;
  const { axis = 0.5 } = space;
  const breadth = Math.max(-aside[0] / axis, aside[1] / (1 - axis), 2e-3);
  const tall = Math.max(height[1] - height[0], 1e-3);
  const room = (rows: readonly [number, number] | undefined, metres: number): number =>
    rows ? (rows[1] - rows[0] - RIM) / metres : Infinity;
  const rows = Math.min(room(space.side, tall), room(space.plan, breadth));
  const width = right - left - 2 * RIM;
  const middle = -behind[0] / Math.max(behind[1] - behind[0], 1e-3);
  const [best] = (space.still ? [middle] : FRACTIONS)
    .map((fraction) => ({
      x0: left + RIM + fraction * width,
      scale: scaleFor(
        Math.min(
          rows,
          (fraction * width) / Math.max(-behind[0], 1e-3),
          ((1 - fraction) * width) / Math.max(behind[1], 1e-3),
        ),
      ),
    }))
    .sort((a, b) => b.scale - a.scale);
  const { x0, scale } = best ?? { x0: left, scale: 1 };
  const side =
    space.side &&
    view(
      'side',
      [left, space.side[0], right, space.side[1]],
      scale,
      // The floor lies at the foot of the view; what is under it lifts it.
      [x0, space.side[1] + Math.min(0, height[0]) * scale],
      -1,
    );
  const plan =
    space.plan &&
    view(
      'plan',
      [left, space.plan[0], right, space.plan[1]],
      scale,
      [x0, space.plan[0] + axis * (space.plan[1] - space.plan[0])],
      1,
    );
  return { scale, side, plan, all: [side, plan].filter((one) => one !== undefined) };
};
