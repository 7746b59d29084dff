import { writeNumber } from '../formula/notation/write.ts';
import type { Given, Results } from '../formula/record.ts';
import { showResult, type Style } from '../formula/show.ts';
import formula from '../optics/aperture/background-blur.ts';
import { marked } from '../optics/aperture/marks.ts';
import { coneOf } from '../optics/aperture/pupil.ts';
import { fromLens } from '../optics/lens/measured-from.ts';
import { arrow } from './arrow.ts';
import type { Box, Point } from './clip.ts';
import { chain } from './dimension.ts';
import { disc } from './disc.ts';
import { CHILD, figure, oval } from './figure.ts';
import { finder, rim } from './finder.ts';
import { corners, pen, WIDTH } from './pen.ts';
import { bar, scaleFor } from './scale.ts';
import type { Sheet } from './sheet.ts';
import { comparedStops, stop } from './stops.ts';

const SEEN: Box = [8, 8, 118, 168];
/** The pupil's place in the view from above, its axis, and how far the view runs. */
const [PUPIL, AXIS, RUN] = [34, 252, 266];
const EYE = 0.41;

/**
 * The frame with the discs of a point of light at three apertures in it, to its own scale; the same discs enlarged; and
 * from above the cone from the pupil through the plane in focus to the backdrop.
 */
export const draw = (given: Given, results: Results, style: Style = {}): Sheet => {
  const from = given as unknown as Parameters<typeof formula.compute>[0];
  const { f, N, b, a, p, marks } = from;
  const on = pen(style);
  const show = (key: keyof typeof formula.outputs): string =>
    showResult(formula.outputs[key], results[key], style);
  const seen = finder({ ...from, aspect: null }, SEEN);
  const cone = coneOf({ f, N: marked(N, marks), s: fromLens(from), p });
  const shots = comparedStops(from).map(({ N: setting, chosen }) => ({
    name: stop(setting, style),
    chosen,
    blur: chosen ? results : formula.compute({ ...from, N: setting }),
  }));

  // What the camera sees: the child, and the discs as wide as they are in that frame.
  const sensor = cone.m * seen.scale;
  const at = (x: number, y: number): Point => [
    seen.middle[0] + x * sensor,
    seen.middle[1] + (EYE - y) * sensor,
  ];
  on.area('ground', corners(seen.whole));
  figure(on, CHILD, at, seen.whole);
  const kinds = [
    ['sensor', 'light', 'behind'],
    ['foreground', 'shade', 'ahead'],
  ] as const;
  const drawn = kinds.filter(([key]) => results[key] !== undefined);
  const [left, top, right, bottom] = seen.whole;
  drawn.forEach(([key, role], column) =>
    shots.forEach(({ blur }, i) => {
      const radius = (Number(blur[key]) * seen.scale) / 2;
      const x = column ? left + (right - left) * 0.12 : right - (right - left) * 0.12;
      oval(on, role, x, top + ((bottom - top) * (i + 1)) / 8, radius, radius, seen.whole);
    }),
  );
  rim(on, seen);

  // The same discs, large.
  const widest = drawn.map(([key]) => Number(shots[0]?.blur[key]));
  const sum = widest.reduce((all, one) => all + one, 0);
  const scale = sum > 1e-30 ? scaleFor(Math.min(64 / Math.max(...widest), 100 / sum)) : seen.scale;
  let base = 8;
  drawn.forEach(([key, role, word], row) => {
    base += Math.max(12, (widest[row] ?? 0) * scale) + (row ? 34 : 0);
    on.text(126, base + 14, word);
    shots.forEach(({ blur, name, chosen }, i) => {
      const radius = (Number(blur[key]) * scale) / 2;
      const x = 204 + i * 62;
      disc(on, role, x, base - radius, radius, true);
      on.text(x, base + 14, name, 'middle', chosen ? 'emphasis' : undefined);
    });
  });
  if (sum > 1e-30) {
    bar(on, 126, 174, scale);
    on.text(356, 176, 'on the sensor', 'end');
  }

  // From above: along and across have scales of their own, or the cone would be a line.
  const endless = b === Infinity;
  const behind = b === undefined ? 0 : endless ? cone.reach * 0.6 : b;
  const along = scaleFor(RUN / (cone.reach + behind));
  const plane = PUPIL + cone.reach * along;
  const wall = PUPIL + (cone.reach + behind) * along;
  const spread = (cone.D * behind) / cone.reach;
  const larger = scaleFor(56 / Math.max(cone.D, spread) / along);
  const across = along * larger;
  const [half, rise] = [(cone.D / 2) * across, (spread / 2) * across];
  for (const sign of [1, -1]) {
    on.line('light', [
      [PUPIL, AXIS - sign * half],
      [plane, AXIS],
      [wall, AXIS + sign * rise],
    ]);
    for (const { name, chosen } of shots) {
      if (chosen) continue;
      const wide = half * (name === shots[0]?.name ? Math.SQRT2 : Math.SQRT1_2);
      on.line('construction', [
        [PUPIL, AXIS - sign * wide],
        [plane, AXIS],
        [wall, AXIS + (sign * rise * wide) / half],
      ]);
    }
  }
  on.line('object', [
    [PUPIL, AXIS - half],
    [PUPIL, AXIS + half],
  ]);
  on.line('frame', [
    [plane, AXIS - 40],
    [plane, AXIS + 52],
  ]);
  on.text(4, AXIS - half * Math.SQRT2 - 6, on.mm(cone.D));
  if (b !== undefined) {
    if (endless) arrow(on, 'light', wall, AXIS, wall + 16, AXIS);
    else
      on.line('object', [
        [wall, AXIS - 42],
        [wall, AXIS + 52],
      ]);
    on.text(Math.min(wall + 8, 356), AXIS - 46, show('backdrop'), 'end', 'emphasis');
  }
  if (a !== undefined) {
    const x = plane - a * along;
    disc(on, 'shade', x, AXIS, 3);
    // Close to the lens it would stand on the pupil's own measure.
    on.text(x, x < 110 ? AXIS + 30 : AXIS - 26, on.length(a), 'middle');
  }
  const places = [PUPIL, plane, ...(b === undefined || endless ? [] : [wall])];
  on.line('construction', [
    [PUPIL, AXIS + half],
    [PUPIL, AXIS + 52],
  ]);
  chain(on, AXIS + 50, places, [
    on.length(cone.reach),
    ...(b === undefined || endless ? [] : [on.length(b)]),
  ]);
  if (endless) on.text(wall, AXIS + 45, on.length(b), 'end');
  bar(on, 8, AXIS + 84, along);
  on.text(
    356,
    AXIS + 86,
    `across: ${writeNumber(larger, { significant: 3 }, { ...style, exact: true })} times larger`,
    'end',
  );
  const said =
    b === undefined
      ? 'No backdrop is given.'
      : `At ${stop(N, style)} a point of light on the backdrop becomes a disc of ${show('sensor')} on the sensor, ${show('share')} of the frame’s height, and of ${show('backdrop')} on the backdrop itself.`;
  return {
    width: WIDTH,
    height: AXIS + 92,
    marks: on.marks,
    says: `The frame, the discs of a point of light in it at ${shots.map(({ name }) => name).join(', ')}, and the cone from the pupil of ${on.mm(cone.D)}. ${said}`,
    table: {
      head: ['f-number', 'disc on the sensor', 'share of the frame', 'ahead of the child'],
      rows: shots.map(({ name, blur }) => [
        name,
        ...(['sensor', 'share', 'foreground'] as const).map((key) =>
          showResult(formula.outputs[key], blur[key], style),
        ),
      ]),
    },
  };
};
