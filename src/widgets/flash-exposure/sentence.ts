import type { Sentence } from '../parts/calculator.ts';

/** The f-number here, and the power for the one that is wanted; with what to do where the dial does not reach. */
export const sentence: Sentence = (given, results, show) => {
  const wanted = given['wanted'] !== undefined;
  const strong = Number(results['needed']) < 1;
  const outside =
    results['inRange'] !== false
      ? ''
      : strong
        ? ` That is below the lowest it can be set to: add a grey filter on the lens, distance or diffusion.`
        : ' That is more than it has: come nearer, open the lens or raise the ISO.';
  const close =
    results['close'] === true
      ? ' Caution: a bare flash under 1 m from a small child. Diffuse it, bounce it or move it back.'
      : '';
  const mark =
    results['marked'] === undefined || outside !== ''
      ? ''
      : `, nearest mark ${show.result('marked')}`;
  return [
    { text: `At ${show.given('d')} this flash asks for ` },
    { text: show.result('N'), main: true },
    {
      text: `.${wanted ? (strong ? ` For ${show.given('wanted')} set ${show.result('needed')} of full power${mark}.` : ` For ${show.given('wanted')} it takes ${show.result('needed')} times full power.`) : ''}${outside}${close}`,
    },
  ];
};
