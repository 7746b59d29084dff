import { InputError } from '../../formula/errors.ts';
import type { Angle, Length, Quantity } from '../../formula/quantities.ts';
import { defineFormula, type Given, type QuantityInput } from '../../formula/record.ts';
import { G } from '../gravity.ts';

type Mass = Quantity<'mass'>;
type Force = Quantity<'force'>;
type Torque = Quantity<'torque'>;

const mass = {
  unit: 'kg',
  range: [0, 500],
  span: [0, 20],
} as const satisfies Partial<QuantityInput>;

const height = {
  unit: 'm',
  range: [0, 20],
  span: [0, 3],
  optional: true,
} as const satisfies Partial<QuantityInput>;

interface Stand {
  readonly head: Mass;
  readonly modifier: Mass;
  readonly column: Mass;
  readonly R: Length;
  readonly legs: number;
  readonly boom: Length;
  readonly direction: Angle;
  readonly ballast: Mass;
  readonly place: Length;
}

interface Moments {
  readonly overturning: number;
  readonly restoring: number;
  /** How far the ballast's weight acts inside the edge. */
  readonly arm: number;
  /** Which edge it is: from this foot, counted from 0, to the next. */
  readonly edge: number;
}

/**
 * Moments about each edge of the footprint, the line between two neighbouring feet, in N·m: what turns the stand over
 * it and what holds it back. The worst edge is the one with the least left.
 *
 * Model: rigid, level floor; head and modifier at the boom's end, ballast straight opposite, the column in the middle.
 */
export const momentsAbout = (stand: Stand): Moments => {
  const { head, modifier, column, R, legs, boom, direction, ballast, place } = stand;
  const apothem = R * Math.cos(Math.PI / legs);
  const edges = Array.from({ length: legs }, (_, k): Moments => {
    const off = Math.cos(direction - ((2 * k + 1) * Math.PI) / legs);
    const out = boom * off - apothem;
    const arm = apothem + place * off;
    const load = (head + modifier) * G * out;
    // Over the edge itself it turns nothing; rounding must not make it.
    const counter = Math.abs(arm) < 1e-12 ? 0 : ballast * G * arm;
    return {
      overturning: Math.max(0, load) + Math.max(0, -counter),
      restoring: column * G * apothem + Math.max(0, -load) + Math.max(0, counter),
      arm,
      edge: k,
    };
  });
  return edges.reduce((worst, edge) =>
    edge.restoring - edge.overturning < worst.restoring - worst.overturning - 1e-12 ? edge : worst,
  );
};

/** What is left of one moment after another: nothing, not its last digit, where they are equal but for rounding. */
const leftOf = (whole: number, taken: number): number =>
  Math.abs(whole - taken) <= 1e-12 * Math.max(whole, taken) ? 0 : whole - taken;

