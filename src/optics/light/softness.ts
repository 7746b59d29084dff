import { InputError } from '../../formula/errors.ts';
import type { Angle, Length, Quantity, Ratio } from '../../formula/quantities.ts';
import { defineFormula, type QuantityInput } from '../../formula/record.ts';
import { start } from '../harbour.ts';
import { plain } from '../lens/worked.ts';

type Vector = readonly [number, number, number];

/**
 * Tangents of the two directions, either side of the axis, in which the child sees the edges of a turned source.
 * Throws: InputError where the nearer edge would reach the child.
 */
const edges = (w: Length, turn: Angle, D: Length): [number, number] => {
  const [across, along] = [(w / 2) * Math.cos(turn), (w / 2) * Math.sin(turn)];
  if (!(D > Math.abs(along)))
    throw new InputError(
      'Turned so far, the nearer edge of the source reaches the child. Turn it less or move it back.',
      'turn',
    );
  return [across / (D - along), across / (D + along)];
};

/** The solid angle of a triangle seen from the origin, by its three corners (van Oosterom and Strackee, 1983). */
const triangle = (a: Vector, b: Vector, c: Vector): number => {
  const dot = (p: Vector, q: Vector): number => p[0] * q[0] + p[1] * q[1] + p[2] * q[2];
  const [x, y, z] = [a, b, c].map((p) => Math.hypot(...p)) as [number, number, number];
  const volume =
    a[0] * (b[1] * c[2] - b[2] * c[1]) -
    a[1] * (b[0] * c[2] - b[2] * c[0]) +
    a[2] * (b[0] * c[1] - b[1] * c[0]);
  return (
    2 * Math.atan2(Math.abs(volume), x * y * z + dot(a, b) * z + dot(a, c) * y + dot(b, c) * x)
  );
};

/**
 * The solid angle of a flat rectangle, turned about its upright middle line.
 *
 * Model: exact, as two triangles. Valid: the source wholly in front of the child.
 * Source: A. van Oosterom and J. Strackee, IEEE Trans. Biomed. Eng. BME-30 (1983), 125.
 * @example solidAngle(m(2), m(2), deg(0), m(1)) // 2π/3 sr, a face of a cube seen from its centre
 */
export const solidAngle = (w: Length, h: Length, turn: Angle, D: Length): number => {
  const [x, z, y] = [(w / 2) * Math.cos(turn), (w / 2) * Math.sin(turn), h / 2];
  const corner = (side: number, up: number): Vector => [side * x, up * y, D - side * z];
  const [a, b, c, d] = [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)];
  return triangle(a, b, c) + triangle(a, c, d);
};

const size = {
  unit: 'm',
  range: [0.001, 100],
  span: [0.05, 3],
} as const satisfies Partial<QuantityInput>;

export default defineFormula({
  id: 'softness',
  title: 'Softness of the shadow’s edge',
  tex: String.raw`\alpha = 2\,\arctan\,\frac{w}{2D} \qquad e = x\,\frac{w}{D}`,
  spoken: 'alpha equals two times the arctangent of w over two D; e equals x times w over D',
  inputs: {
    w: {
      ...size,
      name: 'source width',
      tex: 'w',
      start: start('key-size'),
      means: 'how wide the front of the source is',
    },
    h: {
      ...size,
      name: 'source height',
      tex: 'h',
      start: 0.9,
      optional: true,
      means: 'how high it is',
    },
    D: {
      name: 'distance',
      tex: 'D',
      unit: 'm',
      range: [0.01, 1000],
      span: [0.3, 5],
      start: start('key-distance'),
      means: 'from its front to the edge that casts the shadow',
    },
    x: {
      name: 'occluder distance',
      tex: 'x',
      unit: 'mm',
      range: [0, 10000],
      span: [0, 500],
      start: 15,
      optional: true,
      means: 'from that edge on to the surface the shadow falls on: a nose stands off the cheek',
    },
    turn: {
      name: 'turn',
      tex: String.raw`\tau`,
      unit: 'deg',
      range: [-89, 89],
      span: [-80, 80],
      start: 0,
      default: 0,
      means: 'how far the source is turned away from facing the child',
    },
    face: {
      name: 'face width',
      tex: 'w_f',
      unit: 'mm',
      range: [1, 10000],
      span: [80, 200],
      start: start('face-width'),
      optional: true,
      means: 'how wide the face is (a two-year-old’s from memory)',
    },
    other: {
      ...size,
      name: 'other width',
      tex: "w'",
      start: 1.5,
      optional: true,
      means: 'the width of another source that is to be as soft',
    },
  },
  outputs: {
    angle: {
      name: 'angle',
      tex: String.raw`\alpha`,
      unit: 'deg',
      digits: { significant: 3 },
      means: 'how wide the source looks from the face',
    },
    solid: {
      name: 'solid angle',
      tex: String.raw`\Omega`,
      unit: 'sr',
      digits: { significant: 3 },
      means: 'how much of all directions it fills; half of them are 6.28 sr',
    },
    across: {
      name: 'edge width',
      tex: 'e',
      unit: 'mm',
      digits: { significant: 3 },
      means: 'how wide an upright shadow edge is, from full light to full shade',
    },
    up: {
      name: 'edge height',
      tex: 'e_h',
      unit: 'mm',
      digits: { significant: 3 },
      means: 'the same for a level edge',
    },
    share: {
      name: 'face share',
      label: 'share of the face',
      unit: '%',
      digits: { significant: 2 },
      means: 'the upright edge as a share of the face',
    },
    same: {
      name: 'same softness distance',
      label: 'as soft from',
      tex: "D'",
      unit: 'm',
      digits: { significant: 3 },
      means: 'how far the other source must be to look as wide',
    },
  },
  compute({ w, h, D, x, turn, face, other }) {
    const [left, right] = edges(w, turn, D);
    const angle = Math.atan(left) + Math.atan(right);
    const across = x === undefined ? undefined : x * (left + right);
    return {
      angle: angle as Angle,
      solid: (h === undefined ? undefined : solidAngle(w, h, turn, D)) as
        Quantity<'solid-angle'> | undefined,
      across: across as Length | undefined,
      up: (x === undefined || h === undefined ? undefined : (x * h) / D) as Length | undefined,
      share: (across === undefined || face === undefined ? undefined : across / face) as
        Ratio | undefined,
      same: (other === undefined ? undefined : other / (2 * Math.tan(angle / 2))) as
        Length | undefined,
    };
  },
  slips: {
    'half-angle': {
      compute: ({ w, D }) => ({ angle: Math.atan(w / (2 * D)) as Angle }),
      say: 'That is half the angle: from the middle of the source to its edge.',
    },
  },
  worked: {
    tex: String.raw`\alpha = 2\,\arctan\,\frac{\val{w}}{2 \times \val{D}} = \val{angle}`,
    values: ({ w, D, turn }, { angle }) => {
      const [left, right] = edges(w, turn, D);
      return {
        // The width a source that faces the child would need to look as wide.
        w: plain(2 * D * Math.tan((Math.atan(left) + Math.atan(right)) / 2), 'm', 3),
        D: plain(D, 'm'),
        angle: { value: angle, unit: 'deg', digits: { significant: 3 } },
      };
    },
  },
  symbols: [],
  model:
    'A flat, even source seen from the edge that casts the shadow; the surface behind that edge faces the source. A source turned away counts with the width it shows.',
  breaks:
    'Light that comes back from walls softens shadows further; grids only narrow the beam; a deep box or a hot centre makes the source smaller than its front.',
  sources: ['van-oosterom-1983'],
});
