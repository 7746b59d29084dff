import type { Length, Ratio } from '../../formula/quantities.ts';
import { defineFormula, type QuantityInput } from '../../formula/record.ts';
import { start } from '../harbour.ts';

const distance = {
  tex: 's',
  unit: 'm',
  range: [0.01, 10000],
  span: [0.2, 6],
} as const satisfies Partial<QuantityInput>;

/**
 * How much larger a near feature is drawn than an equal one behind it.
 *
 * Model: central projection from the entrance pupil; sizes go as one over distance. No focal length enters.
 * Valid: s above 0, depth 0 or more.
 * @example perspectiveRatio({ s: m(0.25), depth: m(0.1) }) // 1.4
 */
export const perspectiveRatio = ({
  s,
  depth,
}: {
  readonly s: Length;
  readonly depth: Length;
}): Ratio => ((s + depth) / s) as Ratio;
import { plain } from './worked.ts';

export default defineFormula({
  id: 'perspective',
  title: 'Perspective',
  tex: String.raw`\rho = \frac{s + \delta}{s}`,
  spoken: 'rho equals s plus delta, over s',
  inputs: {
    s: {
      ...distance,
      name: 'subject distance',
      start: start('subject-distance'),
      means: 'from the lens’s entrance pupil to the nearer feature, the nose',
    },
    depth: {
      name: 'depth',
      tex: String.raw`\delta`,
      unit: 'm',
      range: [0, 1000],
      span: [0, 0.4],
      start: start('depth'),
      means: 'how far the second feature, the ear, lies behind the first',
    },
    compare: {
      ...distance,
      tex: "s'",
      name: 'compare distance',
      start: start('compare-distance'),
      optional: true,
      means: 'another distance to set beside the first',
    },
  },
  outputs: {
    ratio: {
      name: 'ratio',
      tex: String.raw`\rho`,
      unit: '1',
      digits: { decimals: 3 },
      means: 'how many times larger the near feature is drawn than an equal far one',
    },
    compareRatio: {
      name: 'compare ratio',
      tex: String.raw`\rho'`,
      unit: '1',
      digits: { decimals: 3 },
      means: 'the same from the other distance',
    },
    difference: {
      name: 'difference',
      tex: String.raw`\rho/\rho' - 1`,
      unit: '%',
      digits: { decimals: 1 },
      means: 'how much stronger the first view is than the second',
    },
  },
  compute({ s, depth, compare }) {
    const ratio = perspectiveRatio({ s, depth });
    const compareRatio =
      compare === undefined ? undefined : perspectiveRatio({ s: compare, depth });
    return {
      ratio,
      compareRatio,
      difference: compareRatio === undefined ? undefined : ((ratio / compareRatio - 1) as Ratio),
    };
  },
  solve: { s: { ratio: ({ depth }, wanted) => (depth / (wanted - 1)) as Length } },
  slips: {
    'other-way': {
      compute: ({ s, depth }) => ({ ratio: (s / (s + depth)) as Ratio }),
      say: 'That is the far feature over the near one. The near one is drawn larger.',
    },
  },
  worked: {
    tex: String.raw`\rho = \frac{\val{s} + \val{depth}}{\val{s2}} = \val{ratio}`,
    values: ({ s, depth }, { ratio }) => ({
      s: plain(s, 'm'),
      s2: plain(s, 'm'),
      depth: plain(depth, 'm'),
      ratio: { value: ratio, unit: '1', digits: { decimals: 3 } },
    }),
  },
  model:
    'Central projection from the entrance pupil; both features face the camera. No focal length enters.',
  breaks:
    'Ordinary measuring starts at the front of the lens, some centimetres from the entrance pupil; towards the corners a wide rectilinear lens also stretches round things outwards, which this leaves out.',
  sources: ['zhao-2019-portraits'],
});
