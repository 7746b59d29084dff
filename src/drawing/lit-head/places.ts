import { surface } from './form.ts';
import { column, KIND, row, type View } from './view.ts';

/** A place on the head: millimetres on the form, which turn with it. */
export type Spot = readonly [x: number, y: number, z: number];

/** Places with names, as directions from the form's middle (round from the face and up, in radians). */
export const PLACES = [
  { id: 'forehead', name: 'forehead', around: 0, up: 0.5 },
  { id: 'nose', name: 'tip of the nose', around: 0, up: -0.285 },
  { id: 'cheek-left', name: 'cheek, camera-left', around: -0.55, up: -0.38 },
  { id: 'cheek-right', name: 'cheek, camera-right', around: 0.55, up: -0.38 },
  { id: 'temple-left', name: 'temple, camera-left', around: -1, up: 0.22 },
  { id: 'temple-right', name: 'temple, camera-right', around: 1, up: 0.22 },
  { id: 'chin', name: 'chin', around: 0, up: -0.78 },
] as const;

export type PlaceId = (typeof PLACES)[number]['id'];

/** Where a named place is, for a nose of so many millimetres. */
export const spotOf = (id: PlaceId, nose: number): Spot => {
  const { around, up } = PLACES.find((one) => one.id === id) ?? PLACES[0];
  const { x, y, z } = surface(around, up, nose);
  return [x, y, z];
};

/** A spot as the camera sees it: millimetres right, up and towards it. */
export const seenAt = ([x, y, z]: Spot, turn: number): Spot => {
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  return [x * c + z * s, y, z * c - x * s];
};

/** The spot under a place of the picture, in millimetres; none beside the head. */
export const spotAt = (view: View, x: number, y: number, turn: number): Spot | undefined => {
  const [i, j] = [Math.floor(column(view, x)), Math.floor(row(view, y))];
  const at = j * view.width + i;
  if (i < 0 || j < 0 || i >= view.width || j >= view.height) return undefined;
  if (view.kind[at] === KIND.none || view.kind[at] === KIND.cloth) return undefined;
  return seenAt([x, y, view.z[at] ?? 0], -turn);
};

/** Beyond this the surface before a spot is another one. */
const DEEP = 4;

/**
 * What a flat meter laid on the head there would read, in stops over the key as metered at the face, square to it.
 * None where the camera does not see the spot.
 */
export const meter = (
  view: View,
  light: Float32Array,
  spot: Spot,
  turn: number,
): number | undefined => {
  const [x, y, z] = seenAt(spot, turn);
  const [i, j] = [Math.floor(column(view, x)), Math.floor(row(view, y))];
  let [sum, count] = [0, 0];
  for (let v = j - 1; v <= j + 1; v++)
    for (let u = i - 1; u <= i + 1; u++) {
      const at = v * view.width + u;
      if (u < 0 || v < 0 || u >= view.width || v >= view.height) continue;
      if (view.kind[at] === KIND.none || Math.abs((view.z[at] ?? 0) - z) > DEEP) continue;
      sum += light[at] ?? 0;
      count += 1;
    }
  return count === 0 ? undefined : Math.log2(sum / count);
};

/** The named place a spot is at or near. */
export const nameOf = (spot: Spot, nose: number): string => {
  const near = PLACES.map(({ id, name }) => {
    const [x, y, z] = spotOf(id, nose);
    return { name, away: Math.hypot(x - spot[0], y - spot[1], z - spot[2]) };
  }).sort((a, b) => a.away - b.away)[0];
  return near === undefined ? '' : near.away < 4 ? near.name : `near the ${near.name}`;
};
