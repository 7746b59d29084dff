import type { Sentence } from '../parts/calculator.ts';

/** How many stops lie between two f-numbers, and which way the light goes. */
export const sentence: Sentence = (given, results, show) => {
  const stops = results['stops'] as number;
  const way = stops === 0 ? 'the same light' : stops > 0 ? 'less light' : 'more light';
  const pupil =
    given['f'] === undefined
      ? ''
      : `: the pupil goes from ${show.result('fromPupil')} to ${show.result('toPupil')} across`;
  return [
    { text: `From ${show.given('from')} to ${show.given('to')} is ` },
    { text: show.size('stops'), main: true },
    {
      text: `${stops === 0 ? ',' : ''} ${way}${pupil}. The nearest third-stop mark is ${show.result('nearestThird')}, which stands for ${show.result('exact')}.`,
    },
  ];
};
