import type { FNumber, Length, Ratio, Stops } from '../../formula/quantities.ts';
import { defineFormula, type QuantityInput } from '../../formula/record.ts';
import { iso } from '../aperture/inputs.ts';
import { start } from '../harbour.ts';
import { plain } from '../lens/worked.ts';

/** Nearest that an undiffused flash should come to a small child, as makers of flashes print it. */
const LEAST_DISTANCE = 1;

const power = {
  unit: '1',
  fraction: true,
  range: [1 / 8192, 1],
  span: [1 / 256, 1],
} as const satisfies Partial<QuantityInput>;

/** The marks of a power dial from full down to the lowest, as parts of full power. */
const dial = (perStop: number, lowest: number): number[] =>
  Array.from(
    { length: Math.floor(-Math.log2(lowest) * perStop + 1e-9) + 1 },
    (_, i) => 2 ** (-i / perStop),
  );

const nearest = (marks: readonly number[], wanted: number): number =>
  marks.reduce((best, mark) =>
    Math.abs(Math.log2(mark / wanted)) < Math.abs(Math.log2(best / wanted)) ? mark : best,
  );

interface Light {
  readonly G: Length | undefined;
  readonly S0: number;
  readonly Nm: FNumber | undefined;
  readonly dm: Length | undefined;
  readonly Sm: number;
  readonly Pm: number;
  readonly d: Length;
  readonly S: number;
  readonly loss: number;
  readonly m: number;
}

/** The f-number at full power: from the guide number, or from a reading taken of this very light. */
const atFull = ({ G, S0, Nm, dm, Sm, Pm, d, S, loss, m }: Light): number =>
  (((G ?? (Nm ?? 0) * (dm ?? 0)) / d) *
    Math.sqrt(G === undefined ? S / Sm / Pm : S / S0) *
    2 ** (-loss / 2)) /
  (1 + m);

