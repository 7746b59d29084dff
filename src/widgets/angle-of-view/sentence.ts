import type { Sentence } from '../parts/calculator.ts';

/** What the lens takes in, across the longer side and the shorter. */
export const sentence: Sentence = (given, _results, show) => {
  const focused = given['s'] === Infinity ? 'focused at infinity' : `focused at ${show.given('s')}`;
  const [wide, tall] = [show.result('horizontal'), show.result('vertical')];
  return [
    { text: `With ${show.given('f')} ${focused} the frame takes in ` },
    { text: wide, main: true },
    { text: ` along its longer side and ${tall} along the shorter.` },
  ];
};
