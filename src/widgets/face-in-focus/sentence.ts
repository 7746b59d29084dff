import type { Sentence } from '../parts/calculator.ts';

/** Whether the face is sharp, what binds, and which aperture would do. */
export const sentence: Sentence = (_given, results, show) => {
  const spare = results['spare'] as number;
  const side = show.result('side');
  const mark = results['mark'] as number;
  const needed =
    mark === Infinity
      ? 'No marked aperture covers it from here: step back or ask for less.'
      : `The widest mark that covers it is ${show.result('mark')}.`;
  return [
    { text: `At ${show.given('N')} the face is ` },
    { text: spare >= 0 ? 'covered' : 'not covered', main: true },
    {
      text: `: ${show.size('spare')} ${spare >= 0 ? 'to spare' : 'short'} ${side}. ${needed}`,
    },
  ];
};
