import type { Sentence } from '../parts/calculator.ts';

/** How far the camera must stand for the frame that is wanted. */
export const sentence: Sentence = (_given, results, show) => {
  const m = results['m'] as number;
  // Ordinary lenses stop focusing near a quarter of life size; common practice, and the sentence only warns.
  const near =
    m > 0.25 ? ' Few lenses focus this near: try a close-up lens, or a larger frame.' : '';
  return [
    { text: `For ${show.given('H')} from bottom to top, ${show.given('f')} must be ` },
    { text: show.result('s'), main: true },
    { text: ` from the child, lens to eye. The frame is then ${show.result('W')} across.${near}` },
  ];
};
