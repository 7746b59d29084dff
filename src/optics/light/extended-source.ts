import { InputError } from '../../formula/errors.ts';
import type { Length, Quantity, Stops } from '../../formula/quantities.ts';
import { defineFormula, type QuantityInput } from '../../formula/record.ts';
import { start } from '../harbour.ts';

type Shape = 'disc' | 'rectangle';

interface Source {
  readonly shape: Shape;
  readonly w: Length;
  readonly h: Length | undefined;
}

/** Half the sides, or the radius twice over. */
const halves = ({ shape, w, h }: Source): [number, number] => {
  if (shape === 'disc') return [w / 2, w / 2];
  if (h === undefined)
    throw new InputError('A rectangle needs a height too, such as 0.9 m.', 'height');
  return [w / 2, h / 2];
};

/**
 * The share of a Lambertian source's exitance that reaches a flat disc on its axis and facing it: E = π L F.
 *
 * Model: even, perfectly diffuse surface; the reading is taken on its axis. Disc: r²/(r² + d²). Rectangle: the
 * configuration factor of a plane element to a parallel rectangle, four equal corners together.
 * Valid: d ≥ 0. Source: CIE e-ILV (Lambert's law); Howell, configuration factors B-3 and B-4.
 * @example reach({ shape: 'disc', w: m(0.9), h: undefined }, m(0.9)) // 0.2
 */
export const reach = (source: Source, d: Length): number => {
  const [a, b] = halves(source);
  if (source.shape === 'disc') return 1 / (1 + (d / a) ** 2);
  const [u, v] = [Math.hypot(a, d), Math.hypot(b, d)];
  return (2 / Math.PI) * ((a / u) * Math.atan(b / u) + (b / v) * Math.atan(a / v));
};

/** What the point law would make of the same source. */
const pointReach = (source: Source, d: Length): number => {
  const [a, b] = halves(source);
  return (source.shape === 'disc' ? a * a : (4 * a * b) / Math.PI) / d ** 2;
};

const over = (source: Source, d: Length): number => pointReach(source, d) / reach(source, d);

/** The distance beyond which the point law is over the truth by less than this factor. */
const distanceFor = (source: Source, factor: number): Length => {
  const [a, b] = halves(source);
  if (source.shape === 'disc') return (a / Math.sqrt(factor - 1)) as Length;
  // The error falls steadily with distance, so halving always closes in on it; in logarithms, for every size alike.
  let [low, high] = [Math.min(a, b) / 100, Math.max(a, b) * 100];
  for (let i = 0; i < 80; i++) {
    const middle = Math.sqrt(low * high);
    if (over(source, middle as Length) > factor) low = middle;
    else high = middle;
  }
  return Math.sqrt(low * high) as Length;
};

type Luminance = Quantity<'luminance'>;
type Illuminance = Quantity<'illuminance'>;

const luminanceOf = (
  source: Source,
  L: Luminance | undefined,
  reading: Illuminance | undefined,
  at: Length | undefined,
): number | undefined =>
  L ??
  (reading === undefined || at === undefined ? undefined : reading / (Math.PI * reach(source, at)));

const side = {
  unit: 'm',
  range: [0.001, 100],
  span: [0.1, 3],
} as const satisfies Partial<QuantityInput>;

