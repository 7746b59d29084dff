import type { Lamp } from './lamp.ts';
import type { View } from './view.ts';

/**
 * How carefully shadows are worked out: strips the lamp is cut into, how fast steps grow with distance, and every how
 * many pixels each way; those between are filled in.
 */
export interface Care {
  readonly strips: number;
  readonly growth: number;
  readonly every: number;
}
export const ROUGH: Care = { strips: 3, growth: 0.22, every: 2 };
export const FINE: Care = { strips: 5, growth: 0.04, every: 1 };

/** Lower than this over its neighbours' plane nothing casts a shadow: the pixels' own steps. Millimetres. */
const SKIN = 0.25;
/** The farthest a shadow is followed, in millimetres across the picture. */
const FAR = 80;

interface Strip {
  readonly ux: number;
  readonly uy: number;
  /** The strip's lower and upper end over the picture's plane, radians, and its share of the lamp. */
  readonly low: number;
  readonly high: number;
  readonly share: number;
}

/** The lamp as strips that each lie over one line across the picture. */
const cut = ({ towards, half }: Lamp, strips: number): Strip[] => {
  const [x, y, z] = towards;
  const level = Math.hypot(x, y);
  // Along the picture's plane, square to the lamp's direction: it carries the strips side by side.
  const [sx, sy] = level > 1e-6 ? [-y / level, x / level] : [1, 0];
  const chords = Array.from({ length: strips }, (_, i) => {
    const aside = (2 * (i + 0.5)) / strips - 1;
    return { aside, chord: Math.sqrt(1 - aside * aside) };
  });
  const all = chords.reduce((sum, { chord }) => sum + chord, 0);
  return chords.map(({ aside, chord }) => {
    const [dx, dy] = [x + Math.tan(half) * aside * sx, y + Math.tan(half) * aside * sy];
    const across = Math.hypot(dx, dy);
    const middle = Math.atan2(z, across);
    return {
      ux: across > 1e-6 ? dx / across : 0,
      uy: across > 1e-6 ? dy / across : 1,
      low: middle - half * chord,
      high: middle + half * chord,
      share: chord / all,
    };
  });
};

/** A place on the way to the lamp: between a pixel and its neighbour, `part` of the way, so many millimetres off. */
interface Step {
  readonly dx: number;
  readonly dy: number;
  readonly offset: number;
  readonly aside: number;
  readonly part: number;
  readonly distance: number;
}

/** Steps of whole pixels along the longer side of a direction, longer ones farther off. */
const walk = ({ width, scale }: View, ux: number, uy: number, growth: number): Step[] => {
  const longer = Math.max(Math.abs(ux), Math.abs(uy));
  const flat = Math.abs(ux) >= Math.abs(uy);
  const steps: Step[] = [];
  for (let k = 1; k < FAR * scale * longer; k += Math.max(1, Math.round(k * growth))) {
    const [x, y] = [(k * ux) / longer, (-k * uy) / longer];
    const [dx, dy] = flat ? [Math.round(x), Math.floor(y)] : [Math.floor(x), Math.round(y)];
    steps.push({
      dx,
      dy,
      offset: dy * width + dx,
      aside: flat ? width : 1,
      part: flat ? y - dy : x - dx,
      distance: k / (longer * scale),
    });
  }
  return steps;
};

/** Fills in the pixels between those worked out, from those of them that show something. */
const between = (
  { width, kind }: View,
  every: number,
  out: Float32Array,
  from: number,
  to: number,
): void => {
  for (let j = from; j < to; j++)
    for (let i = 0; i < width; i++) {
      const here = j * width + i;
      const [x, y] = [i - (i % every), j - ((j - from) % every)];
      if (kind[here] === 0 || (x === i && y === j)) continue;
      let [sum, weight] = [0, 0];
      for (let n = 0; n < 4; n++) {
        const [u, v] = [x + (n & 1 ? every : 0), y + (n & 2 ? every : 0)];
        if (u >= width || v >= to) continue;
        const at = v * width + u;
        if (kind[at] === 0) continue;
        const w = (1 - Math.abs(u - i) / every) * (1 - Math.abs(v - j) / every);
        sum += w * (out[at] as number);
        weight += w;
      }
      out[here] = weight > 0 ? sum / weight : 1;
    }
};

/** The highest place of a view, over which nothing casts a shadow. */
export const peak = ({ z }: View): number => {
  let highest = -Infinity;
  for (const level of z) if (level > highest) highest = level;
  return highest;
};

/**
 * How much of a lamp each pixel's place sees past whatever stands before it, 0 to 1, for rows of a view.
 *
 * Model: along each strip of the lamp the highest horizon the view's own depths raise; what of the strip is over that
 * horizon, against what is over the place's own plane. What lies behind the visible surface counts as solid.
 */
export const shadow = (
  view: View,
  highest: number,
  lamp: Lamp,
  care: Care,
  out: Float32Array,
  from = 0,
  to = view.height,
): void => {
  const { width, height, z, nx, ny, nz, kind } = view;
  out.fill(0, from * width, to * width);
  for (const { ux, uy, low, high, share } of cut(lamp, care.strips)) {
    const steps = walk(view, ux, uy, care.growth);
    const highTangent = Math.tan(Math.min(high, 1.55));
    for (let j = from; j < to; j += care.every)
      for (let i = 0; i < width; i += care.every) {
        const here = j * width + i;
        if (kind[here] === 0) continue;
        const level = z[here] as number;
        const facing = Math.max(0.04, nz[here] as number);
        const own = -((nx[here] as number) * ux + (ny[here] as number) * uy) / facing;
        const ownAngle = Math.atan(own);
        const bottom = Math.max(low, ownAngle);
        // Set for its own plane: what it receives is none already.
        if (bottom >= high) {
          out[here] = (out[here] as number) + share;
          continue;
        }
        let horizon = own;
        const above = highest - level - SKIN;
        for (const { dx, dy, offset, aside, part, distance } of steps) {
          const [x, y] = [i + dx, j + dy];
          if (x < 0 || y < 0 || x >= width - 1 || y >= height - 1) break;
          // Nothing from here on is high enough, or the strip is gone already.
          if (above < horizon * distance || horizon > highTangent) break;
          const at = here + offset;
          const a = z[at] as number;
          const slope = (a + ((z[at + aside] as number) - a) * part - level - SKIN) / distance;
          if (slope > horizon) horizon = slope;
        }
        const blocked =
          horizon > own ? Math.max(bottom, Math.min(high, Math.atan(horizon))) : bottom;
        out[here] = (out[here] as number) + (share * (high - blocked)) / (high - bottom);
      }
  }
  if (care.every > 1) between(view, care.every, out, from, to);
};
