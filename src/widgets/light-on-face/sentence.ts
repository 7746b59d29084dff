import type { Sentence } from '../parts/calculator.ts';

/** The pattern, which side of the face is lit, and the contrast between its planes. */
export const sentence: Sentence = (given, results, show) => [
  {
    text: `With the key ${show.given('azimuth')} round and ${show.given('elevation')} up, the nose’s shadow makes it `,
  },
  { text: show.result('pattern'), main: true },
  {
    text: ` light${
      results['side'] === 'neither' ? '' : `, lit on the ${show.result('side')} side`
    }. From the darkest plane of the face to the brightest there ${
      results['planes'] === Infinity
        ? 'is no end of stops: one gets no light'
        : `are ${show.result('planes')}`
    }.${
      Number(given['elevation']) < 0
        ? ' The key is below the eyes: shadows fall upwards, as by a camp fire. Raise it, unless you mean that.'
        : ''
    }`,
  },
];
