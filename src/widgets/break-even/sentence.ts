import type { Sentence } from '../parts/calculator.ts';

/** The sittings that pay, the bookings to take for them, and what an hour brings. */
export const sentence: Sentence = (_given, results, show) =>
  results['sittings'] === Infinity
    ? [
        { text: 'Each sitting brings no more than it costs: the day ' },
        { text: 'never pays', main: true },
        { text: '.' },
      ]
    : [
        { text: 'The day pays from ' },
        {
          text: `${show.result('sittings')} ${results['sittings'] === 1 ? 'sitting' : 'sittings'}`,
          main: true,
        },
        {
          text: ` on: take ${show.result('bookings')} ${results['bookings'] === 1 ? 'booking' : 'bookings'}. Each sitting leaves ${show.result('margin')}.${
            results['hourly'] === undefined
              ? ''
              : ` With the bookings you have, an hour’s work brings ${show.result('hourly')}.`
          }`,
        },
      ];
