import type { Sentence } from '../parts/calculator.ts';

/** The longest lens the room takes, whether this one fits, and what else is in the way. */
export const sentence: Sentence = (_given, results, show) => {
  const [longest, needed, spare] = [results['longest'], results['needed'], results['spare']] as (
    number | undefined
  )[];
  const others = [
    results['clear'] === false && ' A side wall comes into the picture at the backdrop.',
    results['light'] === false &&
      ' A light with its stand does not fit beside the frame and above it.',
  ].filter(Boolean);
  const over =
    spare === undefined
      ? ''
      : `: ${show.length(Math.abs(spare))} ${spare < 0 ? 'short' : 'to spare'}`;
  const wanted =
    needed === undefined ? '' : ` ${show.given('f')} needs ${show.result('needed')}${over}.`;
  const rest = { text: `.${wanted}${others.join('')}` };
  if (longest === undefined)
    return needed === undefined
      ? [
          { text: 'The longest lens is ' },
          { text: 'not given', main: true },
          { text: ' until the room’s length and what stands in it are.' },
        ]
      : [
          { text: `${show.given('f')} needs ` },
          { text: show.result('needed'), main: true },
          { text: ` from wall to wall.${others.join('')}` },
        ];
  if (longest === 0)
    return [
      { text: `A room ${show.given('roomLength')} long takes ` },
      { text: 'no lens', main: true },
      {
        text: ` at all: the backdrop, its clearance and the room behind the camera fill it${rest.text}`,
      },
    ];
  return [
    { text: `A room ${show.given('roomLength')} long takes at most ` },
    { text: show.result('longest'), main: true },
    { text: ` for a frame ${show.given('H')} tall${rest.text}` },
  ];
};
