import { EYE } from './form.ts';
import { column, KIND, row, type View } from './view.ts';

/** How far eyes follow the lens when the head turns away from it. */
const MOST = (32 * Math.PI) / 180;
/** From the eyeball's middle to the cornea's, so that both meet at the edge of the iris. */
const FORWARD =
  Math.sqrt(EYE.ball ** 2 - EYE.iris ** 2) - Math.sqrt(EYE.cornea ** 2 - EYE.iris ** 2);
const PUPIL = 2.3;

/** The opening between the lids, about the eye's middle: how far up and down it reaches so far out from the nose. */
const opening = (out: number): readonly [number, number] => {
  const t = (out - 0.4) / 13.4;
  const tilt = 0.05 * out;
  return t * t >= 1
    ? [0, 0]
    : [5.4 * (1 - Math.abs(t) ** 2.3) + tilt, -4.9 * (1 - Math.abs(t) ** 2.2) + tilt];
};

/** Where an eye's cornea has its middle, seen from the camera: millimetres right, up and towards it. */
export const corneaAt = (side: 1 | -1, turn: number): readonly [number, number, number] => {
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const gaze = turn - Math.max(-MOST, Math.min(MOST, turn));
  const x = side * EYE.x;
  return [
    x * c + EYE.z * s + FORWARD * Math.sin(gaze),
    EYE.y,
    EYE.z * c - x * s + FORWARD * Math.cos(gaze),
  ];
};

/** Sets both eyes into the view, between their lids, looking at the lens as far as eyes turn. */
export const setEyes = (view: View, turn: number): void => {
  const { width, height, scale, kind, z, nx, ny, nz } = view;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const gaze = turn - Math.max(-MOST, Math.min(MOST, turn));
  const [gx, gz] = [Math.sin(gaze), Math.cos(gaze)];
  for (const side of [-1, 1] as const) {
    const x = side * EYE.x;
    const [ox, oy, oz] = [x * c + EYE.z * s, EYE.y, EYE.z * c - x * s];
    const [cx, , cz] = corneaAt(side, turn);
    const [left, right] = [column(view, ox - 15), column(view, ox + 15)];
    const [top, foot] = [row(view, oy + 9), row(view, oy - 9)];
    for (let j = Math.max(0, Math.floor(top)); j < Math.min(height, foot); j++)
      for (let i = Math.max(0, Math.floor(left)); i < Math.min(width, right); i++) {
        const [px, py] = [(i + 0.5 - column(view, 0)) / scale, (row(view, 0) - j - 0.5) / scale];
        const at = j * width + i;
        const ball = EYE.ball ** 2 - (px - ox) ** 2 - (py - oy) ** 2;
        if (ball <= 0) continue;
        const deep = oz + Math.sqrt(ball);
        // Whatever stands well before the eyeball hides it; the lids lie on it.
        if ((z[at] as number) > deep + 3.2) continue;
        const [hx, hz] = [px, deep];
        const [lx, ly] = [(hx * c - hz * s) * side - EYE.x, py - EYE.y];
        if (hx * s + hz * c < EYE.z + 1) continue;
        const [up, down] = opening(lx);
        if (ly > up + 0.75 || ly < down) continue;
        if (ly > up - 0.2) {
          kind[at] = KIND.lash;
          continue;
        }
        const bulge = EYE.cornea ** 2 - (px - cx) ** 2 - (py - oy) ** 2;
        const front = cz + Math.sqrt(Math.max(0, bulge));
        // Off the middle of the gaze, on the ball: within the iris or not.
        const along = (px - ox) * gx + (deep - oz) * gz;
        const off = Math.sqrt(Math.max(0, EYE.ball ** 2 - along * along));
        const iris = along > 0 && off < EYE.iris;
        kind[at] = iris ? (off < PUPIL ? KIND.pupil : KIND.iris) : KIND.sclera;
        const cornea = iris && bulge > 0;
        const [mx, mz, radius, surface] = cornea
          ? [cx, cz, EYE.cornea, front]
          : [ox, oz, EYE.ball, deep];
        z[at] = surface;
        nx[at] = (px - mx) / radius;
        ny[at] = (py - oy) / radius;
        nz[at] = (surface - mz) / radius;
        view.hair[at] = 0;
        view.flush[at] = iris ? off / EYE.iris : 0;
      }
  }
};
