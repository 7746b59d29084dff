import type { Sentence } from '../parts/calculator.ts';

/** What the eye can use from there, and whether the file has it. */
export const sentence: Sentence = (_given, results, show) => [
  { text: `From ${show.given('D')} the eye can use ` },
  { text: show.result('resolution'), main: true },
  {
    text: `${
      results['leastWidth'] === undefined || results['leastHeight'] === undefined
        ? ''
        : `, for this print ${show.result('leastWidth')} by ${show.result('leastHeight')}`
    }.${
      results['suffices'] === undefined
        ? ''
        : results['suffices'] === true
          ? ' The file has enough.'
          : ' The file has fewer: hang it farther off, or make it smaller.'
    }`,
  },
];
