import type { Sentence } from '../parts/calculator.ts';

/** How far under the flash the room stays, against the margin and the sync speed. */
export const sentence: Sentence = (given, results, show) => {
  const over = results['over'] as number;
  const verdict =
    results['below'] === true
      ? given['margin'] === 0
        ? 'under the flash'
        : `clear of the ${show.given('margin')} margin`
      : `not ${show.given('margin')} under`;
  const sync =
    results['within'] === false
      ? ' The shutter is faster than the sync speed: part of the frame stays dark.'
      : '';
  return [
    { text: 'The room’s light is ' },
    { text: show.size('over'), main: true },
    {
      text: ` ${over > 0 ? 'over' : 'under'}, ${verdict}: ${show.result('share')} of the picture, lifting it ${show.result('rise')}.${sync}`,
    },
  ];
};
