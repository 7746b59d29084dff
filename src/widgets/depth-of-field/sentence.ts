import type { Sentence } from '../parts/calculator.ts';

/** What is sharp, from where to where. */
export const sentence: Sentence = (_given, results, show) =>
  results['far'] === Infinity
    ? [
        { text: `At ${show.given('N')} everything from ` },
        { text: show.result('near'), main: true },
        { text: ` to infinity is sharp.` },
      ]
    : [
        {
          text: `At ${show.given('N')} everything from ${show.result('near')} to ${show.result('far')} is sharp: `,
        },
        { text: show.result('total'), main: true },
        {
          text: `, ${show.result('inFront')} of it in front of the eye and ${show.result('behind')} behind.`,
        },
      ];
