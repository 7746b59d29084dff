import { writeQuantity } from '../formula/notation/write.ts';
import type { Given, Results } from '../formula/record.ts';
import { showResult, type Style } from '../formula/show.ts';
import formula from '../optics/aperture/diffraction.ts';
import { disc } from './disc.ts';
import { corners, pen, WIDTH } from './pen.ts';
import { bar, scaleFor } from './scale.ts';
import type { Sheet } from './sheet.ts';
import { stopScale } from './stop-scale.ts';
import { stop } from './stops.ts';
import { words } from './words.ts';

const [MIDDLE, LARGEST] = [84, 116];

/** The Airy disc alone, in the circle, and on one pixel, all to one scale; and the f-numbers where it reaches each. */
export const draw = (given: Given, results: Results, style: Style = {}): Sheet => {
  const { N, c, pitch, wavelength } = given as unknown as Parameters<typeof formula.compute>[0];
  const on = pen(style);
  const show = (key: keyof typeof formula.outputs): string =>
    showResult(formula.outputs[key], results[key], style);
  const size = (metres: number): string => showResult(formula.outputs.airy, metres, style);
  const airy = results['airy'] === undefined ? undefined : Number(results['airy']);
  const light = writeQuantity(wavelength, 'nm', 3, style);
  const all = [airy, c, pitch].filter((one) => one !== undefined);
  const scale = all.length ? scaleFor(LARGEST / Math.max(...all)) : 0;

  const spot = (x: number): void => {
    if (airy !== undefined) disc(on, 'light', x, MIDDLE, (airy * scale) / 2, true);
  };
  const views = [
    ...(airy === undefined ? [] : (['airy'] as const)),
    ...(c === undefined ? [] : (['circle'] as const)),
    ...(pitch === undefined ? [] : (['pixel'] as const)),
  ];
  const [names, values] = [
    { airy: 'Airy disc', circle: 'circle', pixel: 'pixel' },
    { airy: airy ?? 0, circle: c ?? 0, pixel: pitch ?? 0 },
  ];
  views.forEach((view, i) => {
    const x = (WIDTH * (i + 0.5)) / views.length;
    const half = (values[view] * scale) / 2;
    spot(x);
    // What the disc is held against lies over it, or a wide one would hide it.
    if (view === 'circle') disc(on, 'object', x, MIDDLE, half);
    if (view === 'pixel')
      on.ring('shade', corners([x - half, MIDDLE - half, x + half, MIDDLE + half]));
    on.text(x, 14, names[view], 'middle', view === 'airy' ? 'emphasis' : undefined);
    on.text(x, MIDDLE + LARGEST / 2 + 18, size(values[view]), 'middle');
  });
  if (scale > 0) bar(on, 8, 182, scale);

  // Where the disc reaches each: two different questions, on one scale of stops.
  const limits: (readonly [number, string, 'emphasis'?])[] = [];
  for (const [key, name] of [
    ['limit', 'circle'],
    ['pixelLimit', 'pixel'],
  ] as const)
    if (results[key] !== undefined) limits.push([Number(results[key]), name]);
  if (N !== undefined) limits.push([N, stop(N, style), 'emphasis']);
  const marks = limits.map(([one]) => one);
  let height = 190;
  if (marks.length) {
    const y = 240;
    const { at } = stopScale(on, y, marks);
    for (const [one, , role] of limits)
      on.line(role ?? 'object', [
        [at(one), y - 12],
        [at(one), y],
      ]);
    words(
      on,
      y - 30,
      limits.map(([one, text, role]) => [at(one), text, role]),
    );
    height = y + 30;
  }
  const parts = [
    ...(N === undefined ? [] : [`the Airy disc at ${stop(N, style)} is ${show('airy')} wide`]),
    ...(c === undefined ? [] : [`it reaches the circle of ${size(c)} at ${show('limit')}`]),
    ...(pitch === undefined
      ? []
      : [`it reaches one pixel of ${size(pitch)} at ${show('pixelLimit')}`]),
  ];
  return {
    width: WIDTH,
    height,
    marks: on.marks,
    says: `Drawn to one scale for light of ${light}: ${parts.join('; ') || 'nothing to compare is given'}.`,
    table: {
      head: ['drawn', 'width', 'reached at'],
      rows: [
        ['Airy disc', airy === undefined ? 'not given' : show('airy'), '–'],
        ['circle', c === undefined ? 'not given' : size(c), show('limit')],
        ['pixel', pitch === undefined ? 'not given' : size(pitch), show('pixelLimit')],
      ],
    },
  };
};
