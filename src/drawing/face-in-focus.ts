import type { Given, Results } from '../formula/record.ts';
import { showResult, type Style } from '../formula/show.ts';
import formula from '../optics/aperture/face-in-focus.ts';
import { marked } from '../optics/aperture/marks.ts';
import { coneOf, sharpDepths } from '../optics/aperture/pupil.ts';
import { fromLens } from '../optics/lens/measured-from.ts';
import { arrow } from './arrow.ts';
import type { Box } from './clip.ts';
import { chain } from './dimension.ts';
import { disc } from './disc.ts';
import { corners, pen, WIDTH, widthOf } from './pen.ts';
import { bar, scaleFor } from './scale.ts';
import { sharpChild } from './sharp.ts';
import type { Sheet } from './sheet.ts';
import { stop } from './stops.ts';
import { words } from './words.ts';

/** Eyes over the seat, and the room the head is drawn in. */
const EYE = 0.41;
const [TOP, LEVEL, FOOT] = [34, 112, 190];

/** The head from the side, enlarged: what has to be sharp, and between which limits it is. */
export const draw = (given: Given, results: Results, style: Style = {}): Sheet => {
  const from = given as unknown as Parameters<typeof formula.compute>[0];
  const { f, N, ahead, behind, turn, sway, knees, toes, c, p, marks } = from;
  const on = pen(style);
  const show = (key: keyof typeof formula.outputs): string =>
    showResult(formula.outputs[key], results[key], style);
  const size = (metres: number): string => showResult(formula.outputs.spare, metres, style);
  const cos = Math.cos(turn);
  const depth = sharpDepths(coneOf({ f, N: marked(N, marks), s: fromLens(from), p }), c);
  const points = [
    [-1 * ahead * cos, 'nose'],
    [behind * cos, 'ear'],
    ...(knees === undefined ? [] : [[-1 * knees, 'knees'] as const]),
    ...(toes === undefined ? [] : [[-1 * toes, 'toes'] as const]),
  ] as const;
  const front = Math.max(...points.map(([x]) => -x)) + sway;
  const back = behind * cos + sway;
  // Limits far beyond what has to be sharp run off the sheet.
  const left = Math.max(front, Math.min(depth.ahead, 1.2 * front), 0.06);
  const right = Math.max(back, Math.min(depth.behind, 1.2 * back), 0.17);
  const scale = scaleFor(Math.min(340 / (left + right), 700));
  const eye = 180 + ((left - right) * scale) / 2;
  const x = (metres: number): number => eye + metres * scale;
  const box: Box = [4, TOP, 356, FOOT];
  const [near, far] = [Math.max(4, x(-1 * depth.ahead)), Math.min(356, x(depth.behind))];

  on.area('light', corners([near, TOP, far, FOOT]));
  sharpChild(on, (u, v) => [x(u * cos), LEVEL + (EYE - v) * scale], box, near, far);
  const cut = [
    [-1 * depth.ahead, near, 4],
    [depth.behind, far, 356],
  ] as const;
  for (const [metres, at, end] of cut)
    if (Math.abs(x(metres) - at) < 1e-6)
      on.line('light', [
        [at, TOP],
        [at, FOOT + 34],
      ]);
    else arrow(on, 'light', eye, FOOT - 8, end, FOOT - 8);
  disc(on, 'ground', eye, LEVEL, Math.min(4, 0.006 * scale), true);
  for (const [metres] of [[0] as const, ...points])
    on.line('construction', [
      [x(metres), TOP - 4],
      [x(metres), FOOT + 70],
    ]);
  words(on, 13, [
    [eye, 'eye', 'emphasis'],
    ...points.map(([metres, name]) => [x(metres), name] as const),
  ]);

  // What is sharp, over what has to be.
  const pair = (
    y: number,
    from: number,
    to: number,
    texts: readonly string[],
    aside: number,
  ): void => {
    chain(on, y, [from, eye, to], []);
    // Within its length where it fits, else outside both.
    texts.forEach((text, i) => {
      const [end, way] = i ? [to, 1] : [from, -1];
      const fits = widthOf(text) + 8 < Math.abs(end - eye);
      on.text(
        fits ? eye + way * 4 : end + way * (6 + aside),
        fits ? y - 5 : y + 4,
        text,
        way > 0 ? 'start' : 'end',
      );
    });
  };
  pair(FOOT + 30, near, far, [size(depth.ahead), size(depth.behind)], 0);
  const [nearest, farthest] = [x(sway - front), x(back - sway)];
  if (sway > 0) {
    for (const [at, way] of [
      [nearest, -1],
      [farthest, 1],
    ] as const) {
      on.line('hidden', [
        [at, FOOT + 66],
        [at + way * sway * scale, FOOT + 66],
      ]);
      on.line('hidden', [
        [at + way * sway * scale, FOOT + 58],
        [at + way * sway * scale, FOOT + 74],
      ]);
    }
    on.text(356, FOOT + 84, `dashed: sway ${size(sway)}`, 'end');
  }
  pair(FOOT + 66, nearest, farthest, [size(front - sway), size(back - sway)], sway * scale);
  on.text(6, FOOT + 14, 'sharp', 'start');
  on.text(6, FOOT + 50, 'wanted', 'start');

  // The tighter side: what is left over there, or lacks.
  const spare = Number(results['spare']);
  const tight = results['side'] === 'ahead' ? -1 : 1;
  const wanted = tight < 0 ? -front : back;
  const clamp = (at: number): number => Math.max(4, Math.min(356, at));
  on.line('emphasis', [
    [clamp(x(wanted)), FOOT + 38],
    [clamp(x(wanted + tight * spare)), FOOT + 38],
  ]);
  on.text(
    180,
    FOOT + 102,
    `${size(Math.abs(spare))} ${spare < 0 ? 'short' : 'to spare'}, ${show('side')}`,
    'middle',
    'emphasis',
  );
  bar(on, 8, FOOT + 124, scale);
  on.text(
    356,
    FOOT + 126,
    Number.isFinite(results['mark']) ? `widest mark: ${show('mark')}` : 'no mark covers it',
    'end',
  );
  return {
    width: WIDTH,
    height: FOOT + 132,
    marks: on.marks,
    says: `The head from the side, enlarged, solid where sharp at ${stop(N, style)}: ${size(depth.ahead)} ahead of the eye and ${size(depth.behind)} behind it. Wanted are ${size(front)} and ${size(back)}${sway > 0 ? `, with ${size(sway)} of sway either way in them` : ''}. The side ${show('side')} binds, with ${size(Math.abs(spare))} ${spare < 0 ? 'short' : 'to spare'}.`,
    table: {
      head: ['from the eye', 'ahead', 'behind'],
      rows: [
        ['sharp', size(depth.ahead), size(depth.behind)],
        ['wanted, with sway', size(front), size(back)],
        ['face alone', size(ahead * cos), size(behind * cos)],
      ],
    },
  };
};
