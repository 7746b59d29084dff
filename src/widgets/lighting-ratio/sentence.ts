import type { Sentence } from '../parts/calculator.ts';

/** The ratio in both conventions, and the reading with all lights on. */
export const sentence: Sentence = (_given, results, show) =>
  results['ratio'] === Infinity
    ? [
        { text: 'Without fill the shadow side gets nothing: the ratio is ' },
        { text: 'without end', main: true },
        { text: `. The reading is ${show.result('total')}.` },
      ]
    : [
        { text: 'The lit side gets ' },
        { text: `${show.result('ratio')} times`, main: true },
        {
          text: ` the light of the shadow side, ${show.result('stops')}: (key + fill) to fill is ${show.result('ratio')} to 1, key to fill ${show.result('plain')} to 1. With all lights on the meter reads ${show.result('total')}.`,
        },
      ];
