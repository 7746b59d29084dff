/** An ellipsoid: its middle and its three half axes, in millimetres. */
export interface Ellipsoid {
  readonly at: readonly [number, number, number];
  readonly half: readonly [number, number, number];
}

// The head form, in millimetres: x to camera-right when the nose points at the lens, y up, z out of the face. Zero is
// on the axis the head turns about, at the height of the eyes. A form of our own with the proportions of a child of
// two (18 high, 18 deep, 14 broad, from memory); it is nobody's head.

/** The skull; what shows of it as forehead and temples is this ellipsoid and nothing else. */
export const CRANIUM: Ellipsoid = { at: [0, 28, -8], half: [70, 68, 88] };
/** The face under the eyes, from cheek to cheek and down to the jaw. */
export const FACE: Ellipsoid = { at: [0, -24, 22], half: [57, 54, 55] };
/** Within this depth of one another skull and face run together. */
const BLEND = 14;

/** The eyes: where their middles are (mirrored), and the radii of ball, cornea and iris. */
export const EYE = { x: 26, y: -3, z: 49.5, ball: 12, cornea: 7.8, iris: 6 } as const;
const LID = 1.2;

/** The hair begins over this line: higher over the forehead than over the temples. */
const hairline = (x: number, z: number): number =>
  60 - 0.007 * x * x - Math.max(0, 38 - z) * 0.95 - Math.max(0, -4 - z) * 0.7;
const HAIR = 4.5;

/** A round hill: 1 on its top, level there and at its foot, nothing beyond. `q` is the squared distance in feet. */
const hill = (q: number): number => (q >= 1 ? 0 : (1 - q) ** 3);
const mound = (
  x: number,
  y: number,
  at: readonly [number, number],
  foot: readonly [number, number],
): number => hill(((x - at[0]) / foot[0]) ** 2 + ((y - at[1]) / foot[1]) ** 2);
const step = (from: number, to: number, x: number): number => {
  const t = Math.min(1, Math.max(0, (x - from) / (to - from)));
  return t * t * (3 - 2 * t);
};
/** The larger of two, rounded where they are within `k` of one another. */
const larger = (a: number, b: number, k: number): number => {
  const h = Math.max(0, 1 - Math.abs(a - b) / k);
  return Math.max(a, b) + (k * h * h * h) / 6;
};

/** The point the form is measured from. */
export const MIDDLE = [0, 0, 6] as const;

/** How far out from the middle an ellipsoid reaches in a direction. */
const reachOf = ({ at, half }: Ellipsoid): ((x: number, y: number, z: number) => number) => {
  const [a, b, c] = half;
  const [u, v, w] = [(MIDDLE[0] - at[0]) / a, (MIDDLE[1] - at[1]) / b, (MIDDLE[2] - at[2]) / c];
  const inside = u * u + v * v + w * w - 1;
  return (x, y, z) => {
    const [p, q, r] = [x / a, y / b, z / c];
    const square = p * p + q * q + r * r;
    const along = p * u + q * v + r * w;
    return (Math.sqrt(along * along - square * inside) - along) / square;
  };
};
const [toCranium, toFace] = [reachOf(CRANIUM), reachOf(FACE)];

/** The nose over the face's own surface: a low bridge, a round tip, wings; `n` from the face to the tip. */
const nose = (x: number, y: number, n: number): number => {
  const t = Math.min(1, Math.max(0, (y + 24) / 34));
  const cross = hill((x / (15 - 4.5 * t)) ** 2);
  const bridge = (0.16 + 0.5 * (1 - t) ** 1.5) * cross * step(-37, -27, y) * step(14, 2, y);
  const tip = 0.4 * mound(x, y, [0, -26.5], [14, 11.5]);
  const wings = 0.36 * (mound(x, y, [9.5, -29.5], [8, 8]) + mound(x, y, [-9.5, -29.5], [8, 8]));
  return n * (bridge + tip + wings);
};

/** What stands out from the plain form or is sunk into it, in the direction of the face; the nose apart. */
const features = (x: number, y: number): number => {
  const s = Math.abs(x);
  return (
    -9.5 * mound(s, y, [26, -1], [24, 18]) +
    1 * mound(s, y, [27, 15], [24, 11]) -
    1.6 * mound(s, y, [10, 1], [9, 12]) +
    6.5 * mound(s, y, [33, -33], [29, 25]) -
    0.8 * mound(s, y, [20, -41], [9, 15]) +
    3 * mound(x, y, [0, -46], [34, 22]) -
    1.2 * mound(x, y, [0, -38], [4.5, 7]) +
    (3.2 - 0.012 * s * s) *
      hill(((y + 43.6 - 0.6 * hill(((s - 5) / 8) ** 2)) / 5) ** 2) *
      hill((x / 23) ** 2) +
    3.6 * mound(x, y, [0, -51.5], [20, 6.4]) -
    2.4 * hill(((y + 47.4 - 0.007 * s * s) / 2.6) ** 2) * hill((x / 25) ** 2) -
    1.3 * mound(x, y, [0, -58.5], [20, 6]) +
    5.5 * mound(x, y, [0, -67], [27, 17])
  );
};

/** The brows, faint as a small child's. */
const brow = (s: number, y: number): number =>
  0.5 *
  hill(((y - 15.5 + 0.012 * (s - 22) ** 2) / 3.4) ** 2) *
  Math.sqrt(hill(((s - 26) / 19) ** 2));

/** Lips, cheeks and the nose's tip, where the blood shows. */
const redness = (s: number, y: number): number => {
  const bend = 0.6 * hill(((s - 5) / 6) ** 2);
  const lips =
    hill((s / 20) ** 2) ** 0.3 *
    step(-58, -54.5, y + 0.012 * s * s) *
    step(-40.2, -42.4, y + 0.011 * s * s - bend);
  const cheek = 0.28 * mound(s, y, [34, -28], [26, 22]) + 0.22 * mound(s, y, [0, -27], [12, 10]);
  return Math.min(1, lips + cheek);
};

/** A point of the form: where it is, how much of it is hair (0 to 1), how red the skin, how sunk in the light is lost. */
export interface Place {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly hair: number;
  readonly flush: number;
}

/**
 * The form's surface in a direction from its middle: `around` from the face, `up` from the level, both in radians.
 * @param n nose length, millimetres
 */
export const surface = (around: number, up: number, n: number): Place => {
  const d = [
    Math.cos(up) * Math.sin(around),
    Math.sin(up),
    Math.cos(up) * Math.cos(around),
  ] as const;
  let r = larger(toCranium(...d), toFace(...d), BLEND);
  const rough = [d[0] * r, d[1] * r, MIDDLE[2] + d[2] * r] as const;
  const hair = step(-2.5, 2.5, rough[1] - hairline(rough[0], rough[2]));
  r += HAIR * hair;
  const [x, y] = [d[0] * r + MIDDLE[0], d[1] * r + MIDDLE[1]];
  let z = d[2] * r + MIDDLE[2];
  // Features are pushed along z, and only where the surface looks that way.
  const facing = step(0.15, 0.45, d[2]);
  if (facing === 0 || y > 32) return { x, y, z, hair, flush: 0 };
  z += facing * (features(x, y) + nose(x, y, n));
  const s = Math.abs(x);
  const lid = (EYE.ball + LID) ** 2 - (s - EYE.x) ** 2 - (y - EYE.y) ** 2;
  if (lid > 0) z = larger(z, EYE.z + Math.sqrt(lid), 2.5);
  const front = facing * step(10, 40, z);
  return { x, y, z, hair: Math.max(hair, front * brow(s, y)), flush: front * redness(s, y) };
};
