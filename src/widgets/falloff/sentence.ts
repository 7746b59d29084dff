import type { Sentence } from '../parts/calculator.ts';

/** What is lost on the way, and how far the light must be to lose less. */
export const sentence: Sentence = (_given, results, show) => {
  const stops = Number(results['stops']);
  const more = results['even'];
  return [
    {
      text:
        stops < 0 ? 'At the far point there is more light: ' : 'The far point gets less light: ',
    },
    { text: show.size('stops'), main: true },
    {
      text: `${stops < 0 ? ' more' : ' less'}, ${show.result('percent')} of the near point’s.${
        more === undefined
          ? ''
          : ` To lose no more than you want over this depth, the near point must be ${show.result('even')} from the light.`
      }`,
    },
  ];
};
