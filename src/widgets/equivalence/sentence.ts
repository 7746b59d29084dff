import type { Sentence } from '../parts/calculator.ts';

/** The lens and aperture that do the same on the other format, and what they do not do. */
export const sentence: Sentence = (given, results, show) => {
  const [from, to] = [show.given('format'), show.given('to')];
  const N = results['NEquivalent'];
  const here = N === undefined ? '' : ` at ${show.given('N')}`;
  const there = N === undefined ? '' : ` at ${show.result('NEquivalent')}`;
  if (results['fEquivalent'] === undefined)
    return [
      { text: `From ${from} to ${to} focal lengths are multiplied by ` },
      { text: show.result('factor'), main: true },
      {
        text:
          N === undefined
            ? '.'
            : `;${here} becomes${there}, for blur and depth, never for exposure.`,
      },
    ];
  const does = N === undefined ? 'gives the same view' : 'gives the same view, blur and depth';
  const exposure =
    N === undefined
      ? ''
      : ` Expose for ${show.result('NEquivalent')} all the same: light is not translated.`;
  return [
    { text: `What ${show.given('f')}${here} shows on ${from}, ` },
    { text: show.result('fEquivalent'), main: true },
    {
      text: `${there} shows on ${to}: from the same place it ${does} in the same print.${exposure}`,
    },
  ];
};
