import type { Sentence } from '../parts/calculator.ts';

/** What the print gets, and how large it could be. */
export const sentence: Sentence = (given, results, show) => {
  const largest =
    results['largestWidth'] === undefined
      ? ''
      : ` At ${show.given('wanted')} this file makes a print of ${show.result('largestWidth')} by ${show.result('largestHeight')} at most.`;
  const percent = (100 * Number(results['lost'])) / (Number(given['W']) * Number(given['H']));
  const share = percent < 1 ? 'under 1\u00a0%' : `${String(Math.round(percent))}\u00a0%`;
  return results['resolution'] === undefined
    ? [
        { text: 'Without a print’s size the resolution is ' },
        { text: 'not given', main: true },
        { text: `.${largest}` },
      ]
    : [
        { text: `A print of ${show.given('w')} by ${show.given('h')} has ` },
        { text: show.result('resolution'), main: true },
        {
          text: `; ${results['lost'] === 0 ? 'nothing is cropped or hidden' : `crop and hidden edge take ${show.result('lost')}, ${share} of the file`}.${largest}`,
        },
      ];
};
