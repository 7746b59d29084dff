import { InputError } from '../../formula/errors.ts';
import type { Length, Ratio, Stops } from '../../formula/quantities.ts';
import { defineFormula, type QuantityInput } from '../../formula/record.ts';
import { start } from '../harbour.ts';
import { plain } from '../lens/worked.ts';

const place = {
  tex: 'P_l',
  unit: 'm',
  range: [-100, 100],
  list: { min: 2, max: 2 },
  optional: true,
  empty: true,
} as const satisfies Partial<QuantityInput>;

interface Distances {
  readonly near: Length | undefined;
  readonly far: Length | undefined;
  readonly light: readonly Length[] | undefined;
  readonly first: readonly Length[] | undefined;
  readonly second: readonly Length[] | undefined;
}

const apart = (a: readonly number[], b: readonly number[], id: string): Length => {
  const [x = 0, y = 0] = a;
  const [u = 0, v = 0] = b;
  const distance = Math.hypot(x - u, y - v);
  if (!(distance > 0))
    throw new InputError(
      'The point lies in the light itself. Move one of them apart, by 0.1 m or more.',
      id,
    );
  return distance as Length;
};

/** Both distances from the light, as given or as measured between places on the plan. */
const distances = ({ near, far, light, first, second }: Distances): [Length, Length] =>
  light && first && second
    ? [apart(light, first, 'near-place'), apart(light, second, 'far-place')]
    : [near ?? (0 as Length), far ?? (0 as Length)];

/**
 * The nearest distance at which a set of this depth loses no more than so many stops from its near side to its far.
 *
 * Model: inverse square law. Valid: depth ≥ 0, loss > 0.
 * @example distanceForEvenness(m(0.5), stops(1 / 3)) // 4.08 m
 */
export const distanceForEvenness = (depth: Length, loss: Stops): Length =>
  (depth / (2 ** (loss / 2) - 1)) as Length;

export default defineFormula({
  id: 'falloff',
  title: 'Fall-off with distance',
  tex: String.raw`n = 2\,\log_2\,\frac{d_2}{d_1}`,
  spoken: 'n equals two times the logarithm to base two of d two over d one',
  inputs: {
    near: {
      name: 'near',
      tex: 'd_1',
      unit: 'm',
      range: [0.01, 1000],
      span: [0.3, 5],
      start: start('key-distance'),
      optional: true,
      means: 'from the light to the nearer point',
    },
    far: {
      name: 'far',
      tex: 'd_2',
      unit: 'm',
      range: [0.01, 1000],
      span: [0.3, 8],
      start: 1.5,
      optional: true,
      means: 'from the light to the farther point',
    },
    light: {
      ...place,
      name: 'light place',
      start: 0,
      means: 'where the light stands on the plan: across; along',
    },
    first: {
      ...place,
      name: 'near place',
      tex: 'P_1',
      start: 1,
      means: 'the nearer point on the plan: across; along',
    },
    second: {
      ...place,
      name: 'far place',
      tex: 'P_2',
      start: 2,
      means: 'the farther point on the plan: across; along',
    },
    wanted: {
      name: 'wanted stops',
      tex: 'n_w',
      unit: 'stop',
      range: [0.001, 20],
      span: [0.1, 2],
      start: 1 / 3,
      fraction: true,
      optional: true,
      means: 'how much may be lost from the near point to the far one',
    },
  },
  ways: [
    {
      groups: [
        ['near', 'far'],
        ['light-place', 'near-place', 'far-place'],
      ],
    },
  ],
  outputs: {
    stops: {
      name: 'stops',
      tex: 'n',
      unit: 'stop',
      digits: { decimals: 2 },
      means: 'how much less light the far point gets; negative where it gets more',
    },
    percent: {
      name: 'percent',
      label: 'left at far',
      unit: '%',
      digits: { significant: 3 },
      means: 'what is left at the far point of the light at the near one',
    },
    even: {
      name: 'distance for evenness',
      tex: 'd_w',
      unit: 'm',
      digits: { significant: 3 },
      means: 'how far the near point must be for the same depth to lose only what is wanted',
    },
  },
  compute(given) {
    const [d1, d2] = distances(given);
    const { wanted } = given;
    return {
      stops: (2 * Math.log2(d2 / d1)) as Stops,
      percent: ((d1 / d2) ** 2) as Ratio,
      even:
        wanted === undefined ? undefined : distanceForEvenness(Math.abs(d2 - d1) as Length, wanted),
    };
  },
  slips: {
    'no-square': {
      compute: (given) => {
        const [d1, d2] = distances(given);
        return { stops: Math.log2(d2 / d1) as Stops };
      },
      say: 'That forgets the square: twice as far is a quarter of the light, two stops.',
    },
  },
  worked: {
    tex: String.raw`n = 2\,\log_2\,\frac{\val{far}}{\val{near}} = \val{stops}`,
    values: (given, { stops }) => {
      const [d1, d2] = distances(given);
      return {
        near: plain(d1, 'm'),
        far: plain(d2, 'm'),
        stops: { value: stops, unit: 'stop', digits: { decimals: 2 } },
      };
    },
  },
  model: 'A light small against its distance; nothing reflects back; each point faces the light.',
  breaks:
    'Large softboxes near by (the next plate), beams that are narrowed by a lens, and rooms with bright walls.',
  sources: ['ies-inverse-square'],
});
