import type { Sentence } from '../parts/calculator.ts';

/** What turning the light does for the farther child. */
export const sentence: Sentence = (_given, results, show) => {
  const word = (key: string): string => (Number(results[key]) < 0 ? 'more' : 'less');
  return [
    { text: 'Turned so, the farther child gets ' },
    { text: show.size('after'), main: true },
    {
      text: ` ${word('after')} than the nearer; aimed at the nearer it got ${show.size('before')} ${word('before')}. Both get the same at ${show.result('turn')}.${
        results['bounce'] === undefined
          ? ''
          : ` Turned up to the ceiling, the same light is ${show.size('bounce')} ${Number(results['bounce']) < 0 ? 'stronger' : 'weaker'}, by estimate.`
      }`,
    },
  ];
};
