import type { Sentence } from '../parts/calculator.ts';

const ROLE = 'The spotter is never the photographer.';

/** Whether a spotter outside the picture can still hold on, and what to do where not. */
export const sentence: Sentence = (given, results, show) => {
  const gap = results['gap'] as number;
  const [k, r] = [given['k'], given['r']] as number[];
  const over = gap + (k ?? 0) - (r ?? 0);
  const start =
    gap < 0
      ? [
          { text: 'The child sits outside the frame: its edge is ' },
          { text: show.length(-gap), main: true as const },
          { text: ' the wrong side of the child.' },
        ]
      : [
          { text: 'From the child to the nearer edge of the frame it is ' },
          { text: show.result('gap'), main: true as const },
          { text: '.' },
        ];
  return [
    ...start,
    {
      text: results['within']
        ? ` With ${show.given('k')} kept clear, a reach of ${show.given('r')} holds on. ${ROLE}`
        : ` With ${show.given('k')} kept clear that is ${show.length(over)} beyond a reach of ${show.given('r')}: leave the adult in the picture, and remove them later with a second, empty frame. Never step back. ${ROLE}`,
    },
  ];
};
