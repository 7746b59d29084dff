import type { Sentence } from '../parts/calculator.ts';

/** The colour behind the gel, and the light it costs. */
export const sentence: Sentence = (_given, results, show) => [
  { text: 'Behind the gel the light is ' },
  { text: show.result('temperature'), main: true },
  {
    text: `, a shift of ${show.result('shift')}. The gel takes ${show.result('loss')}${
      Number(results['needed']) > 1
        ? ': more power than the flash has left'
        : `: set ${show.result('needed')} of full power to make up for it`
    }.`,
  },
];
