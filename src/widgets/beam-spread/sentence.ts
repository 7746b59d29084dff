import type { Sentence } from '../parts/calculator.ts';

/** The spot's size, and a word where the cone is not formed yet. */
export const sentence: Sentence = (given, results, show) => {
  const [D, opening, width] = [
    Number(given['D']),
    Number(given['opening'] ?? 0),
    Number(results['width']),
  ];
  if (!Number.isFinite(width))
    return [
      { text: 'So far off square the beam ' },
      { text: 'runs along the backdrop', main: true },
      { text: ' and has no far edge.' },
    ];
  const near =
    D < 5 * opening
      ? ' Inside five openings the cone is not formed yet: expect a wider, softer spot.'
      : '';
  const wanted =
    results['distance'] === undefined
      ? ''
      : ` For a spot ${show.given('wanted')} wide stand at ${show.result('distance')}, or use ${show.result('forSpot')} from here.`;
  return [
    { text: 'The spot is ' },
    { text: show.result('width'), main: true },
    { text: ` wide and ${show.result('length')} long.${wanted}${near}` },
  ];
};
