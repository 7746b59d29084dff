import { writeQuantity } from '../formula/notation/write.ts';
import type { Ratio } from '../formula/quantities.ts';
import type { Given, Results } from '../formula/record.ts';
import { showResult, type Style } from '../formula/show.ts';
import { marked } from '../optics/aperture/marks.ts';
import { coneOf, sharpDepths } from '../optics/aperture/pupil.ts';
import formula from '../optics/aperture/recompose-error.ts';
import { camera } from './camera.ts';
import type { Box, Point } from './clip.ts';
import { across } from './dimension.ts';
import { disc } from './disc.ts';
import { fromOver } from './figure.ts';
import { corners, pen, WIDTH } from './pen.ts';
import { bar, scaleFor } from './scale.ts';
import type { Sheet } from './sheet.ts';

const [LENS, AXIS] = [34, 52];

/** From above: the plane in focus before and after the camera turned, and along the new line of sight how far it misses. */
export const draw = (given: Given, results: Results, style: Style = {}): Sheet => {
  const from = given as unknown as Parameters<typeof formula.compute>[0];
  const { f, N, s, angle, shift, sway, c, marks } = from;
  const on = pen(style);
  const size = (metres: number): string => showResult(formula.outputs.error, metres, style);
  const error = Number(results['error']);
  const turn = angle ?? Math.atan2(shift ?? 0, s);
  const depth =
    f === undefined || N === undefined || c === undefined
      ? undefined
      : sharpDepths(coneOf({ f, N: marked(N, marks), s, p: 1 as Ratio }), c);
  const [sin, cos] = [Math.sin(turn), Math.cos(turn)];

  // From above, to scale: the camera turns towards the foot of the sheet.
  const scale = scaleFor(Math.min(250 / s, 96 / (s * sin)));
  const run = s * scale;
  const eye: Point = [LENS + run, AXIS];
  const plan: Box = [4, 8, 356, AXIS + Math.max(44, run * sin + 10)];
  /** The detail under it: the sharp band's top and foot. */
  const [top, foot] = [plan[3] + 48, plan[3] + 108];
  const aim: Point = [LENS + run * cos, AXIS + run * sin];
  fromOver(on, eye[0] + 0.07 * scale, AXIS, scale, plan);
  on.line('construction', [[LENS, AXIS], eye]);
  on.line('light', [[LENS, AXIS], aim]);
  on.line(
    'hidden',
    [
      [eye[0], AXIS - 36],
      [eye[0], AXIS + Math.max(36, (aim[1] - AXIS) * 1.1)],
    ],
    plan,
  );
  // The new plane, from before the eye to as far on the other side.
  const along = (d: number): Point => [aim[0] + d * sin, aim[1] - d * cos];
  on.line('frame', [along(run * sin + 36), along(-30)], plan);
  camera(on, LENS, AXIS, scale, 13, -turn);
  disc(on, 'emphasis', eye[0], AXIS, 2.5);
  const radius = Math.min(110, run * 0.6);
  const fixed = (x: number): string => x.toFixed(3);
  on.path(
    'dimension',
    `M${fixed(LENS + radius)} ${AXIS}A${fixed(radius)} ${fixed(radius)} 0 0 1 ${fixed(LENS + radius * cos)} ${fixed(AXIS + radius * sin)}`,
  );
  on.text(
    LENS + radius * Math.cos(turn / 2) - 8,
    AXIS + Math.max(20, radius * sin + 16),
    writeQuantity(turn, 'deg', { significant: 3 }, style),
    'end',
  );
  across(on, 22, LENS, eye[0], on.length(s));
  if (shift !== undefined) on.text(eye[0] + 6, AXIS + 30, `shift ${on.length(shift)}`);
  bar(on, 8, plan[3] + 20, scale);
  on.text(356, plan[3] + 22, 'dashed: before', 'end');

  // Along the new line of sight, enlarged: the plane in focus, the eye ahead of it, and what is sharp.
  const lead = Math.max(error + sway, depth?.ahead ?? 0, 1e-4 * s);
  const tail = Math.max(0.15 * lead, sway - error, Math.min(depth?.behind ?? 0, 0.8 * lead));
  const fine = scaleFor(320 / (lead + tail));
  const plane = 190 + ((lead - tail) * fine) / 2;
  const missed = plane - error * fine;
  const level = (top + foot) / 2;
  if (depth)
    on.area(
      'light',
      corners([plane - depth.ahead * fine, top, Math.min(352, plane + depth.behind * fine), foot]),
    );
  on.line('construction', [
    [8, level],
    [352, level],
  ]);
  on.line('frame', [
    [plane, top - 6],
    [plane, foot + 66],
  ]);
  on.line('construction', [
    [missed, level],
    [missed, foot + 30],
  ]);
  if (sway > 0)
    for (const way of [-1, 1])
      on.line('hidden', [
        [missed + way * sway * fine, level - 12],
        [missed + way * sway * fine, level + 12],
      ]);
  disc(on, 'figure', missed, level, 4, true);
  on.text(missed, level - 12, 'eye', 'middle');
  on.text(plane, top - 9, 'in focus', 'middle');
  across(on, foot + 26, missed, plane, size(error));
  if (depth) {
    const edge = plane - depth.ahead * fine;
    on.line('light', [
      [edge, top],
      [edge, foot + 66],
    ]);
    across(on, foot + 62, edge, plane, size(depth.ahead));
  }
  const share = showResult(formula.outputs.share, results['share'], style);
  const over = Number(results['share'] ?? 0) > 1;
  bar(on, 8, foot + 92, fine);
  if (depth) on.text(356, foot + 94, `used up: ${share}`, 'end', over ? 'emphasis' : undefined);
  return {
    width: WIDTH,
    height: foot + 100,
    marks: on.marks,
    says: `From above: focused on the eye at ${on.length(s)}, the camera turns by ${writeQuantity(turn, 'deg', { significant: 3 }, style)} and the plane in focus turns with it. It now lies ${size(error)} behind the eye${depth ? `: ${share} of the ${size(depth.ahead)} that are sharp ahead of it` : ''}.`,
    table: {
      head: ['drawn', 'value'],
      rows: [
        ['focus error', size(error)],
        ['sway either way', size(sway)],
        ...(depth
          ? [
              ['sharp ahead of the focus', size(depth.ahead)],
              ['sharp behind it', size(depth.behind)],
              ['used up by turning', share],
              [
                'used up by sway',
                showResult(formula.outputs.swayShare, results['swayShare'], style),
              ],
            ]
          : []),
      ],
    },
  };
};
