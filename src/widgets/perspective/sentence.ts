import type { Sentence } from '../parts/calculator.ts';

/** How much larger the near feature is drawn, here and from the other distance. */
export const sentence: Sentence = (given, results, show) => {
  const compare =
    given['compare'] === undefined
      ? ''
      : ` From ${show.given('compare')} it is ${show.result('compareRatio')} times; ${
          results['difference'] === 0
            ? 'the two views are the same'
            : `the first view is ${show.result('difference').replace(/^\u2212/, '')} ${(results['difference'] as number) < 0 ? 'flatter' : 'stronger'}`
        }.`;
  return [
    { text: `From ${show.given('s')} the nose is drawn ` },
    { text: show.result('ratio'), main: true },
    {
      text: ` times as large as an equal thing ${show.given('depth')} behind it.${compare} No lens changes this; only the distance does.`,
    },
  ];
};
