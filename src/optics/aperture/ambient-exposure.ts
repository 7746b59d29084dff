import type { Quantity, Ratio, Stops, Time } from '../../formula/quantities.ts';
import { defineFormula } from '../../formula/record.ts';
import { fNumber, iso, shutter } from './inputs.ts';
import { marked, marks, exactTime, type Marks } from './marks.ts';

type Illuminance = Quantity<'illuminance'>;

interface Settings {
  readonly E: Illuminance | undefined;
  readonly metered: number | undefined;
  readonly N: Quantity<'f-number'>;
  readonly t: Time;
  readonly S: number;
  readonly C: number;
  readonly m: number;
  readonly T: number;
  readonly marks: Marks;
}

const timeOf = (t: Time, mode: Marks): Time => (mode === 'exact' ? exactTime(t) : t);

/** Stops by which the ambient light over-exposes the setting; negative when it under-exposes. */
const overExposure = ({ E, metered, N, t, S, C, m, T, marks: mode }: Settings): number => {
  const [stop, time] = [marked(N, mode), timeOf(t, mode)];
  const light = E === undefined ? 2 ** (metered ?? 0) * (S / 100) : (E * S) / C;
  return Math.log2((light * time * T) / (stop * (1 + m)) ** 2);
};

export default defineFormula({
  id: 'ambient-exposure',
  title: 'The light you do not want',
  tex: String.raw`n = \log_2\,\frac{E\,S\,t\,T}{C\,N^2 (1 + m)^2}`,
  spoken:
    'n equals the logarithm to base two of E S t T, over C N squared times one plus m, squared',
  inputs: {
    E: {
      name: 'illuminance',
      tex: 'E',
      unit: 'lx',
      range: [0.001, 1e6],
      span: [10, 5000],
      start: 500,
      optional: true,
      means: 'what the room, the window and the modelling lamps put on the child, without flash',
    },
    metered: {
      name: 'metered EV',
      tex: String.raw`\mathrm{EV}_{100}`,
      unit: 'EV',
      range: [-20, 30],
      span: [2, 14],
      start: 7,
      optional: true,
      means: 'or what a meter set to ISO 100 reads of it',
    },
    N: fNumber,
    t: shutter,
    S: iso,
    C: {
      name: 'calibration',
      tex: 'C',
      unit: '1',
      range: [100, 600],
      start: 250,
      default: 250,
      means: 'the incident meter’s calibration constant: 250 for a flat disc, in lx·s',
    },
    sync: {
      name: 'sync speed',
      tex: 't_s',
      unit: 's',
      range: [1e-4, 1],
      span: [0.002, 0.02],
      start: 1 / 200,
      optional: true,
      means: 'the shortest shutter at which the whole frame is open for the flash',
    },
    m: {
      name: 'magnification',
      tex: 'm',
      unit: '1',
      range: [0, 10],
      span: [0, 0.5],
      start: 0,
      default: 0,
      means: 'the magnification: near subjects lose light',
    },
    T: {
      name: 'transmission',
      tex: 'T',
      unit: '1',
      range: [0.01, 1],
      span: [0.5, 1],
      start: 1,
      default: 1,
      means: 'what share of the light the glass lets through',
    },
    margin: {
      name: 'margin',
      tex: 'g',
      unit: 'stop',
      range: [0, 20],
      span: [0, 8],
      start: 4,
      default: 0,
      means: 'how many stops under the flash the ambient is to stay',
    },
    marks,
  },
  ways: [{ groups: [['illuminance'], ['metered-ev']] }],
  outputs: {
    over: {
      name: 'over',
      tex: 'n',
      unit: 'stop',
      digits: { decimals: 2 },
      means: 'the ambient light’s exposure against a correct one; negative is under',
    },
    correct: {
      name: 'correct shutter',
      unit: 's',
      digits: { fraction: true },
      means: 'the shutter at which the ambient alone would be right',
    },
    share: {
      name: 'ambient share',
      unit: '%',
      digits: { significant: 2 },
      means: 'the ambient’s share of the whole, where the flash alone is right',
    },
    rise: {
      name: 'rise',
      unit: 'stop',
      digits: { decimals: 2 },
      means: 'how much the ambient lifts the exposure over the flash alone',
    },
    below: { name: 'below margin', kind: 'yes-no', means: 'whether it stays under the margin' },
    within: {
      name: 'within sync',
      kind: 'yes-no',
      means: 'whether the shutter is slow enough for the flash to light the whole frame',
    },
  },
  compute(given) {
    const over = overExposure(given);
    const light = 2 ** over;
    const { t, sync, margin } = given;
    return {
      over: over as Stops,
      correct: (t / light) as Time,
      share: (light / (1 + light)) as Ratio,
      rise: Math.log2(1 + light) as Stops,
      below: over + margin <= 1e-12,
      within: sync === undefined ? undefined : t >= sync * (1 - 1e-12),
    };
  },
  slips: {
    'stops-as-share': {
      compute: (given) => ({ share: (2 ** overExposure(given)) as Ratio }),
      say: 'That is the ambient against the flash. Its share of the whole divides by both together.',
    },
  },
  worked: {
    tex: String.raw`n = \log_2\,\frac{\val{light} \times \val{t}}{\val{N}^2} = \val{over}`,
    values: (given, { over }) => ({
      light: {
        value:
          2 **
          overExposure({ ...given, N: 1 as Quantity<'f-number'>, t: 1 as Time, marks: 'typed' }),
        unit: '1',
        digits: { significant: 3 },
      },
      t: { value: timeOf(given.t, given.marks), unit: 's', digits: { fraction: true } },
      N: { value: marked(given.N, given.marks), unit: '1', digits: { significant: 3 } },
      over: { value: over, unit: 'stop', digits: { decimals: 2 } },
    }),
  },
  symbols: [],
  model:
    'Incident light on a flat disc, constant C; the flash alone is taken to be exactly right; close focus costs (1 + m)² (symmetric lens).',
  breaks:
    'Lamps that flicker with the mains, a window that a cloud crosses, and a meter held at another angle each move this by fractions of a stop. Flash durations and mixed colours are not in it.',
  sources: ['exposure-value-wikipedia', 'light-meter-wikipedia'],
});
