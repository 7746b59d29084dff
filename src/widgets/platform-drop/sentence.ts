import type { Sentence } from '../parts/calculator.ts';

/** Both speeds, and why platforms are low, matted and spotted. */
export const sentence: Sentence = (given, results, show) => {
  const why =
    ' Keep platforms low, matted, with a grown-up within arm’s reach; tested surfacing and its standards decide about falls, not this number.';
  if (given['h'] === 0 && results['headSpeed'] !== undefined)
    return [
      { text: 'Without any platform a falling head still comes to the floor at ' },
      { text: show.result('headSpeed'), main: true },
      { text: `.${why}` },
    ];
  return results['headSpeed'] === undefined
    ? [
        { text: `From ${show.given('h')} a foot comes down at ` },
        { text: show.result('foot'), main: true },
        { text: `.${why}` },
      ]
    : [
        { text: `From a platform of ${show.given('h')} a falling head comes to the floor at ` },
        { text: show.result('headSpeed'), main: true },
        { text: `, a foot at ${show.result('foot')}.${why}` },
      ];
};
