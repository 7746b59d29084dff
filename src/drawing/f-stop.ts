import type { Given, Results } from '../formula/record.ts';
import { showResult, type Style } from '../formula/show.ts';
import formula from '../optics/aperture/f-stop.ts';
import { across } from './dimension.ts';
import { disc } from './disc.ts';
import { pen, WIDTH } from './pen.ts';
import { bar } from './scale.ts';
import type { Sheet } from './sheet.ts';
import { stopScale } from './stop-scale.ts';
import { stop } from './stops.ts';
import { words } from './words.ts';

const [MIDDLE, LARGEST, SCALE] = [74, 104, 186];

/** The pupils of two f-numbers to one scale, and the marks between them. */
export const draw = (given: Given, results: Results, style: Style = {}): Sheet => {
  const { from, to, f } = given as unknown as Parameters<typeof formula.compute>[0];
  const on = pen(style);
  const show = (key: keyof typeof formula.outputs): string =>
    showResult(formula.outputs[key], results[key], style);
  const units = LARGEST * Math.min(from, to);
  const both = [
    [104, from, 'fromPupil'],
    [262, to, 'toPupil'],
  ] as const;
  for (const [x, N, key] of both) {
    const radius = units / N / 2;
    disc(on, 'light', x, MIDDLE, radius, true);
    on.text(x, 14, stop(N, style), 'middle', 'emphasis');
    if (f !== undefined) across(on, MIDDLE + LARGEST / 2 + 22, x - radius, x + radius, show(key));
  }
  // What is left of the first, laid over the second: the light that is lost or won.
  disc(on, 'hidden', 262, MIDDLE, units / from / 2);
  if (f !== undefined) bar(on, 8, 160, units / f);
  const { at } = stopScale(on, SCALE + 26, [from, to]);
  for (const N of [from, to])
    on.line('emphasis', [
      [at(N), SCALE + 14],
      [at(N), SCALE + 26],
    ]);
  if (from !== to) across(on, SCALE + 12, at(from), at(to), show('stops'));
  else words(on, SCALE + 7, [[at(to), show('stops')]]);
  const rows = [
    ['stops between', show('stops')],
    ['light ratio', show('lightRatio')],
    [
      'nearest full, half and third mark',
      [show('nearestFull'), show('nearestHalf'), show('nearestThird')].join(', '),
    ],
    ['exact value of that third', show('exact')],
  ];
  if (f !== undefined)
    rows.push(
      [`pupil at ${stop(from, style)}`, show('fromPupil')],
      [`pupil at ${stop(to, style)}`, show('toPupil')],
    );
  return {
    width: WIDTH,
    height: SCALE + 56,
    marks: on.marks,
    says: `The pupils at ${stop(from, style)} and ${stop(to, style)}, to one scale${f === undefined ? '' : `: ${show('fromPupil')} and ${show('toPupil')} wide with ${on.mm(f)}`}; the first is dashed round the second. Between them lie ${show('stops')}, a light ratio of ${show('lightRatio')}.`,
    table: { head: ['drawn', 'value'], rows },
  };
};
