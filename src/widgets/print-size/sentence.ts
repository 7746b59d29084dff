import type { Sentence } from '../parts/calculator.ts';

/** What the print gets, and how large it could be. */
export const sentence: Sentence = (_given, results, show) => {
  const largest =
    results['largestWidth'] === undefined
      ? ''
      : ` At ${show.given('wanted')} this file makes a print of ${show.result('largestWidth')} by ${show.result('largestHeight')} at most.`;
  return results['resolution'] === undefined
    ? [
        { text: 'Without a print’s size the resolution is ' },
        { text: 'not given', main: true },
        { text: `.${largest}` },
      ]
    : [
        { text: `A print of ${show.given('w')} by ${show.given('h')} has ` },
        { text: show.result('resolution'), main: true },
        { text: `; cropping and mat cost ${show.result('lost')}.${largest}` },
      ];
};
