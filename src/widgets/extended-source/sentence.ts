import type { Sentence } from '../parts/calculator.ts';

/** How far off the point law is here, and from where on it may be trusted. */
export const sentence: Sentence = (given, results, show) => [
  { text: `At ${show.given('d')} the inverse square law promises ` },
  { text: show.result('error'), main: true },
  {
    text: ` more than this ${given['shape'] === 'disc' ? 'round source' : 'rectangle'} gives${
      results['E'] === undefined ? '' : ` (${show.result('E')})`
    }. From ${show.result('tenth')} on the law is right within a tenth of a stop, from ${show.result('percent')} on within 1 %.`,
  },
];
