import type { Length, Ratio, Stops } from '../../formula/quantities.ts';
import { defineFormula } from '../../formula/record.ts';
import { start } from '../harbour.ts';
import { backdropDistance } from '../lens/inputs.ts';

/** Middle grey, against which tones are counted. */
const GREY = 0.18;

interface Geometry {
  readonly key: Length;
  readonly b: Length;
  readonly light: Length | undefined;
  readonly power: Stops | undefined;
  readonly gel: Stops;
}

/** Key's spill and the background light's spot, both over the key's light on the face. */
const lights = ({ key, b, light, power, gel }: Geometry): { spill: number; spot: number } => ({
  spill: (key / (key + b)) ** 2,
  spot: light === undefined || power === undefined ? 0 : 2 ** (power - gel) * (key / light) ** 2,
});

export default defineFormula({
  id: 'backdrop-exposure',
  title: 'How bright the backdrop is',
  tex: String.raw`n = \log_2 \left( 2^{\,p - g} \left( \frac{d_k}{d_b} \right)^{2} + \left( \frac{d_k}{d_k + b} \right)^{2} \right)`,
  spoken:
    'n equals the logarithm to base two of: two to the p minus g, times d k over d b squared, plus d k over d k plus b, squared',
  inputs: {
    key: {
      name: 'key distance',
      tex: 'd_k',
      unit: 'm',
      range: [0.05, 100],
      span: [0.3, 5],
      start: start('key-distance'),
      means: 'from the key to the child’s face',
    },
    b: {
      ...backdropDistance,
      means: 'from the child back to the backdrop, along the key’s way',
    },
    light: {
      name: 'light distance',
      tex: 'd_b',
      unit: 'm',
      range: [0.05, 100],
      span: [0.3, 5],
      start: 2,
      optional: true,
      means: 'from the background light to the backdrop',
    },
    power: {
      name: 'light stops',
      tex: 'p',
      unit: 'stop',
      range: [-20, 20],
      span: [-6, 6],
      start: 0,
      optional: true,
      means: 'the background light’s strength over the key’s, both metered from the same distance',
    },
    gel: {
      name: 'gel loss',
      tex: 'g',
      unit: 'stop',
      range: [0, 20],
      span: [0, 6],
      start: 0.5,
      default: 0,
      means: 'what a gel on the background light takes',
    },
    rho: {
      name: 'reflectance',
      tex: String.raw`\rho`,
      unit: '1',
      range: [0.001, 1],
      span: [0.02, 1],
      start: 0.18,
      optional: true,
      means: 'the share of light the cloth sends back: white 0.9, middle grey 0.18, black 0.03',
    },
  },
  ways: [{ groups: [['light-distance', 'light-stops']], optional: true }],
  outputs: {
    against: {
      name: 'against face',
      label: 'against the face',
      tex: 'n',
      unit: 'stop',
      digits: { decimals: 2 },
      means: 'the light on the backdrop over the key’s on the face, metered alike',
    },
    contrast: {
      name: 'spot over spill',
      unit: 'stop',
      digits: { decimals: 2 },
      means:
        'how much brighter the spot is than the cloth beside it, which the key’s spill alone lights',
    },
    tone: {
      name: 'tone',
      unit: 'stop',
      digits: { decimals: 2 },
      means: 'how the lit cloth comes out against middle grey, the face being exposed right',
    },
  },
  compute(given) {
    const { spill, spot } = lights(given);
    const against = Math.log2(spill + spot);
    return {
      against: against as Stops,
      contrast: Math.log2(1 + spot / spill) as Stops,
      tone: (given.rho === undefined ? undefined : against + Math.log2(given.rho / GREY)) as
        Stops | undefined,
    };
  },
  slips: {
    'spill-forgotten': {
      compute: (given) => ({ against: Math.log2(lights(given).spot) as Stops }),
      say: 'That leaves out the key, which lights the backdrop too.',
    },
  },
  worked: {
    tex: String.raw`n = \log_2\,( \val{spot} + \val{spill} ) = \val{against}`,
    values: (given, { against }) => {
      const { spill, spot } = lights(given);
      const part = (value: number) =>
        ({ value: value as Ratio, unit: '1', digits: { significant: 3 } }) as const;
      return {
        spot: part(spot),
        spill: part(spill),
        against: { value: against, unit: 'stop', digits: { decimals: 2 } },
      };
    },
  },
  symbols: [],
  model:
    'Inverse square law for both lights, flat disc towards each; the key shines past the child straight on to the cloth; the cloth is matt. Middle grey is 18 %.',
  breaks:
    'A key turned away, a grid on it or a flag beside it spills far less; a cloth at a slant gets less of both; shiny paper mirrors. The spill is not coloured: where it is as strong as a gelled spot it makes up half the light, and pales the colour.',
  sources: ['ies-inverse-square'],
});