export default defineFormula({
  id: 'flash-exposure',
  title: 'Flash power and distance',
  tex: String.raw`N = \frac{G}{d\,(1 + m)}\,\sqrt{\frac{S}{S_G}\,P\,2^{-l}}`,
  spoken:
    'N equals G over d times one plus m, times the square root of S over S G, times P, times two to the minus l',
  inputs: {
    G: {
      name: 'guide number',
      tex: 'G',
      unit: 'm',
      range: [0.1, 1000],
      span: [10, 100],
      start: start('guide-number'),
      optional: true,
      means:
        'f-number times distance at full power, for the ISO beside it; makers print it in metres or in feet',
    },
    Nm: {
      name: 'metered f-number',
      tex: 'N_m',
      unit: 'f/',
      range: [0.5, 256],
      span: [1.4, 32],
      start: 8,
      optional: true,
      means: 'or what a flash meter read of this light, flat disc towards it',
    },
    dm: {
      name: 'metered distance',
      tex: 'd_m',
      unit: 'm',
      range: [0.01, 1000],
      span: [0.3, 5],
      start: 1.2,
      optional: true,
      means: 'how far from the light that was read',
    },
    d: {
      name: 'distance',
      tex: 'd',
      unit: 'm',
      range: [0.01, 1000],
      span: [0.3, 6],
      start: start('key-distance'),
      means: 'from the light to the child’s face',
    },
    S: iso,
    P: {
      ...power,
      name: 'power',
      tex: 'P',
      start: 1 / 16,
      default: 1,
      means: 'the part of full power that is set on the flash',
    },
    loss: {
      name: 'loss',
      tex: 'l',
      unit: 'stop',
      range: [0, 20],
      span: [0, 6],
      start: 2,
      default: 0,
      means: 'what modifier, gel, grid and a grey filter on the lens take together',
    },
    wanted: {
      name: 'wanted f-number',
      tex: 'N_w',
      unit: 'f/',
      range: [0.5, 256],
      span: [1.4, 22],
      start: start('f-number'),
      optional: true,
      means: 'the f-number you want to work at',
    },
    lowest: {
      ...power,
      name: 'lowest power',
      tex: 'P_0',
      span: [1 / 1024, 1],
      start: 1 / 128,
      optional: true,
      means: 'the least the unit can be set to',
    },
    step: {
      name: 'step',
      choices: { '1/3': 3, '1/10': 10 },
      labels: { '1/3': 'thirds of a stop', '1/10': 'tenths of a stop' },
      start: '1/3',
      optional: true,
      means: 'what the power dial is marked in',
    },
    diffused: {
      name: 'diffused',
      choices: { yes: true, no: false },
      start: 'yes',
      optional: true,
      means: 'whether cloth or a white surface stands between the tube and the child',
    },
    m: {
      name: 'magnification',
      tex: 'm',
      unit: '1',
      range: [0, 10],
      span: [0, 0.5],
      start: 0,
      default: 0,
      means: 'the image’s size over the child’s: near subjects lose light in the camera',
    },
    S0: {
      name: 'GN ISO',
      label: 'guide number’s ISO',
      tex: 'S_G',
      unit: 'ISO',
      range: [1, 1e7],
      start: 100,
      default: 100,
      means: 'the ISO the guide number is printed for',
    },
    Sm: {
      name: 'metered ISO',
      tex: 'S_m',
      unit: 'ISO',
      range: [1, 1e7],
      start: 100,
      default: 100,
      means: 'the ISO the meter was set to',
    },
    Pm: {
      ...power,
      name: 'metered power',
      tex: 'P_m',
      start: 1,
      default: 1,
      means: 'the power at which it was read',
    },
  },
  ways: [{ groups: [['guide-number'], ['metered-f-number', 'metered-distance']] }],
  outputs: {
    N: {
      name: 'f-number',
      tex: 'N',
      unit: 'f/',
      digits: { significant: 3 },
      means: 'what this flash, at this power, asks for on the lens',
    },
    needed: {
      name: 'power needed',
      tex: 'P_w',
      unit: '1',
      digits: { fraction: true },
      means: 'the part of full power that gives the wanted f-number',
    },
    marked: {
      name: 'marked',
      label: 'nearest mark',
      unit: '1',
      digits: { fraction: true },
      means: 'the nearest mark of the power dial',
    },
    remainder: {
      name: 'remainder',
      unit: 'stop',
      digits: { decimals: 2 },
      means: 'what is still wanted beyond that mark; negative where the mark is too strong',
    },
    inRange: {
      name: 'in range',
      label: 'within its range',
      kind: 'yes-no',
      labels: {
        yes: 'yes',
        no: 'no',
      },
      means: 'whether the unit can be set to the power that is needed',
    },
    close: {
      name: 'too close',
      label: 'bare and too close',
      kind: 'yes-no',
      labels: { yes: 'yes: diffuse it or move it back', no: 'no' },
      means: 'whether a bare flash is nearer than 1 m to the child (makers’ caution for infants)',
    },
  },
  compute(given) {
    const { P, d, wanted, lowest, step, diffused } = given;
    const full = atFull(given);
    const needed = wanted === undefined ? undefined : (wanted / full) ** 2;
    const marked =
      needed === undefined || step === undefined
        ? undefined
        : nearest(dial(step, Math.min(lowest ?? needed / 2, 1)), needed);
    return {
      N: (full * Math.sqrt(P)) as FNumber,
      needed: needed as Ratio | undefined,
      marked: marked as Ratio | undefined,
      remainder:
        needed === undefined || marked === undefined
          ? undefined
          : (Math.log2(needed / marked) as Stops),
      inRange:
        needed === undefined || lowest === undefined
          ? undefined
          : needed <= 1 + 1e-9 && needed >= lowest * (1 - 1e-9),
      close: diffused === undefined ? undefined : !diffused && d < LEAST_DISTANCE,
    };
  },
  slips: {
    'power-as-f-number': {
      compute: (given) => ({ N: (atFull(given) * given.P) as FNumber }),
      say: 'That lets the f-number follow the power. It follows its square root: a quarter of the power halves the f-number.',
    },
  },
  worked: {
    tex: String.raw`N = \frac{\val{reach}}{\val{d}}\,\sqrt{\val{P}} = \val{N}`,
    values: (given, { N }) => ({
      reach: {
        value: atFull({ ...given, d: 1 as Length }),
        unit: 'm',
        digits: { significant: 3 },
      },
      d: plain(given.d, 'm'),
      P: { value: given.P, unit: '1', digits: { fraction: true } },
      N: { value: N, unit: 'f/', digits: { significant: 3 } },
    }),
  },
  model:
    'The inverse square law in a guide number: one head, no light from the room, the flash meter’s flat disc towards the light. A modifier’s loss is taken off in stops. Joules on a label are never turned into exposure.',
  breaks:
    'Guide numbers are printed for one reflector, zoom setting and room; another modifier shifts them by a stop or more. One reading of your own light is worth more than any label.',
  sources: ['guide-number-iso-1230'],
});
