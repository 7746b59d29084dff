import type { Sentence } from '../parts/calculator.ts';

/** The file to make, and what stays in front. */
export const sentence: Sentence = (given, results, show) => [
  { text: 'The file is to be ' },
  { text: `${show.result('fileWidth')} by ${show.result('fileHeight')}`, main: true },
  {
    text: `${
      results['pixelWidth'] === undefined
        ? ''
        : ` (${show.result('pixelWidth')} by ${show.result('pixelHeight')})`
    }. Face and hands belong inside ${show.result('safeWidth')} by ${show.result('safeHeight')} of the front.${
      given['edge'] === 'wrapped'
        ? ' What lies beyond the front goes round the edge, out of sight from the front.'
        : ''
    }`,
  },
];
