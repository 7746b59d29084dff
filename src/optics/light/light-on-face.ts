import type { Angle, Length, Ratio, Stops } from '../../formula/quantities.ts';
import { deg } from '../../formula/quantities.ts';
import { defineFormula } from '../../formula/record.ts';
import { start } from '../harbour.ts';
import { direction } from './direction.ts';

/** Azimuths of the face's planes from the way the nose points; all of them upright. Our convention. */
export const PLANES = {
  forehead: deg(0),
  noseLeft: deg(-60),
  noseRight: deg(60),
  cheekLeft: deg(-45),
  cheekRight: deg(45),
} as const;

/** A key this far round leaves the light at the nose itself: half the face is dark. Our convention. */
const SPLIT = deg(77);
/** The tip's shadow counts as under the nose within this share of the nose's length. Our convention. */
const UNDER = 1 / 4;
/** Rounding of a right angle must not put a shadow on a face that the light no longer reaches. */
const HAIR = 1e-9;

/**
 * The pattern by where the shadow of the nose's tip falls on a round face.
 *
 * Model: the face is an upright cylinder of half the face's width, the nose's tip stands off it; from
 * sin a = R/(R + n) on, the tip's shadow runs off the lit cheek into the shade beyond, which closes the triangle.
 */
const patternOf = (a: number, nose: number, face: number): string => {
  const round = Math.abs(a);
  if (round >= SPLIT) return 'split';
  if (Math.sin(round) >= face / 2 / (face / 2 + nose)) return 'rembrandt';
  return Math.tan(round) <= UNDER ? 'butterfly' : 'loop';
};

