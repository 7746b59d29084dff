import type { Sentence } from '../parts/calculator.ts';

/** The Airy disc against the circle and, as a different question, the pixel. */
export const sentence: Sentence = (_given, results, show) => {
  const limit =
    results['limit'] === undefined
      ? ''
      : ` The disc fills the circle of confusion at ${show.result('limit')}.`;
  const pixel =
    results['pixels'] === undefined
      ? ''
      : ` On a screen at full size it covers ${show.result('pixels')} pixels, and just one at ${show.result('pixelLimit')}.`;
  return results['airy'] === undefined
    ? [
        { text: 'Without an f-number the disc is ' },
        { text: 'not given', main: true },
        { text: `.${limit}` },
      ]
    : [
        { text: `At ${show.given('N')} even a perfect lens draws a point as a disc ` },
        { text: show.result('airy'), main: true },
        { text: ` across.${limit}${pixel}` },
      ];
};
