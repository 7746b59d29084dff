import type { Sentence } from '../parts/calculator.ts';

/** The backdrop against the face, its tone, and what the key's spill leaves of the spot. */
export const sentence: Sentence = (_given, results, show) => {
  const word = (key: string): string => (Number(results[key]) < 0 ? 'under' : 'over');
  return [
    { text: 'The backdrop gets ' },
    { text: show.size('against'), main: true },
    {
      text: ` ${Number(results['against']) < 0 ? 'less' : 'more'} light than the face${
        results['tone'] === undefined
          ? ''
          : `; this cloth comes out ${show.size('tone')} ${word('tone')} middle grey`
      }.${
        Number(results['contrast']) > 0
          ? ` The spot stands ${show.result('contrast')} over the cloth beside it.`
          : ' No light of its own makes a spot on it.'
      }`,
    },
  ];
};
