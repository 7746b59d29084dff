import type { Box, Point } from '../clip.ts';
import { widthOf } from '../pen.ts';
import type { Role } from '../sheet.ts';

export interface Label {
  readonly text: string;
  /** What it names. */
  readonly at: Point;
  /** How far what it names reaches about that place. */
  readonly clear?: number;
  readonly role?: Role;
  /** Where it would rather stand. */
  readonly side?: 'right' | 'left' | 'over' | 'under';
}

export interface Placed extends Label {
  /** The left end of its line of writing. */
  readonly x: number;
  readonly y: number;
  readonly box: Box;
}

/** Over and under the line of writing. */
const [RISE, FALL] = [10, 3.5];
const GAP = 2;

const hits = (a: Box, b: Box): boolean =>
  a[0] < b[2] + GAP && b[0] < a[2] + GAP && a[1] < b[3] && b[1] < a[3];

/** Rows of the sheet, in units: a small thing is kept by the row its top lies in. */
const ROW = 16;
const rowOf = (y: number): number => Math.max(0, Math.floor(y / ROW));

/**
 * Adds to a cost three for each unit of area that a box has in common with the things; past a limit it stops. A phone
 * places every label anew while a handle moves: only things near the box are looked at.
 */
const costOver = (things: readonly Box[]): ((start: number, box: Box, limit: number) => number) => {
  const large: Box[] = [];
  const rows: (Box[] | undefined)[] = [];
  for (const thing of things)
    (thing[3] - thing[1] > ROW ? large : (rows[rowOf(thing[1])] ??= [])).push(thing);
  return (start, box, limit) => {
    const [left, top, right, bottom] = box;
    let cost = start;
    for (const near of [large, ...rows.slice(rowOf(top - ROW), rowOf(bottom) + 1)])
      for (const thing of near ?? []) {
        if (thing[1] >= bottom || thing[3] <= top || thing[0] >= right || thing[2] <= left)
          continue;
        cost +=
          3 *
          (Math.min(thing[2], right) - Math.max(thing[0], left)) *
          (Math.min(thing[3], bottom) - Math.max(thing[1], top));
        if (cost >= limit) return cost;
      }
    return cost;
  };
};

const boxAt = (x: number, y: number, width: number): Box => [x, y - RISE, x + width, y + FALL];

const SIDES = { right: [1, 0], left: [-1, 0], over: [0, -1], under: [0, 1] } as const;
const DIAGONALS = [
  [1, -1],
  [1, 1],
  [-1, -1],
  [-1, 1],
] as const;

const within = (low: number, x: number, high: number): number => Math.max(low, Math.min(high, x));

/**
 * Finds a place for each label: beside what it names if that is free, else near it, else wherever there is room. No label
 * is laid over another or leaves the frame; drawn things are kept clear while there is a choice.
 * @example placeLabels([{ text: 'key', at: [0, 0] }], [], [0, 0, 100, 40]) // inside, though its place is the corner
 */
export const placeLabels = (
  labels: readonly Label[],
  things: readonly Box[],
  frame: Box,
): Placed[] => {
  const done: Placed[] = [];
  const costOn = costOver(things);
  for (const label of labels) {
    const width = widthOf(label.text);
    const [left, top, right, bottom] = frame;
    const low = Math.max(left, right - width);
    const deep = Math.max(top + RISE, bottom - FALL);
    const ax = within(left, label.at[0], right);
    const ay = within(top, label.at[1], bottom);
    const clear = label.clear ?? 0;
    const wanted = label.side ? [SIDES[label.side]] : [];
    const ways = [...wanted, ...Object.values(SIDES), ...DIAGONALS];
    let best: { readonly place: Point; readonly cost: number } | undefined;
    const offer = (x: number, y: number, order: number): void => {
      const limit = best?.cost ?? Infinity;
      // Nothing is worked out that cannot win.
      if (order >= limit) return;
      const box = boxAt(x, y, width);
      if (done.some((one) => hits(one.box, box))) return;
      const cost = costOn(order, box, limit);
      if (cost < limit) best = { place: [x, y], cost };
    };
    for (const ring of [0, 10, 22, 36, 52, 70]) {
      if (best && ring * 2 >= best.cost) break;
      ways.forEach(([dx, dy], i) => {
        const d = clear + 4 + ring;
        const x = ax + dx * d - (dx > 0 ? 0 : dx < 0 ? width : width / 2);
        const y = ay + dy * d + (dy < 0 ? -FALL : dy > 0 ? RISE : (RISE - FALL) / 2);
        offer(within(left, x, low), within(top + RISE, y, deep), ring * 2 + i * 3);
      });
    }
    // Wherever a line of writing is free.
    if (!best)
      for (let y = top + RISE; y <= bottom - FALL; y += RISE + FALL)
        for (let x = left; x <= Math.max(left, right - width); x += 12)
          offer(
            within(left, x, low),
            within(top + RISE, y, deep),
            200 + Math.hypot(x + width / 2 - ax, y - ay),
          );
    if (!best) continue;
    const [x, y] = best.place;
    // What lies outside is pointed at from where it would come in.
    done.push({ ...label, at: [ax, ay], x, y, box: boxAt(x, y, width) });
  }
  return done;
};

/** Small boxes along a line, for words to keep off it where they can. */
export const along = (a: Point, b: Point, box: Box): Box[] => {
  const steps = Math.min(80, Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / 9));
  const boxes: Box[] = [];
  for (let i = 0; i <= steps; i += 1) {
    const t = steps > 0 ? i / steps : 0;
    const left = a[0] + (b[0] - a[0]) * t - 1.5;
    const top = a[1] + (b[1] - a[1]) * t - 1.5;
    if (left > box[0] && left < box[2] && top > box[1] && top < box[3])
      boxes.push([left, top, left + 3, top + 3]);
  }
  return boxes;
};

/** A line from what is named to its label, where they have come apart. */
export const leader = ({ at, box, clear = 0 }: Placed): readonly [Point, Point] | undefined => {
  const end: Point = [within(box[0], at[0], box[2]), within(box[1] + 2, at[1], box[3] - 2)];
  const way = Math.hypot(end[0] - at[0], end[1] - at[1]);
  if (way < clear + 16) return undefined;
  const t = clear / way;
  return [[at[0] + (end[0] - at[0]) * t, at[1] + (end[1] - at[1]) * t], end];
};
