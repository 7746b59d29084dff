import type { Sentence } from '../parts/calculator.ts';

/** The pull that tips it, or that it does not stand at all; always with the caution. */
export const sentence: Sentence = (given, results, show) => {
  const falls = Number(results['restoring']) <= Number(results['overturning']);
  const short = Number(results['margin']) < 0;
  const need =
    results['counterweight'] === Infinity
      ? ' No weight on the column holds it: shorten the boom.'
      : short
        ? Number(given['ballast']) > Number(results['counterweight'])
          ? ' It is the ballast that turns it: hang it nearer to the column, or take some off.'
          : ` To be held ${show.given('factor')} times over it would need ${show.result('counterweight')} of ballast in that place.`
        : '';
  const caution =
    ' A number clears nothing for use: weight every stand, turn a leg under the load, keep a grown-up between it and the child.';
  if (falls)
    return [
      { text: 'As it is, this stand ' },
      { text: 'tips over by itself', main: true },
      { text: `.${need}${caution}` },
    ];
  return results['pullForce'] === undefined
    ? [
        { text: 'It is held back by ' },
        { text: show.result('restoring'), main: true },
        { text: ` against ${show.result('overturning')}.${need}${caution}` },
      ]
    : [
        { text: `Pulled sideways at ${show.given('pull')}, it tips at ` },
        { text: show.result('pullForce'), main: true },
        {
          text: `, where 10 N is the weight of about 1 kg.${need}${caution}`,
        },
      ];
};
