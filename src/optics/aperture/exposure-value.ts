import type { Quantity } from '../../formula/quantities.ts';
import { defineFormula } from '../../formula/record.ts';
import { fNumber, iso, shutter } from './inputs.ts';
import { exactOf, exactTime } from './marks.ts';

type EV = Quantity<'ev'>;

/**
 * Exposure value of a setting.
 *
 * Model: APEX, EV 0 at f/1 and 1 s. Valid: N and t above 0.
 * @example exposureValue({ N: fNumber(16), t: seconds(1/125) }) // 14.97
 */
export const exposureValue = ({ N, t }: { readonly N: number; readonly t: number }): EV =>
  Math.log2((N * N) / t) as EV;

export default defineFormula({
  id: 'exposure-value',
  title: 'Exposure value',
  tex: String.raw`\mathrm{EV} = \log_2\,\frac{N^2}{t}\,,\qquad \mathrm{EV}_{100} = \mathrm{EV} - \log_2\,\frac{S}{100}`,
  spoken:
    'E V equals the logarithm to base two of N squared over t; E V one hundred equals E V minus the logarithm to base two of S over one hundred',
  inputs: { N: fNumber, t: shutter, S: { ...iso, optional: true } },
  outputs: {
    ev: {
      name: 'EV',
      tex: String.raw`\mathrm{EV}`,
      unit: 'EV',
      digits: { decimals: 1 },
      means: 'the setting on one scale of stops, as typed',
    },
    ev100: {
      name: 'EV 100',
      tex: String.raw`\mathrm{EV}_{100}`,
      unit: 'EV',
      digits: { decimals: 1 },
      means: 'the light it is right for, as an EV at ISO 100',
    },
    marked: {
      name: 'EV marked',
      unit: 'EV',
      digits: { decimals: 1 },
      means: 'the same setting with each mark taken at its exact value',
    },
  },
  compute: ({ N, t, S }) => {
    const ev = exposureValue({ N, t });
    return {
      ev,
      ev100: S === undefined ? undefined : ((ev - Math.log2(S / 100)) as EV),
      marked: exposureValue({ N: exactOf(N), t: exactTime(t) }),
    };
  },
  slips: {
    'no-square': {
      compute: ({ N, t }) => ({ ev: Math.log2(N / t) as EV }),
      say: 'The f-number counts twice: light goes with its square.',
    },
    'iso-wrong-way': {
      compute: ({ N, t, S }) =>
        S === undefined ? {} : { ev100: (exposureValue({ N, t }) + Math.log2(S / 100)) as EV },
      say: 'The other way: a higher ISO suits less light, so the EV at ISO 100 is lower.',
    },
  },
  worked: {
    tex: String.raw`\mathrm{EV} = \log_2\,\frac{\val{N}^2}{\val{t}} = \val{ev}`,
    values: ({ N, t }, { ev }) => ({
      N: { value: N, unit: '1', digits: { significant: 3 } },
      t: { value: t, unit: 's', digits: { fraction: true } },
      ev: { value: ev, unit: '1', digits: { decimals: 2 } },
    }),
  },
  model:
    'APEX: EV 0 is f/1 and 1 s; one more halves the light let in. Settings mean what is typed.',
  breaks:
    'It says what the camera is set to, not what the scene gives; glass, close focus and rounded marks take fractions of a stop.',
  sources: ['exposure-value-wikipedia'],
});
