import type { Sentence } from '../parts/calculator.ts';

/** How much of the set the frame takes in at the child. */
export const sentence: Sentence = (given, results, show) => {
  if (results['H'] === Infinity)
    return [
      { text: 'Focused at infinity the frame has no size to name: it is ' },
      { text: show.result('H'), main: true },
      { text: ' at a distance without end. Give the child’s distance.' },
    ];
  const from = given['from'] === 'sensor' ? ' from the sensor' : '';
  return [
    { text: `With ${show.given('f')} at ${show.given('s')}${from} the frame takes in ` },
    { text: show.result('H'), main: true },
    { text: ` from bottom to top and ${show.result('W')} across.` },
  ];
};