export default defineFormula({
  id: 'extended-source',
  title: 'A light that is no point',
  tex: String.raw`E = \pi L\,\frac{r^2}{r^2 + d^2}`,
  spoken: 'E equals pi L times r squared over r squared plus d squared',
  inputs: {
    shape: {
      name: 'shape',
      choices: { disc: 'disc', rectangle: 'rectangle' } as const satisfies Record<Shape, Shape>,
      labels: { disc: 'round', rectangle: 'rectangle' },
      start: 'disc',
      means: 'the outline of the window, panel or softbox',
    },
    w: {
      ...side,
      name: 'width',
      tex: 'w',
      start: start('key-size'),
      means: 'how wide its front is; across, for a round one: w = 2r',
    },
    h: {
      ...side,
      name: 'height',
      tex: 'h',
      start: 0.9,
      optional: true,
      when: { shape: 'rectangle' },
      means: 'how high its front is',
    },
    d: {
      name: 'distance',
      tex: 'd',
      unit: 'm',
      range: [0.01, 1000],
      span: [0.2, 5],
      start: start('key-distance'),
      means: 'from its front to the child, not from the lamp inside',
    },
    L: {
      name: 'luminance',
      tex: 'L',
      unit: 'cd/m2',
      range: [0.001, 1e9],
      span: [10, 20000],
      start: 2000,
      optional: true,
      means: 'how bright its front is, the same all over',
    },
    reading: {
      name: 'reading',
      tex: 'E_0',
      unit: 'lx',
      range: [0.001, 1e9],
      span: [10, 20000],
      start: 1000,
      optional: true,
      means: 'or what a flat disc read, facing its front',
    },
    at: {
      name: 'reading distance',
      tex: 'd_0',
      unit: 'm',
      range: [0.01, 1000],
      span: [0.2, 5],
      start: 1,
      optional: true,
      means: 'how far from its front that was read',
    },
  },
  ways: [{ groups: [['luminance'], ['reading', 'reading-distance']], optional: true }],
  outputs: {
    E: {
      name: 'illuminance',
      tex: 'E',
      unit: 'lx',
      digits: { significant: 3 },
      means: 'what it puts on a flat disc facing it, on its axis',
    },
    error: {
      name: 'error',
      label: 'point law’s error',
      unit: 'stop',
      digits: { decimals: 2 },
      means: 'how much more the inverse square law would promise',
    },
    percent: {
      name: 'distance 1 percent',
      label: 'within 1 % from',
      unit: 'm',
      digits: { significant: 3 },
      means: 'beyond this the law is right within 1 %',
    },
    tenth: {
      name: 'distance tenth stop',
      label: 'within 0.1 stop from',
      unit: 'm',
      digits: { significant: 3 },
      means: 'beyond this it is right within a tenth of a stop',
    },
  },
  compute({ shape, w, h, d, L, reading, at }) {
    const source = { shape, w, h };
    const bright = luminanceOf(source, L, reading, at);
    return {
      E: (bright === undefined ? undefined : Math.PI * bright * reach(source, d)) as
        Illuminance | undefined,
      error: Math.log2(over(source, d)) as Stops,
      percent: distanceFor(source, 1.01),
      tenth: distanceFor(source, 2 ** 0.1),
    };
  },
  slips: {
    'diameter-for-radius': {
      compute: ({ shape, w, h }) =>
        shape === 'disc'
          ? { tenth: distanceFor({ shape, w: (2 * w) as Length, h }, 2 ** 0.1) }
          : {},
      say: 'That takes the diameter for the radius. The rule counts radii: 3.7 of them for a tenth of a stop, ten for 1 %.',
    },
  },
  worked: {
    tex: String.raw`E = \pi \times \val{L} \times \val{share} = \val{E}`,
    values: ({ shape, w, h, d, L, reading, at }, { E }) => ({
      L: {
        value: luminanceOf({ shape, w, h }, L, reading, at),
        unit: 'cd/m2',
        digits: { significant: 4 },
      },
      share: {
        value: reach({ shape, w, h }, d),
        unit: '1',
        digits: { significant: 3 },
      },
      E: { value: E, unit: 'lx', digits: { significant: 3 } },
    }),
  },
  symbols: [
    { tex: 'r', means: 'the radius of a round source, w/2; a rectangle has its own share instead' },
  ],
  model:
    'An even, perfectly diffuse front; the child on its axis, facing it. A rectangle’s share is exact too, and differs from a disc of the same area by a few parts in a hundred.',
  breaks:
    'Softboxes are brighter in the middle; deep rims and grids hide part of the front from one side; off the axis the light falls faster.',
  sources: ['cie-eilv-lambert', 'howell-configuration-factors'],
});
