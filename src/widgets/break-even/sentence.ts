import type { Sentence } from '../parts/calculator.ts';

/** The sittings that pay, the bookings to take for them, and what an hour brings. */
export const sentence: Sentence = (_given, results, show) =>
  results['sittings'] === Infinity
    ? [
        { text: 'Each sitting costs more than it brings: the day ' },
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
          text: ` on: take ${show.result('bookings')} bookings. Each sitting leaves ${show.result('margin')}.${
            results['hourly'] === undefined
              ? ''
              : ` With the bookings you have, an hour’s work brings ${show.result('hourly')}.`
          }`,
        },
      ];