export default defineFormula({
  id: 'light-on-face',
  title: 'Light on the face',
  tex: String.raw`\cos i = \cos \varepsilon\,\cos (a - \beta) \qquad x = n\,\tan a \qquad y = n\,\frac{\tan \varepsilon}{\cos a}`,
  spoken:
    'cosine i equals cosine epsilon times cosine of a minus beta; x equals n times tangent a; y equals n times tangent epsilon over cosine a',
  inputs: {
    azimuth: {
      name: 'key azimuth',
      tex: String.raw`\varphi`,
      unit: 'deg',
      range: [-180, 180],
      span: [-120, 120],
      start: start('key-azimuth'),
      means: 'how far round the key stands, from the camera’s side; positive to camera-right',
    },
    elevation: {
      name: 'key elevation',
      tex: String.raw`\varepsilon`,
      unit: 'deg',
      range: [-89, 89],
      span: [-30, 80],
      start: start('key-elevation'),
      means: 'how high it stands above the child’s eyes, seen from the face',
    },
    turn: {
      name: 'head turn',
      tex: String.raw`\psi`,
      unit: 'deg',
      range: [-90, 90],
      span: [-60, 60],
      start: 15,
      default: 0,
      means: 'where the nose points: 0 at the lens, positive to camera-right',
    },
    fill: {
      name: 'fill stops',
      tex: 'n_f',
      unit: 'stop',
      range: [-5, 20],
      span: [0, 6],
      start: 2,
      optional: true,
      means: 'how many stops an even fill is under the key, each metered towards its light',
    },
    nose: {
      name: 'nose length',
      tex: 'n',
      unit: 'mm',
      range: [0.1, 100],
      span: [5, 40],
      start: 15,
      means: 'how far the nose’s tip stands off the face (a two-year-old’s from memory)',
    },
    face: {
      name: 'face width',
      tex: 'w_f',
      unit: 'mm',
      range: [1, 10000],
      span: [80, 200],
      start: start('face-width'),
      default: 105,
      means: 'how wide the face is, which decides where the cheek turns into shade (from memory)',
    },
  },
  outputs: {
    forehead: {
      name: 'incidence forehead',
      label: 'incidence, forehead',
      tex: 'i',
      unit: 'deg',
      digits: { significant: 3 },
      means: 'the angle between the key and the way the forehead faces; from 90° on it gets none',
    },
    noseLeft: {
      name: 'incidence nose left',
      label: 'incidence, nose left',
      unit: 'deg',
      digits: { significant: 3 },
      means: 'the same for the nose’s side at camera-left, taken 60° round from straight ahead',
    },
    noseRight: {
      name: 'incidence nose right',
      label: 'incidence, nose right',
      unit: 'deg',
      digits: { significant: 3 },
      means: 'for its side at camera-right',
    },
    cheekLeft: {
      name: 'incidence cheek left',
      label: 'incidence, cheek left',
      unit: 'deg',
      digits: { significant: 3 },
      means: 'for the cheek at camera-left, taken 45° round',
    },
    cheekRight: {
      name: 'incidence cheek right',
      label: 'incidence, cheek right',
      unit: 'deg',
      digits: { significant: 3 },
      means: 'for the cheek at camera-right',
    },
    planes: {
      name: 'plane stops',
      label: 'stops between planes',
      unit: 'stop',
      digits: { decimals: 2 },
      means: 'from the least lit of these planes to the most lit, the fill counted in',
    },
    side: {
      name: 'side',
      label: 'lit side',
      kind: 'choice',
      labels: {
        short: 'short',
        broad: 'broad',
        neither: 'neither',
      },
      means:
        'short where the key lights the side of the face turned from the camera, broad where it lights the side turned to it',
    },
    pattern: {
      name: 'pattern',
      kind: 'choice',
      labels: { butterfly: 'butterfly', loop: 'loop', rembrandt: 'Rembrandt', split: 'split' },
      means: 'by where the shadow of the nose’s tip falls',
    },
    across: {
      name: 'nose shadow across',
      tex: 'x',
      unit: 'mm',
      digits: { significant: 3 },
      means: 'how far the tip’s shadow falls to the side, on a flat face; positive to camera-left',
    },
    down: {
      name: 'nose shadow down',
      tex: 'y',
      unit: 'mm',
      digits: { significant: 3 },
      means: 'how far down; negative is up, from a key below the eyes',
    },
    catchX: {
      name: 'catchlight x',
      label: 'catchlight across',
      unit: '1',
      digits: { decimals: 2 },
      means: 'where the key shines in the eye, in radii of the cornea; positive to camera-right',
    },
    catchY: {
      name: 'catchlight y',
      label: 'catchlight up',
      unit: '1',
      digits: { decimals: 2 },
      means: 'the same upwards',
    },
  },
  compute({ azimuth, elevation, turn, fill, nose, face }) {
    const a = azimuth - turn;
    const cosines = Object.fromEntries(
      Object.entries(PLANES).map(([plane, beta]) => [
        plane,
        Math.cos(elevation) * Math.cos(a - beta),
      ]),
    ) as Record<keyof typeof PLANES, number>;
    const lit = Object.values(cosines).map(
      (cos) => Math.max(0, cos) + (fill === undefined ? 0 : 2 ** (fill * -1)),
    );
    const incidence = (cos: number): Angle => Math.acos(Math.min(1, Math.max(-1, cos))) as Angle;

    const before = Math.cos(a) > HAIR;
    const far = (sign: number): number => (sign === 0 ? 0 : Math.sign(sign) * Infinity);
    const across = before ? nose * Math.tan(a) : far(Math.sin(a));
    const down = before ? (nose * Math.tan(elevation)) / Math.cos(a) : far(elevation);

    const [x, y, z] = direction(azimuth, elevation);
    // The cornea mirrors the key to the lens where its surface stands halfway between both.
    const half = Math.hypot(x, y, z + 1);
    const facing = Math.sin(a) * -Math.sin(turn);

    return {
      forehead: incidence(cosines.forehead),
      noseLeft: incidence(cosines.noseLeft),
      noseRight: incidence(cosines.noseRight),
      cheekLeft: incidence(cosines.cheekLeft),
      cheekRight: incidence(cosines.cheekRight),
      planes: (Math.max(...lit) === 0
        ? 0
        : Math.log2(Math.max(...lit) / Math.min(...lit))) as Stops,
      side: Math.abs(facing) < HAIR ? 'neither' : facing < 0 ? 'short' : 'broad',
      pattern: patternOf(Math.acos(Math.min(1, Math.max(-1, Math.cos(a)))), nose, face),
      across: across as Length,
      down: down as Length,
      catchX: (half < HAIR ? 0 : x / half) as Ratio,
      catchY: (half < HAIR ? 0 : y / half) as Ratio,
    };
  },
  slips: {
    'turn-forgotten': {
      compute: ({ azimuth, nose }) => ({ across: (nose * Math.tan(azimuth)) as Length }),
      say: 'That measures the key from the camera. For the nose it counts from where the nose points: take the head’s turn off.',
    },
  },
  worked: {
    tex: String.raw`x = \val{n} \times \tan\,\val{a} = \val{across}`,
    values: ({ azimuth, turn, nose }, { across }) => ({
      n: { value: nose, unit: 'mm', digits: { significant: 3 } },
      a: { value: azimuth - turn, unit: 'deg', digits: { significant: 3 } },
      across: {
        value: across !== undefined && Number.isFinite(across) ? across : undefined,
        unit: 'mm',
        digits: { significant: 3 },
      },
    }),
  },
  symbols: [
    { tex: 'a', means: 'the key’s azimuth from the nose: φ − ψ' },
    { tex: String.raw`\beta`, means: 'which way a plane of the face is turned from the nose' },
  ],
  model:
    'A small, far key; a face of five upright planes on a round head; a nose that is one point in front of it. The fill is even and reaches every plane.',
  breaks:
    'A large softbox near by lights past the edge and widens every line here; a real cheek, brow and chin are no planes. The names of the patterns are the trade’s, where one passes into the next is our convention.',
  sources: ['lambert-cosine-ies'],
});
