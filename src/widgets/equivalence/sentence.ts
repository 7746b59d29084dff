import type { Sentence } from '../parts/calculator.ts';

/** The lens and aperture that do the same on the other format, and what they do not do. */
export const sentence: Sentence = (given, results, show) => {
  const [from, to] = [show.given('format'), show.given('to')];
  const N = results['NEquivalent'] !== undefined;
  const marked = given['marks'] === 'exact' ? ', by the exact value of its mark,' : '';
  if (results['fEquivalent'] === undefined)
    return [
      { text: `From ${from} to ${to} focal lengths are multiplied by ` },
      { text: show.result('factor'), main: true },
      {
        text: N
          ? `; ${show.given('N')}${marked} becomes ${show.result('NEquivalent')} for blur and depth, never for exposure.`
          : '.',
      },
    ];
  return [
    {
      text: `What ${show.given('f')}${N ? ` at ${show.given('N')}${marked}` : ''} shows on ${from}, `,
    },
    { text: show.result('fEquivalent'), main: true },
    {
      text: N
        ? ` at ${show.result('NEquivalent')} shows on ${to}: the same view, blur and depth from the same place. Exposure does not translate: ${show.given('N')} stays ${show.given('N')} for the meter.`
        : ` shows on ${to}: the same view from the same place.`,
    },
  ];
};
