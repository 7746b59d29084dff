import { setEyes } from './eyes.ts';
import { openness } from './hollows.ts';
import { lamp, received, type Lamp } from './lamp.ts';
import { bust, type Mesh } from './mesh.ts';
import { peak, shadow, type Care } from './shadow.ts';
import { onScreen } from './tone.ts';
import { blank, KIND, set, type View } from './view.ts';

/** The lights, as the plate gives them; angles in radians. */
export interface Lights {
  readonly azimuth: number;
  readonly elevation: number;
  /** The whole angle the key fills, seen from the face. */
  readonly size: number;
  /** Stops the fill is under the key; infinity for none. */
  readonly fillStops: number;
  /** Stops the rim is over the key (under it: negative); none without. */
  readonly rimStops?: number | undefined;
}

/** From the harbour set: 1.4 m behind, 0.9 m aside to camera-left, 0.9 m over the hair; a standard reflector, 18 cm. */
const RIM = lamp(Math.atan2(-0.9, -1.4), Math.atan2(0.9, Math.hypot(1.4, 0.9)), 0.097);

const RIM_SHARE = received(RIM.half);

/** The head as the camera sees it for one turn. @param turn radians @param nose millimetres */
export const look = (meshes: readonly Mesh[], width: number, turn: number): View => {
  const view = blank(width);
  for (const mesh of meshes) set(view, mesh, turn);
  setEyes(view, turn);
  openness(view);
  return view;
};
export { bust };

/** What reaches every pixel's place, in the key's own measure: 1 is the key alone, square on. */
export interface Lit {
  readonly key: Lamp;
  /** What a surface receives of the key, and of the rim, by the cosine of its slant. */
  readonly share: (cosine: number) => number;
  readonly rimShare: (cosine: number) => number;
  readonly peak: number;
  readonly light: Float32Array;
  /** How much of the key, and of the rim, each place sees. */
  readonly sees: Float32Array;
  readonly rimSees: Float32Array;
}

export const unlit = (view: View, { azimuth, elevation, size }: Lights): Lit => {
  const key = lamp(azimuth, elevation, size);
  const plane = (): Float32Array => new Float32Array(view.z.length);
  return {
    key,
    share: received(key.half),
    rimShare: RIM_SHARE,
    peak: peak(view),
    light: plane(),
    sees: plane(),
    rimSees: plane(),
  };
};

/** Works out the light on some rows of a view. */
export const light = (
  view: View,
  lights: Lights,
  lit: Lit,
  care: Care,
  from = 0,
  to = view.height,
): void => {
  const { width, nx, ny, nz, kind, open } = view;
  const [kx, ky, kz] = lit.key.towards;
  const [rx, ry, rz] = RIM.towards;
  const { share, rimShare } = lit;
  const fill = 2 ** -lights.fillStops;
  const rim = lights.rimStops === undefined ? 0 : 2 ** lights.rimStops;
  shadow(view, lit.peak, lit.key, care, lit.sees, from, to);
  if (rim > 0) shadow(view, lit.peak, RIM, { ...care, strips: 1 }, lit.rimSees, from, to);
  for (let i = from * width; i < to * width; i++) {
    if (kind[i] === KIND.none) continue;
    const [x, y, z] = [nx[i] as number, ny[i] as number, nz[i] as number];
    lit.light[i] =
      (lit.sees[i] as number) * share(x * kx + y * ky + z * kz) +
      fill * (open[i] as number) +
      (rim > 0 ? rim * (lit.rimSees[i] as number) * rimShare(x * rx + y * ry + z * rz) : 0);
  }
};

/** Reflectances, as red, green and blue of linear light. The skin's own stands for 1. */
const OWN = {
  cloth: [0.1, 0.13, 0.17],
  hair: [0.075, 0.05, 0.036],
  sclera: [0.5, 0.47, 0.45],
  iris: [0.07, 0.045, 0.028],
  wall: [0.05, 0.055, 0.062],
} as const;
type Colour = readonly [number, number, number];
/** What skin of a luminance reflects: redder the paler it is. Weighted, it reflects just that. */
export const skinColour = (reflectance: number, grey = false): Colour => {
  if (grey) return [reflectance, reflectance, reflectance];
  const [r, g, b] = [1.42, 0.92, 0.68];
  const all = 0.2126 * r + 0.7152 * g + 0.0722 * b;
  return [(reflectance * r) / all, (reflectance * g) / all, (reflectance * b) / all];
};

