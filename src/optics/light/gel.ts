import { InputError } from '../../formula/errors.ts';
import type { Quantity, Ratio, Stops } from '../../formula/quantities.ts';
import { defineFormula } from '../../formula/record.ts';
import { planckian } from '../colour/planck.ts';

type Temperature = Quantity<'temperature'>;
type Mired = Quantity<'reciprocal-temperature'>;

interface Filtered {
  readonly source: Temperature;
  readonly by: Mired | undefined;
  readonly target: Temperature | undefined;
}

/** The shift, in reciprocal kelvin, that a gel makes or that a target asks for. */
const shiftOf = ({ source, by, target }: Filtered): number =>
  by ?? (target === undefined ? 0 : 1 / target - 1 / source);

/** Throws: InputError where a blue gel would go beyond the bluest light there is. */
const temperatureOf = (given: Filtered): number => {
  const reciprocal = 1 / given.source + shiftOf(given);
  if (!(reciprocal > 1e-9))
    throw new InputError(
      `So blue a gel has no colour temperature on this source: its shift must be more than ${(-1e6 / given.source).toFixed(0)} mired. Try −30 mired.`,
      'gel-shift',
    );
  return 1 / reciprocal;
};

export default defineFormula({
  id: 'gel',
  title: 'Gels in mired',
  tex: String.raw`\frac{1}{T'} = \frac{1}{T} + \Delta \qquad l = -\log_2\,\tau`,
  spoken:
    'one over T prime equals one over T plus delta; l equals minus the logarithm to base two of tau',
  inputs: {
    source: {
      name: 'source',
      tex: 'T',
      unit: 'K',
      range: [1000, 100000],
      span: [2000, 12000],
      start: 5500,
      default: 5500,
      means: 'the colour temperature of the bare light; a flash is taken as 5500 K',
    },
    by: {
      name: 'gel shift',
      tex: String.raw`\Delta`,
      unit: 'mired',
      range: [-1000, 1000],
      span: [-150, 200],
      start: 109,
      optional: true,
      means: 'what the gel adds: positive is warmer (orange), negative cooler (blue)',
    },
    target: {
      name: 'target',
      tex: "T'",
      unit: 'K',
      range: [1000, 100000],
      span: [2000, 12000],
      start: 3200,
      optional: true,
      means: 'or the colour temperature you want',
    },
    tau: {
      name: 'transmission',
      tex: String.raw`\tau`,
      unit: '1',
      range: [0.0001, 1],
      span: [0.02, 1],
      start: 0.71,
      default: 1,
      means:
        'the share of this source’s light the gel lets through; it differs from source to source',
    },
    power: {
      name: 'power',
      tex: 'P',
      unit: '1',
      range: [1 / 8192, 1],
      span: [1 / 256, 1],
      start: 1 / 8,
      fraction: true,
      default: 1,
      means: 'the part of full power set before the gel went on',
    },
  },
  ways: [{ groups: [['gel-shift'], ['target']] }],
  outputs: {
    temperature: {
      name: 'temperature',
      unit: 'K',
      digits: { significant: 3 },
      means: 'the colour temperature behind the gel',
    },
    shift: {
      name: 'shift',
      unit: 'mired',
      digits: { significant: 3 },
      means: 'the shift in mired, as made or as wanted',
    },
    loss: {
      name: 'loss',
      tex: 'l',
      unit: 'stop',
      digits: { decimals: 2 },
      means: 'the light the gel takes',
    },
    needed: {
      name: 'power needed',
      unit: '1',
      digits: { fraction: true },
      means: 'the power that makes up for it; over 1 it is more than the flash has',
    },
    x: {
      name: 'x',
      label: 'chromaticity',
      tex: 'x',
      unit: '1',
      digits: { decimals: 3 },
      means: 'the colour’s place in the CIE 1931 diagram, on the line of glowing bodies',
    },
    y: {
      name: 'y',
      label: 'chromaticity',
      tex: 'y',
      unit: '1',
      digits: { decimals: 3 },
      means: 'the same, upwards',
    },
  },
  compute(given) {
    const temperature = temperatureOf(given);
    const { x, y } = planckian(temperature);
    return {
      temperature: temperature as Temperature,
      shift: shiftOf(given) as Mired,
      loss: Math.log2(1 / given.tau) as Stops,
      needed: (given.power / given.tau) as Ratio,
      x: x as Ratio,
      y: y as Ratio,
    };
  },
  slips: {
    'kelvin-added': {
      compute: ({ source, by }) => ({
        temperature: (source - (by ?? (0 as Mired)) * 1e6) as Temperature,
      }),
      say: 'That takes the shift off in kelvin. Mired are millionths of one over the temperature: add there, then turn back.',
    },
  },
  worked: {
    tex: String.raw`\frac{10^6}{T'} = \val{from} + \val{shift} = \val{to}`,
    values: (given, { shift, temperature }) => ({
      from: { value: 1 / given.source, unit: 'mired', digits: { decimals: 0 } },
      shift: { value: shift, unit: 'mired', digits: { decimals: 0 } },
      to: {
        value: temperature === undefined ? undefined : 1 / temperature,
        unit: 'mired',
        digits: { decimals: 0 },
      },
    }),
  },
  model:
    'A source and a gel that keep to the line of glowing bodies. Shifts in mired add up, and are nearly the same on every source.',
  breaks:
    'The printed shift is arithmetic on two round temperatures; one measured from the gel’s curve is often a third less. Saturated colours have no colour temperature at all. Transmission depends on the source.',
  sources: ['mired-wikipedia', 'cie-11664-1'],
});
