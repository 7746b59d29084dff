import type { Sentence } from '../parts/calculator.ts';

/** What smears, and whether a ghost shows. */
export const sentence: Sentence = (_given, results, show) => {
  const flash = results['flash'] !== undefined;
  const circles = flash ? 'flashCircles' : 'ambientCircles';
  const outlasts =
    results['outlasts'] === true
      ? ' The flash outlasts the shutter: part of its light is lost.'
      : '';
  const ghost =
    results['ghost'] === undefined
      ? ''
      : results['ghost'] === true
        ? ' A ghost shows: the room’s light is strong enough to smear.'
        : ' No ghost shows.';
  const within =
    results[circles] === undefined ? '' : `, ${show.result(circles)} circles of confusion`;
  return [
    { text: `While the ${flash ? 'flash burns' : 'shutter is open'} the image moves ` },
    {
      text:
        results[flash ? 'flash' : 'ambient'] === undefined
          ? 'an unknown way'
          : show.result(flash ? 'flash' : 'ambient'),
      main: true,
    },
    { text: `${within}.${ghost}${outlasts}` },
  ];
};
