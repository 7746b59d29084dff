import type { Sentence } from '../parts/calculator.ts';

/** The circle this print and this eye ask for. */
export const sentence: Sentence = (_given, results, show) => {
  const strict = (results['divisor'] as number) > 1500;
  return [
    { text: `Seen from ${show.given('v')}, a blur on the sensor may be ` },
    { text: show.result('c'), main: true },
    {
      text: ` across: the diagonal over ${show.result('divisor')}, ${strict ? 'stricter' : 'more lenient'} than the diagonal over 1500 used on this site.`,
    },
  ];
};
