import type { Length, Ratio, Stops } from '../../formula/quantities.ts';
import { defineFormula, type QuantityInput } from '../../formula/record.ts';
import { start } from '../harbour.ts';
import { plain } from '../lens/worked.ts';

const side = {
  unit: 'm',
  range: [0.5, 100],
  span: [1.5, 12],
} as const satisfies Partial<QuantityInput>;

interface Room {
  readonly d: Length;
  readonly l: Length;
  readonly w: Length;
  readonly h: Length;
  readonly rho: Ratio;
}

const surface = ({ l, w, h }: Room): number => 2 * (l * w + l * h + w * h);

/** The room's light at the face over the key's. */
const share = (room: Room): number =>
  (Math.PI * room.d ** 2 * room.rho) / (surface(room) * (1 - room.rho));

export default defineFormula({
  id: 'room-fill',
  title: 'What the room sends back',
  tex: String.raw`\frac{F}{K} = \frac{\pi\,d^2\,\rho}{A\,(1 - \rho)}`,
  spoken: 'F over K equals pi d squared rho, over A times one minus rho',
  inputs: {
    d: {
      name: 'key distance',
      tex: 'd',
      unit: 'm',
      range: [0.05, 100],
      span: [0.3, 5],
      start: start('key-distance'),
      means: 'from the key to the child’s face',
    },
    l: {
      ...side,
      name: 'room length',
      tex: 'l',
      start: start('room-length'),
      means: 'wall to wall along the line of sight',
    },
    w: {
      ...side,
      name: 'room width',
      tex: 'w',
      span: [1.5, 10],
      start: start('room-width'),
      means: 'wall to wall across it',
    },
    h: {
      ...side,
      name: 'ceiling',
      tex: 'h',
      span: [2, 6],
      start: start('ceiling'),
      means: 'floor to ceiling',
    },
    rho: {
      name: 'reflectance',
      tex: String.raw`\rho`,
      unit: '1',
      range: [0.01, 0.99],
      span: [0.05, 0.9],
      start: 0.7,
      means:
        'the mean share of light that walls, floor, ceiling and what stands there send back: white room 0.7, cluttered 0.5, dark 0.3 (common practice, no source)',
    },
  },
  outputs: {
    under: {
      name: 'under key',
      label: 'under the key',
      unit: 'stop',
      digits: { decimals: 1 },
      means: 'how many stops the room’s light is under the key; an estimate',
    },
    ratio: {
      name: 'ratio',
      tex: 'R',
      unit: '1',
      digits: { significant: 2 },
      means: 'the highest (key + fill) to fill that the room allows; an estimate',
    },
  },
  compute(room) {
    return {
      under: -Math.log2(share(room)) as Stops,
      ratio: (1 + 1 / share(room)) as Ratio,
    };
  },
  slips: {
    'one-bounce': {
      compute: (room) => ({
        under: -Math.log2((Math.PI * room.d ** 2 * room.rho) / surface(room)) as Stops,
      }),
      say: 'That counts the first bounce alone. Light goes round again and again: divide by 1 − ρ.',
    },
  },
  worked: {
    tex: String.raw`\frac{F}{K} = \frac{\pi \times (\val{d})^2 \times \val{rho}}{\val{A} \times \val{rest}} = \val{share}`,
    values: (room) => ({
      d: plain(room.d, 'm'),
      rho: { value: room.rho, unit: '1', digits: { significant: 2 } },
      A: { value: surface(room), unit: 'm2', digits: { significant: 3 } },
      rest: { value: 1 - room.rho, unit: '1', digits: { significant: 2 } },
      share: { value: share(room), unit: '1', digits: { significant: 2 } },
    }),
  },
  symbols: [
    { tex: 'A', means: 'all six faces of the room together' },
    { tex: 'F/K', means: 'the room’s light at the face over the key’s' },
  ],
  model:
    'An estimate. The key is a flat diffuse source, which sends out π d² times its light at the face; the room evens it out as a sphere would.',
  breaks:
    'A near white wall on the shadow side gives more, an open door or a black cloth there far less; a gridded key sends out less light in all. Expect it within a stop, and meter.',
  sources: ['integrating-sphere'],
});
