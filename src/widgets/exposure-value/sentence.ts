import type { Sentence } from '../parts/calculator.ts';

/** The setting as one number, and the light it suits. */
export const sentence: Sentence = (given, _results, show) => [
  { text: `A setting of ${show.given('N')} at ${show.given('t')} is ` },
  { text: show.result('ev'), main: true },
  {
    text:
      given['S'] === undefined
        ? '.'
        : given['S'] === 100
          ? '. At ISO 100 that is also the light it suits.'
          : `. At ${show.given('S')} it suits light of ${show.result('ev100')}, as a meter set to ISO 100 reads it.`,
  },
];