type Made = Exclude<(typeof KIND)[keyof typeof KIND], 0 | 1>;
const own: Readonly<Record<Made, Colour>> = {
  [KIND.cloth]: OWN.cloth,
  [KIND.sclera]: OWN.sclera,
  [KIND.iris]: OWN.iris,
  [KIND.pupil]: [0.004, 0.004, 0.004],
  [KIND.lash]: [0.037, 0.025, 0.018],
};

/** Hair shines where it stands half way between light and camera, the more the flatter the light comes. */
const gloss = (x: number, y: number, z: number, [lx, ly, lz]: Colour): number => {
  const long = Math.sqrt(lx * lx + ly * ly + (lz + 1) ** 2) || 1;
  const cos = Math.max(0, (x * lx + y * ly + z * (lz + 1)) / long);
  return cos ** 22 * (0.04 + 0.5 * Math.max(0, 1 - (lz + 1) / long) ** 4);
};

/** What the water on an eye mirrors, straight on (index 1.376). */
const MIRROR = 0.025;

/** Paints some rows into an image of the view's own size. */
export const develop = (
  view: View,
  lights: Lights,
  lit: Lit,
  skin: Colour,
  image: Uint8ClampedArray,
  from = 0,
  to = view.height,
): void => {
  const { width, nx, ny, nz, kind, hair, flush } = view;
  const [kx, ky, kz] = lit.key.towards;
  const rim = lights.rimStops === undefined ? 0 : 2 ** lights.rimStops;
  // A key that fills an angle is as bright as gives its light there; its mirror image is as bright as it is.
  const bright = 1 / Math.sin(lit.key.half) ** 2;
  const edge = [Math.cos(lit.key.half * 1.06), Math.cos(lit.key.half * 0.94)] as const;
  for (let i = from * width; i < to * width; i++) {
    let [r, g, b] = OWN.wall as Colour;
    const what = kind[i];
    if (what !== KIND.none) {
      const [x, y, z] = [nx[i] as number, ny[i] as number, nz[i] as number];
      const h = hair[i] as number;
      const f = flush[i] as number;
      let shine = 0;
      const on = lit.light[i] as number;
      if (what === KIND.body) {
        // Blood under the skin takes green and blue away; hair lies over all.
        r = skin[0] * (1 - 0.12 * f) * (1 - h) + OWN.hair[0] * h;
        g = skin[1] * (1 - 0.42 * f) * (1 - h) + OWN.hair[1] * h;
        b = skin[2] * (1 - 0.38 * f) * (1 - h) + OWN.hair[2] * h;
        if (h > 0.6) {
          shine = h * (lit.sees[i] as number) * gloss(x, y, z, lit.key.towards);
          if (rim > 0)
            shine += 1.6 * h * rim * (lit.rimSees[i] as number) * gloss(x, y, z, RIM.towards);
        }
      } else {
        [r, g, b] = own[what as Made];
        if (what === KIND.iris || what === KIND.pupil) {
          const ring = 1.25 - 0.75 * f ** 4;
          if (what === KIND.iris) [r, g, b] = [r * ring, g * ring, b * ring];
          // The key mirrored: the way that is as far past the eye's normal as the camera is on this side.
          const cos = 2 * z * (x * kx + y * ky + z * kz) - kz;
          const part = Math.min(1, Math.max(0, (cos - edge[0]) / (edge[1] - edge[0])));
          shine = MIRROR * bright * part * (lit.sees[i] as number);
        }
      }
      r = r * on + shine;
      g = g * on + shine;
      b = b * on + shine;
    }
    const at = 4 * i;
    image[at] = onScreen(r);
    image[at + 1] = onScreen(g);
    image[at + 2] = onScreen(b);
    image[at + 3] = 255;
  }
};
