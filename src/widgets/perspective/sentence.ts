import type { Sentence } from '../parts/calculator.ts';

/** How much larger the near feature is drawn, here and from the other distance. */
export const sentence: Sentence = (given, results, show) => [
  { text: `From ${show.given('s')} the nose is drawn ` },
  { text: show.result('ratio'), main: true },
  {
    text: [
      ` times as large as an equal thing ${show.given('depth')} behind it`,
      given['compare'] !== undefined &&
        `; from ${show.given('compare')}, ${show.result('compareRatio')} times`,
      results['ratio'] === 1
        ? ': without depth nothing changes.'
        : '. Only the distance does this; no lens can.',
    ]
      .filter(Boolean)
      .join(''),
  },
];
