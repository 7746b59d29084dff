import type { Sentence } from '../parts/calculator.ts';

/** What the card gives, and the ratio it leaves. */
export const sentence: Sentence = (_given, results, show) => [
  { text: 'The card is ' },
  { text: show.size('under'), main: true },
  {
    text: ` ${Number(results['under']) < 0 ? 'over' : 'under'} the key on the shadow side: ${show.result('ratio')} to 1, were it the only fill. Weight it; children pull cards over.`,
  },
];