export default defineFormula({
  id: 'stand-stability',
  title: 'What tips a stand',
  tex: String.raw`F = \frac{M_r - M_o}{h_p} \qquad a = R\,\cos\,\frac{180^\circ}{n}`,
  spoken:
    'F equals M r minus M o over h p; a equals R times the cosine of one hundred and eighty degrees over n',
  inputs: {
    head: {
      ...mass,
      name: 'head mass',
      tex: 'm_h',
      start: 3,
      default: 0,
      means: 'the flash head or lamp',
    },
    modifier: {
      ...mass,
      name: 'modifier mass',
      tex: 'm_m',
      start: 1,
      default: 0,
      means: 'the softbox, dish or grid on it',
    },
    boom: {
      name: 'boom length',
      tex: 'l',
      unit: 'm',
      range: [0, 10],
      span: [0, 2.5],
      start: 0.8,
      default: 0,
      means: 'how far out from the column the head hangs; 0 on top of it',
    },
    column: {
      ...mass,
      name: 'column mass',
      tex: 'm_c',
      start: 4,
      means: 'the stand itself',
    },
    R: {
      name: 'foot radius',
      tex: 'R',
      unit: 'm',
      range: [0.01, 10],
      span: [0.2, 1.2],
      start: 0.5,
      means: 'from the column to the end of a leg, as spread',
    },
    ballast: {
      ...mass,
      name: 'ballast',
      tex: 'm_b',
      start: 10,
      default: 0,
      means: 'sand bag or counterweight',
    },
    place: {
      name: 'ballast distance',
      tex: 'b',
      unit: 'm',
      range: [0, 10],
      span: [0, 2],
      start: 0,
      default: 0,
      means: 'how far from the column it hangs, on the side away from the boom; 0 on the column',
    },
    pull: {
      name: 'pull height',
      tex: 'h_p',
      unit: 'm',
      range: [0.01, 20],
      span: [0.2, 2.5],
      start: 0.9,
      optional: true,
      means:
        'where someone pulls or a cable tugs: a two-year-old reaches about 0.9 m (from memory)',
    },
    legs: {
      name: 'legs',
      tex: 'n',
      unit: 'count',
      range: [3, 12],
      start: 3,
      means: 'how many legs the stand has',
    },
    direction: {
      name: 'boom direction',
      tex: String.raw`\varphi`,
      unit: 'deg',
      range: [-360, 360],
      span: [0, 180],
      start: 60,
      default: (given: Given) => Math.PI / Math.round(given['legs'] as number),
      means: 'from a leg: 0 over it; between two legs, the worst, unless given',
    },
    factor: {
      name: 'factor',
      tex: 'k',
      unit: '1',
      range: [1, 20],
      span: [1, 4],
      start: 2,
      default: 2,
      means: 'how many times over it is to be held; 2 is common practice, no source',
    },
    headHeight: {
      ...height,
      name: 'head height',
      tex: 'h_h',
      start: 2,
      means:
        'how high the head is; it changes none of these numbers, only how far it reaches when it falls',
    },
    modifierHeight: {
      ...height,
      name: 'modifier height',
      tex: 'h_m',
      start: 1.8,
      means: 'the same for the modifier',
    },
  },
  outputs: {
    pullForce: {
      name: 'tipping pull',
      tex: 'F',
      unit: 'N',
      digits: { significant: 3 },
      means:
        'the level pull that just tips it over its worst edge; 10 N is the weight of about 1 kg',
    },
    overturning: {
      name: 'overturning',
      tex: 'M_o',
      unit: 'N·m',
      digits: { significant: 3 },
      means: 'what turns it over that edge',
    },
    restoring: {
      name: 'restoring',
      tex: 'M_r',
      unit: 'N·m',
      digits: { significant: 3 },
      means: 'what holds it back',
    },
    margin: {
      name: 'margin',
      unit: 'N·m',
      digits: { significant: 3 },
      means:
        'what is left of the second when the first is taken the factor’s times; negative is short',
    },
    counterweight: {
      name: 'counterweight',
      unit: 'kg',
      digits: { significant: 2 },
      means: 'the whole ballast needed at its place to hold it the factor’s times over',
    },
  },
  compute(given) {
    const { factor, pull } = given;
    const legs = Math.round(given.legs);
    if (Math.abs(legs - given.legs) > 1e-9)
      throw new InputError('Legs are counted whole: 3, 4 or 5.', 'legs');
    const stand = { ...given, legs };
    const { overturning, restoring } = momentsAbout(stand);
    const bare = momentsAbout({ ...stand, ballast: 0 as Mass });
    const short = leftOf(factor * bare.overturning, bare.restoring);
    return {
      pullForce: (pull === undefined
        ? undefined
        : Math.max(0, leftOf(restoring, overturning)) / pull) as Force | undefined,
      overturning: overturning as Torque,
      restoring: restoring as Torque,
      margin: leftOf(restoring, factor * overturning) as Torque,
      counterweight: (short <= 0 ? 0 : bare.arm > 0 ? short / (G * bare.arm) : Infinity) as Mass,
    };
  },
  slips: {
    'radius-for-edge': {
      compute: ({ column, R, pull }) => ({
        pullForce: (pull === undefined ? undefined : (column * G * R) / pull) as Force | undefined,
      }),
      say: 'That tips it over the end of a leg. It tips over the line between two feet, which is nearer: half the radius for three legs.',
    },
  },
  worked: {
    tex: String.raw`F = \frac{\val{restoring} - \val{overturning}}{\val{pull}} = \val{F}`,
    values: ({ pull }, { restoring, overturning, pullForce }) => ({
      restoring: { value: restoring, unit: 'N·m', digits: { significant: 3 } },
      overturning: { value: overturning, unit: 'N·m', digits: { significant: 3 } },
      pull: { value: pull, unit: 'm', digits: { decimals: 2 } },
      F: { value: pullForce, unit: 'N', digits: { significant: 3 } },
    }),
  },
  symbols: [{ tex: 'a', means: 'from the column to the worst edge of the footprint' }],
  model:
    'Rigid parts on a level floor, head and modifier at the boom’s end, ballast opposite. Moments are taken about every line between two neighbouring feet; the worst counts.',
  breaks:
    'Slopes, soft floors, clamps that slip, a swing, a tripped cable and a child who climbs are not in it. A number here clears nothing for use: weight every stand, turn a leg under the load, keep a grown-up between it and the child, and follow the maker’s ratings.',
  sources: ['openstax-college-physics'],
});
