import type { Sentence } from '../parts/calculator.ts';

/** The longest lens the room takes, whether this one fits, and what else is in the way. */
export const sentence: Sentence = (given, results, show) => {
  const [longest, spare] = [results['longest'], results['spare']] as (number | undefined)[];
  const wanted =
    results['needed'] === undefined ? '' : `${show.given('f')} needs ${show.result('needed')}`;
  const fit =
    spare === undefined
      ? wanted && ` ${wanted} from wall to wall.`
      : spare < 0
        ? ` ${wanted}: ${show.length(-spare)} short.`
        : ` ${wanted}: ${show.length(spare)} to spare.`;
  const sides = [
    results['clear'] === false && 'A side wall comes into the picture at the backdrop.',
    results['light'] === false && 'A light with its stand does not fit beside and above the frame.',
  ].filter(Boolean);
  const rest = { text: [fit, ...sides].join(' ') };
  if (longest === undefined)
    return [
      { text: 'For the longest lens give the room’s length and what stands in it. ' },
      { text: results['needed'] === undefined ? 'not given' : show.result('needed'), main: true },
      {
        text:
          results['needed'] === undefined
            ? '.'
            : ` is what ${show.given('f')} needs from wall to wall.`,
      },
    ];
  if (longest === 0)
    return [
      { text: `A room ${show.given('roomLength')} long takes ` },
      { text: 'no lens', main: true },
      {
        text: ` at all: the backdrop, its clearance and the room behind the camera already fill it.${rest.text}`,
      },
    ];
  return [
    {
      text: `In a room ${show.given('roomLength')} long a frame ${show.given('H')} tall takes at most `,
    },
    { text: show.result('longest'), main: true },
    { text: `.${rest.text}` },
  ];
};
