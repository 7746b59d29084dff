import type { Length, Ratio, Stops } from '../../formula/quantities.ts';
import { defineFormula } from '../../formula/record.ts';
import { focalLength } from '../lens/inputs.ts';
import { fNumber } from './inputs.ts';
import { nearestMark } from './marks.ts';

const mark = { unit: 'f/', digits: { significant: 2 } } as const;

export default defineFormula({
  id: 'f-stop',
  title: 'F-numbers and stops',
  tex: String.raw`n = 2\,\log_2\,\frac{N_2}{N_1}\,,\qquad D = \frac{f}{N}`,
  spoken: 'n equals two times the logarithm to base two of N two over N one; D equals f over N',
  inputs: {
    from: { ...fNumber, name: 'from', tex: 'N_1', means: 'the f-number you start at' },
    to: { ...fNumber, name: 'to', tex: 'N_2', start: 5.6, means: 'the f-number you go to' },
    f: { ...focalLength, optional: true },
  },
  outputs: {
    stops: {
      name: 'stops',
      tex: 'n',
      unit: 'stop',
      digits: { decimals: 2 },
      means: 'how many halvings of the light lie between; negative when opening up',
    },
    lightRatio: {
      name: 'light ratio',
      unit: '1',
      digits: 3,
      means: 'how many times less light the second lets in',
    },
    fromPupil: {
      name: 'from pupil',
      tex: 'D_1',
      unit: 'mm',
      digits: 3,
      means: 'the entrance pupil’s diameter at the first',
    },
    toPupil: {
      name: 'to pupil',
      tex: 'D_2',
      unit: 'mm',
      digits: 3,
      means: 'the same at the second',
    },
    nearestFull: {
      ...mark,
      name: 'nearest full',
      means: 'the nearest full-stop mark to the second',
    },
    nearestHalf: { ...mark, name: 'nearest half', means: 'the nearest half-stop mark' },
    nearestThird: { ...mark, name: 'nearest third', means: 'the nearest third-stop mark' },
    exact: {
      name: 'exact',
      unit: 'f/',
      digits: { significant: 4 },
      means: 'the exact value behind the nearest third-stop mark',
    },
  },
  compute: ({ from, to, f }) => ({
    stops: (2 * Math.log2(to / from)) as Stops,
    lightRatio: ((to / from) ** 2) as Ratio,
    fromPupil: f === undefined ? undefined : ((f / from) as Length),
    toPupil: f === undefined ? undefined : ((f / to) as Length),
    nearestFull: nearestMark(to, 'full').mark,
    nearestHalf: nearestMark(to, 'half').mark,
    nearestThird: nearestMark(to, 'third').mark,
    exact: nearestMark(to, 'third').exact,
  }),
  slips: {
    'no-square': {
      compute: ({ from, to }) => ({ stops: Math.log2(to / from) as Stops }),
      say: 'Light goes with the pupil’s area, the square of its diameter: twice the logarithm.',
    },
    'wrong-way': {
      compute: ({ from, to }) => ({ stops: (2 * Math.log2(from / to)) as Stops }),
      say: 'The other way round: a larger f-number lets in less light.',
    },
  },
  worked: {
    tex: String.raw`n = 2\,\log_2\,\frac{\val{to}}{\val{from}} = \val{stops}`,
    values: ({ from, to }, { stops }) => ({
      from: { value: from, unit: '1', digits: { significant: 3 } },
      to: { value: to, unit: '1', digits: { significant: 3 } },
      stops: { value: stops, unit: 'stop', digits: { decimals: 2 } },
    }),
  },
  model: 'A round entrance pupil of diameter f/N; a typed f-number means itself.',
  breaks:
    'Glass swallows some light: a lens’s T-stop lies a fraction of a stop above its f-number. Marks are rounded by convention: f/5.6 stands for 5.657.',
  sources: ['f-number-wikipedia'],
});
