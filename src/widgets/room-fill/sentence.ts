import type { Sentence } from '../parts/calculator.ts';

/** The fill that nobody set up. */
export const sentence: Sentence = (_given, results, show) => [
  { text: 'By estimate the room’s own light is ' },
  { text: show.size('under'), main: true },
  {
    text: ` ${Number(results['under']) < 0 ? 'over' : 'under'} the key: no ratio above ${show.result('ratio')} to 1 without black cloth.`,
  },
];
