import type { Sentence } from '../parts/calculator.ts';

/** How far under the flash the room stays, against the margin and the sync speed. */
export const sentence: Sentence = (given, results, show) => {
  const over = results['over'] as number;
  const margin =
    given['margin'] === 0
      ? ''
      : results['below'] === true
        ? `, clear of the margin of ${show.given('margin')}`
        : `, and the margin asks for ${show.given('margin')} under`;
  const sync =
    results['within'] === false
      ? ' The shutter is faster than the sync speed: part of the frame stays dark.'
      : '';
  return [
    { text: 'The room’s light is ' },
    { text: show.size('over'), main: true },
    {
      text: ` ${over > 0 ? 'over' : 'under'} the flash${margin}. It is ${show.result('share')} of the picture and lifts it by ${show.result('rise')}.${sync}`,
    },
  ];
};
