import { InputError } from '../../formula/errors.ts';
import { parseQuantity } from '../../formula/notation/quantity.ts';
import type { FNumber, Ratio, Stops } from '../../formula/quantities.ts';
import { defineFormula, type QuantityInput } from '../../formula/record.ts';
import { marked, marks, type Marks } from '../aperture/marks.ts';

const RANGE = [0.01, 10000] as const;
/** A reading in lux stands for the f-number that is right at ISO 100 and 1 s with C = 250: N² = E · 100/250. */
const PER_LUX = 100 / 250;

const reading = {
  unit: 'f/',
  range: RANGE,
  span: [1, 22],
  optional: true,
  read: (text) =>
    /(?:lx|lux)$/i.test(text)
      ? Math.sqrt(
          PER_LUX *
            parseQuantity(text, {
              name: 'reading',
              unit: 'lx',
              range: [RANGE[0] ** 2 / PER_LUX, RANGE[1] ** 2 / PER_LUX],
              example: 500,
              stored: true,
            }),
        )
      : undefined,
} as const satisfies Partial<QuantityInput>;

interface Readings {
  readonly key: FNumber | undefined;
  readonly fill: FNumber | undefined;
  readonly lights: readonly FNumber[] | undefined;
  readonly marks: Marks;
}

/** Key and fill as light, in squares of f-numbers; the first of a list is the key, all others together the fill. */
export const lightOf = ({ key, fill, lights, marks: mode }: Readings): { K: number; F: number } => {
  const [first, ...rest] = (lights ?? [key, fill]).flatMap((N) =>
    N === undefined ? [] : marked(N, mode) ** 2,
  );
  if (first === undefined)
    throw new InputError('Give at least the key’s reading, such as f/8.', 'key');
  return { K: first, F: rest.reduce((sum, light) => sum + light, 0) };
};

export default defineFormula({
  id: 'lighting-ratio',
  title: 'Lighting ratio',
  tex: String.raw`R = \frac{K + F}{F} = \frac{N_K^2 + N_F^2}{N_F^2}`,
  spoken: 'R equals K plus F over F, which is N K squared plus N F squared, over N F squared',
  inputs: {
    key: {
      ...reading,
      name: 'key',
      tex: 'N_K',
      start: 8,
      means: 'what the flat disc reads of the key alone, pointed at it; an f-number, or lux',
    },
    fill: {
      ...reading,
      name: 'fill',
      tex: 'N_F',
      start: 5.6,
      means: 'what it reads of the fill alone, which reaches both sides of the face',
    },
    lights: {
      ...reading,
      name: 'lights',
      tex: 'N_i',
      start: 8,
      list: { min: 1, max: 4 },
      empty: true,
      means:
        'or the readings of up to four lights, the key first, all others fill: f/8; f/5.6; f/4',
    },
    marks,
  },
  ways: [{ groups: [['key', 'fill'], ['lights']] }],
  outputs: {
    ratio: {
      name: 'ratio',
      tex: 'R',
      unit: '1',
      digits: { significant: 2 },
      means: 'the lit side over the shadow side: key and fill together, to fill alone',
    },
    plain: {
      name: 'key to fill',
      tex: 'K/F',
      unit: '1',
      digits: { significant: 2 },
      means: 'the other convention in print: the key alone to the fill alone',
    },
    stops: {
      name: 'stops',
      label: 'ratio in stops',
      unit: 'stop',
      digits: { decimals: 2 },
      means: 'the ratio in stops',
    },
    total: {
      name: 'total',
      label: 'all lights on',
      tex: 'N',
      unit: 'f/',
      digits: { significant: 2 },
      means:
        'the f-number with all lights on, as their discs add up; a dome towards the camera reads a key from the side lower, and has a constant of its own (320 to 340)',
    },
  },
  compute(given) {
    const { K, F } = lightOf(given);
    return {
      ratio: ((K + F) / F) as Ratio,
      plain: (K / F) as Ratio,
      stops: Math.log2((K + F) / F) as Stops,
      total: Math.sqrt(K + F) as FNumber,
    };
  },
  slips: {
    'fill-on-one-side': {
      compute: (given) => {
        const { K, F } = lightOf(given);
        return { ratio: (K / F) as Ratio };
      },
      say: 'That leaves the fill out of the lit side. A fill near the camera reaches both: (key + fill) to fill.',
    },
    'f-numbers-unsquared': {
      compute: ({ key, fill }) => ({
        ratio: (((key ?? 0) + (fill ?? 0)) / (fill ?? 1)) as Ratio,
      }),
      say: 'That adds f-numbers. Light goes as their squares.',
    },
  },
  worked: {
    tex: String.raw`R = \frac{\val{K} + \val{F}}{\val{F2}} = \val{ratio}`,
    values: (given, { ratio }) => {
      const { K, F } = lightOf(given);
      const light = (value: number) => ({ value, unit: '1', digits: { significant: 3 } }) as const;
      return {
        K: light(K),
        F: light(F),
        F2: light(F),
        ratio: {
          value: ratio !== undefined && Number.isFinite(ratio) ? ratio : undefined,
          unit: '1',
          digits: { significant: 2 },
        },
      };
    },
  },
  symbols: [
    { tex: 'K', means: 'the key’s light, N²' },
    { tex: 'F', means: 'the fill’s light' },
  ],
  model:
    'Each light metered alone, flat disc pointed at it, same ISO; the fill falls alike on both sides of the face; a reading in lux is taken as the f-number for ISO 100 and 1 s.',
  breaks:
    'A fill from one side reaches the lit side less; the room sends back some of every light, so measured ratios come out lower (the next plate).',
  sources: ['lighting-ratio-asc'],
});
