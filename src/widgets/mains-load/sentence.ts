import type { Sentence } from '../parts/calculator.ts';

/** What is drawn, what is left, and who decides. */
export const sentence: Sentence = (_given, results, show) => {
  const over = Number(results['margin']) < 0;
  return [
    { text: 'All together draw ' },
    { text: show.result('current'), main: true },
    {
      text: over
        ? `, ${show.size('margin')} more than one circuit may carry: ${results['circuits'] === Infinity ? 'one thing alone is too strong for such a circuit' : `spread them over ${show.result('circuits')}`}. Your local code and a licensed electrician decide.`
        : `; one circuit has ${show.size('margin')} left. Your local code and a licensed electrician decide.`,
    },
  ];
};
