import type { Sentence } from '../parts/calculator.ts';

/** How strong it is at the hair, what else its beam reaches, and whether the camera sees it. */
export const sentence: Sentence = (_given, results, show) => {
  const over = Number(results['over']);
  const reached = (
    [
      ['back', 'the back of the set'],
      ['fore', 'its front'],
    ] as const
  ).flatMap(([key, name]) => (results[key] === true ? [name] : []));
  return [
    { text: 'At the hair the rim light is ' },
    { text: show.size('over'), main: true },
    {
      text: ` ${over < 0 ? 'under' : 'over'} the key, from ${show.result('round')} behind. Its beam reaches the child${
        reached.length === 0 ? ' alone' : ` and ${reached.join(' and ')}`
      }.${results['inFrame'] === true ? ' The light itself stands in the picture: move it up or aside.' : ''}${
        results['strikes'] === true
          ? ' It shines into the lens: flag it, or take a narrower grid.'
          : ''
      }`,
    },
  ];
};
