import type { Sentence } from '../parts/calculator.ts';

/** How wide a point on the backdrop becomes, in the frame and on the cloth. */
export const sentence: Sentence = (given, results, show) =>
  results['sensor'] === undefined
    ? [
        { text: 'Without a backdrop distance the blur is ' },
        { text: 'not given', main: true },
        { text: '.' },
      ]
    : [
        { text: `A point of light on the backdrop becomes a disc ` },
        { text: show.result('share'), main: true },
        {
          text: ` of the frame’s height across${
            given['b'] === Infinity
              ? ''
              : `: creases and brush strokes much narrower than ${show.result('backdrop')} on the cloth are lost`
          }.`,
        },
      ];
