import { InputError } from '../../formula/errors.ts';
import type { Quantity, Ratio, Time } from '../../formula/quantities.ts';
import { defineFormula } from '../../formula/record.ts';

type Power = Quantity<'power'>;
type Current = Quantity<'current'>;

interface Draw {
  readonly load: readonly Power[] | undefined;
  readonly energy: Quantity<'energy'> | undefined;
  readonly cycle: Time | undefined;
  readonly efficiency: Ratio | undefined;
}

/** Each thing plugged in, in watts; what its plate says wins over what is reckoned from energy and time. */
const loads = ({ load, energy, cycle, efficiency }: Draw): readonly number[] => {
  if (load !== undefined) return load;
  if (energy === undefined || cycle === undefined || efficiency === undefined)
    throw new InputError(
      'The reckoning needs the watts on the plates, such as 300 W; 60 W, or a flash’s energy with its cycle time and efficiency.',
      'load',
    );
  return [energy / (cycle * efficiency)];
};

/** Circuits needed when each thing goes whole on one of them, largest first into the first that has room. */
const packed = (all: readonly number[], limit: number): number => {
  const left: number[] = [];
  for (const one of [...all].sort((a, b) => b - a)) {
    const at = left.findIndex((room) => room >= one * (1 - 1e-12));
    if (at < 0) left.push(limit - one);
    else left[at] = (left[at] ?? 0) - one;
  }
  return left.length;
};

export default defineFormula({
  id: 'mains-load',
  title: 'What the sockets carry',
  tex: String.raw`I = \frac{P}{U} \qquad P = \frac{E}{t\,\eta}`,
  spoken: 'I equals P over U; P equals E over t times eta',
  inputs: {
    load: {
      name: 'load',
      tex: 'P',
      unit: 'W',
      range: [0, 100000],
      start: 300,
      list: { min: 1, max: 24 },
      optional: true,
      means:
        'the watts on the plates of all that is plugged in, parted by semicolons: 300 W; 300 W; 60 W',
    },
    energy: {
      name: 'flash energy',
      tex: 'E',
      unit: 'J',
      range: [0.1, 100000],
      span: [10, 2400],
      start: 400,
      optional: true,
      empty: true,
      means: 'or what one flash takes from its capacitor; never an exposure',
    },
    cycle: {
      name: 'cycle time',
      tex: 't',
      unit: 's',
      range: [0.01, 1000],
      span: [0.2, 10],
      start: 1,
      optional: true,
      empty: true,
      means: 'how long it takes to charge again',
    },
    efficiency: {
      name: 'efficiency',
      tex: String.raw`\eta`,
      unit: '1',
      range: [0.05, 1],
      span: [0.3, 1],
      start: 0.7,
      optional: true,
      empty: true,
      means:
        'the share of mains energy that reaches the capacitor; 0.7 is common practice, no source',
    },
    U: {
      name: 'voltage',
      tex: 'U',
      unit: 'V',
      range: [1, 1000],
      span: [100, 250],
      start: 230,
      series: [100, 120, 230],
      means: 'of the socket',
    },
    rating: {
      name: 'rating',
      tex: 'I_r',
      unit: 'A',
      range: [0.1, 1000],
      span: [5, 32],
      start: 16,
      series: [10, 13, 15, 16, 20],
      means: 'what the circuit’s breaker is marked with',
    },
    share: {
      name: 'continuous share',
      tex: 's',
      unit: '1',
      range: [0.1, 1],
      span: [0.5, 1],
      start: 1,
      default: 1,
      means:
        'the part of the rating to be used for hours on end; 0.8 is a rule of some countries, off unless chosen',
    },
  },
  outputs: {
    current: {
      name: 'current',
      tex: 'I',
      unit: 'A',
      digits: { significant: 3 },
      means: 'what all of it draws together',
    },
    margin: {
      name: 'margin',
      unit: 'A',
      digits: { significant: 3 },
      means: 'what one circuit has left; negative is too much',
    },
    circuits: {
      name: 'circuits',
      unit: 'count',
      digits: { decimals: 0 },
      means:
        'how many such circuits it takes, each thing whole on one of them; a single sum is split, and no number carries a thing too strong for one',
    },
  },
  compute(given) {
    const { U, rating, share } = given;
    const all = loads(given);
    const current = all.reduce((sum, one) => sum + one, 0) / U;
    const usable = rating * share;
    const least = Math.ceil(current / usable - 1e-9);
    const whole = all.every((one) => one <= usable * U * (1 + 1e-12));
    return {
      current: current as Current,
      margin: (usable - current) as Current,
      circuits: (whole
        ? Math.max(packed(all, usable * U), Math.min(1, least))
        : all.length > 1
          ? Infinity
          : least) as Quantity<'count'>,
    };
  },
  slips: {
    'efficiency-forgotten': {
      compute: ({ energy, cycle, U }) => ({
        current: (energy === undefined || cycle === undefined ? undefined : energy / cycle / U) as
          Current | undefined,
      }),
      say: 'That leaves out what the charger wastes: divide by its efficiency.',
    },
  },
  worked: {
    tex: String.raw`I = \frac{\val{P}}{\val{U}} = \val{I}`,
    values: (given, { current }) => ({
      P: {
        value: loads(given).reduce((sum, one) => sum + one, 0),
        unit: 'W',
        digits: { significant: 3 },
      },
      U: { value: given.U, unit: 'V', digits: { significant: 3 } },
      I: { value: current, unit: 'A', digits: { significant: 3 } },
    }),
  },
  symbols: [],
  model:
    'Real power alone, all of it on at once. A flash draws while it charges; its plate, which counts the worst, wins over the reckoning.',
  breaks:
    'Inrush, power factor, long leads on a drum, shared neutrals and what else hangs on the same breaker are not in it. Your local code and a licensed electrician decide.',
  sources: ['nec-continuous-load'],
});
