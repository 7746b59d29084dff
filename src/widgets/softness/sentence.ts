import type { Sentence } from '../parts/calculator.ts';

/** The source as the face sees it, and the edge it draws. */
export const sentence: Sentence = (_given, results, show) => [
  { text: 'From the face the source is ' },
  { text: show.result('angle'), main: true },
  {
    text: ` wide${
      results['across'] === undefined
        ? ''
        : `: the shadow’s edge runs over ${show.result('across')}${
            results['share'] === undefined ? '' : `, ${show.result('share')} of the face`
          }`
    }.${
      results['same'] === undefined
        ? ''
        : ` The other source would be as soft from ${show.result('same')}.`
    }`,
  },
];
