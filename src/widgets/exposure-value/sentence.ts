import type { Sentence } from '../parts/calculator.ts';

/** The setting as one number, and the light it suits. */
export const sentence: Sentence = (given, _results, show) => [
  { text: `A setting of ${show.given('N')} at ${show.given('t')} is ` },
  { text: show.result('ev'), main: true },
  {
    text:
      given['S'] === undefined
        ? '.'
        : `; at ${show.given('S')} it suits light of ${show.result('ev100')} at ISO 100.`,
  },
];
