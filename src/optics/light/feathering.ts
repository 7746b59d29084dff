import { InputError } from '../../formula/errors.ts';
import type { Angle, Length, Ratio, Stops } from '../../formula/quantities.ts';
import { defineFormula } from '../../formula/record.ts';
import { start } from '../harbour.ts';

/**
 * The exponent of a beam that falls as a power of the cosine and is at one half at half the beam angle.
 * @example exponent(deg(60)) // 4.82
 */
export const exponent = (angle: Angle): number => Math.log(0.5) / Math.log(Math.cos(angle / 2));

interface Set {
  readonly angle: Angle;
  readonly near: Length;
  readonly far: Length;
  readonly between: Angle;
}

/** Stops by which the far point is behind the near one with the axis turned so far from the near point. */
const difference = ({ angle, near, far, between }: Set, aim: number): number => {
  const n = exponent(angle);
  const lit = (off: number, d: number): number => Math.max(0, Math.cos(off)) ** n / d ** 2;
  const [a, b] = [lit(aim, near), lit(between - aim, far)];
  if (a === 0 && b === 0)
    throw new InputError(
      'Turned so far, the beam reaches neither point. Turn it back towards them.',
      'aim',
    );
  return Math.log2(a / b);
};

/** Where the axis must point for both to get the same: cos(φ − x)/cos x = (d₂/d₁)^(2/n). */
const evenTurn = ({ angle, near, far, between }: Set): Angle =>
  Math.atan(
    ((far / near) ** (2 / exponent(angle)) - Math.cos(between)) / Math.sin(between),
  ) as Angle;

export default defineFormula({
  id: 'feathering',
  title: 'Feathering',
  tex: String.raw`\tan x = \frac{(d_2/d_1)^{2/n} - \cos \varphi}{\sin \varphi}`,
  spoken:
    'the tangent of x equals d two over d one to the power two over n, minus cosine phi, over sine phi',
  inputs: {
    angle: {
      name: 'beam angle',
      tex: String.raw`\theta`,
      unit: 'deg',
      range: [1, 179],
      span: [10, 120],
      start: 60,
      series: [20, 40, 60, 90, 120],
      means: 'the full angle of the beam, to half the intensity of its middle',
    },
    near: {
      name: 'near distance',
      tex: 'd_1',
      unit: 'm',
      range: [0.01, 1000],
      span: [0.3, 5],
      start: start('key-distance'),
      means: 'from the light to the nearer child',
    },
    far: {
      name: 'far distance',
      tex: 'd_2',
      unit: 'm',
      range: [0.01, 1000],
      span: [0.3, 8],
      start: 1.6,
      means: 'from the light to the farther one',
    },
    between: {
      name: 'angle between',
      tex: String.raw`\varphi`,
      unit: 'deg',
      range: [0.1, 89],
      span: [2, 80],
      start: 20,
      means: 'how far apart the two are, seen from the light',
    },
    aim: {
      name: 'aim',
      tex: 'a',
      unit: 'deg',
      range: [-89, 89],
      span: [-30, 80],
      start: 25,
      default: 0,
      means:
        'where the axis points: 0 at the nearer child, positive towards the farther and beyond',
    },
    ceiling: {
      name: 'ceiling distance',
      tex: 'h',
      unit: 'm',
      range: [0.05, 100],
      span: [0.5, 4],
      start: 1.9,
      optional: true,
      means: 'from the lit patch of ceiling down to the child, for a light turned up instead',
    },
    rho: {
      name: 'reflectance',
      tex: String.raw`\rho`,
      unit: '1',
      range: [0.01, 1],
      span: [0.05, 1],
      start: 0.8,
      optional: true,
      means: 'the share of light the ceiling sends back',
    },
  },
  ways: [{ groups: [['ceiling-distance', 'reflectance']], optional: true }],
  outputs: {
    after: {
      name: 'after',
      label: 'after the turn',
      unit: 'stop',
      digits: { decimals: 2 },
      means: 'how much less the farther child gets with the light turned as given',
    },
    before: {
      name: 'before',
      label: 'before the turn',
      unit: 'stop',
      digits: { decimals: 2 },
      means: 'how much less it gets with the light aimed at the nearer one',
    },
    turn: {
      name: 'turn',
      label: 'turn that evens',
      tex: 'x',
      unit: 'deg',
      digits: { significant: 3 },
      means: 'the aim at which both get the same',
    },
    bounce: {
      name: 'bounce',
      label: 'bounce under direct',
      unit: 'stop',
      digits: { decimals: 1 },
      means: 'how far a light turned up to the ceiling falls under the straight one; an estimate',
    },
  },
  compute(given) {
    const { angle, near, aim, ceiling, rho } = given;
    return {
      after: difference(given, aim) as Stops,
      before: difference(given, 0) as Stops,
      turn: evenTurn(given),
      bounce:
        ceiling === undefined || rho === undefined
          ? undefined
          : (-Math.log2((2 * rho * near ** 2) / ((exponent(angle) + 1) * ceiling ** 2)) as Stops),
    };
  },
  slips: {
    'distance-alone': {
      compute: ({ near, far }) => ({ after: (2 * Math.log2(far / near)) as Stops }),
      say: 'That is the inverse square law alone, as if the beam were as strong to every side.',
    },
  },
  worked: {
    tex: String.raw`\tan x = \frac{\val{ratio}^{2/\val{n}} - \val{cos}}{\val{sin}} = \val{tan}`,
    values: (given, { turn }) => {
      const number = (value: number | undefined) =>
        ({ value: value as Ratio | undefined, unit: '1', digits: { significant: 3 } }) as const;
      return {
        ratio: number(given.far / given.near),
        n: number(exponent(given.angle)),
        cos: number(Math.cos(given.between)),
        sin: number(Math.sin(given.between)),
        tan: number(turn === undefined ? undefined : Math.tan(turn)),
      };
    },
  },
  symbols: [{ tex: 'n', means: 'the beam’s exponent: ln ½ over ln cos θ/2' }],
  model:
    'A beam that falls as a power of the cosine, at one half where the beam angle ends; each child metered with the flat disc towards the light. The bounce takes the whole beam to light one patch of matt ceiling straight above the child.',
  breaks:
    'Real beams have flatter tops and steeper sides; a bounce spreads over a patch of metres, and the walls add theirs: take it as within a stop.',
  sources: ['cie-eilv-beam-angle'],
});
