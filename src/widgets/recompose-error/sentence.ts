import type { Sentence } from '../parts/calculator.ts';

/** Where the focus ends up, and whether the eye is still sharp. */
export const sentence: Sentence = (_given, results, show) => {
  const share = results['share'] as number | undefined;
  const soft = share !== undefined && share > 1;
  return [
    { text: 'Turning the camera after focusing leaves the focus ' },
    { text: show.result('error'), main: true },
    {
      text: ` behind the eye${share === undefined ? '.' : `: ${show.result('share')} of the depth in front of the focus. ${soft ? 'The eye is soft.' : 'The eye is still sharp.'}`}`,
    },
  ];
};
