import type { Given, Results } from '../formula/record.ts';
import { showResult, type Style } from '../formula/show.ts';
import { writeQuantity } from '../formula/notation/write.ts';
import formula from '../optics/light/light-on-face.ts';
import { arrow } from './arrow.ts';
import { camera } from './camera.ts';
import type { Box, Point } from './clip.ts';
import { across as level, upright } from './dimension.ts';
import { disc } from './disc.ts';
import { oval } from './figure.ts';
import { pen, WIDTH, type Pen } from './pen.ts';
import { bar, scaleFor } from './scale.ts';
import type { Sheet } from './sheet.ts';

/** The head from above and from the side: where its middle is, how far off the key is drawn. */
const [ABOVE, SIDE, MIDDLE, OFF] = [88, 300, 98, 68];
/** The face's front, where the nose's tip is. */
const [TIP_X, TIP_Y] = [130, 302];
const FRONT: Box = [8, 232, 240, 376];
const EYE: Point = [306, 298];
const CORNEA = 36;
const WHOLE: Box = [4, 4, 356, 412];

const angle = (radians: number, style: Style): string =>
  writeQuantity(Math.abs(radians), 'deg', { significant: 3 }, { ...style, exact: true });

/** An arc about a place, between two directions counted from `zero` on the sheet. */
const arc = (
  on: Pen,
  [x, y]: Point,
  radius: number,
  from: number,
  to: number,
  zero: Point,
): void => {
  const steps = Math.max(2, Math.ceil(Math.abs(to - from) * 12));
  on.line(
    'dimension',
    Array.from({ length: steps + 1 }, (_, i): Point => {
      const turn = from + ((to - from) * i) / steps;
      const [c, s] = [Math.cos(turn), Math.sin(turn)];
      return [x + radius * (zero[0] * c + zero[1] * s), y + radius * (zero[1] * c - zero[0] * s)];
    }),
  );
};

/** The key: a short line square to its way, and the way it takes. */
const key = (on: Pen, [x, y]: Point, [u, v]: Point): void => {
  const [kx, ky] = [x + u * OFF, y + v * OFF];
  on.line('light', [[kx, ky], [x + u * 26, y + v * 26]]); // prettier-ignore
  on.line('emphasis', [[kx - v * 11, ky + u * 11], [kx + v * 11, ky - u * 11]]); // prettier-ignore
};

/**
 * The head from above with camera, key and nose, the key's height from the side, and the face's front to scale: where
 * the shadow of the nose's tip falls, and where the key shines in the eye.
 */
export const draw = (given: Given, results: Results, style: Style = {}): Sheet => {
  const from = given as unknown as Parameters<typeof formula.compute>[0];
  const { azimuth, elevation, turn, nose, face } = from;
  const on = pen(style);
  const show = (name: keyof typeof formula.outputs): string =>
    showResult(formula.outputs[name], results[name], style);
  const hand = (radians: number): string =>
    Math.abs(radians) < 1e-9 ? '' : radians > 0 ? ' to camera-right' : ' to camera-left';

  // From above, the camera below: camera-right is right.
  on.text(ABOVE, 14, 'from above', 'middle');
  on.line('construction', [[ABOVE, MIDDLE], [ABOVE, MIDDLE + 60]]); // prettier-ignore
  camera(on, ABOVE, MIDDLE + 60, 100, 11, Math.PI / 2);
  const look: Point = [Math.sin(turn), Math.cos(turn)];
  oval(on, 'figure', ABOVE, MIDDLE, 17, 21, WHOLE);
  on.area('figure', [
    [ABOVE + look[1] * 6 + look[0] * 14, MIDDLE - look[0] * 6 + look[1] * 14],
    [ABOVE + look[0] * 28, MIDDLE + look[1] * 28],
    [ABOVE - look[1] * 6 + look[0] * 14, MIDDLE + look[0] * 6 + look[1] * 14],
  ]);
  on.line('construction', [
    [ABOVE + look[0] * 28, MIDDLE + look[1] * 28],
    [ABOVE + look[0] * 52, MIDDLE + look[1] * 52],
  ]);
  const round: Point = [Math.sin(azimuth), Math.cos(azimuth)];
  key(on, [ABOVE, MIDDLE], round);
  arc(on, [ABOVE, MIDDLE], 58, 0, azimuth, [0, 1]);
  arc(on, [ABOVE, MIDDLE], 42, 0, turn, [0, 1]);
  // To the left the sheet ends: there the key's name stands over it or under it, and not beside it.
  const [u, v] = round;
  const left = u < -0.3;
  on.text(
    ABOVE + u * (left ? OFF : OFF + 8),
    MIDDLE + v * (OFF + 8) + 4 + (left ? (v < 0 ? -14 : 14) : 0),
    `key ${angle(azimuth, style)}`,
    u > 0.2 ? 'start' : 'middle',
  );
  on.text(4, 202, `nose ${angle(turn, style)}${hand(turn)}`);

  // From the side, in the upright plane through face and key.
  on.text(SIDE - 30, 14, 'from the side', 'middle');
  on.line('construction', [[SIDE - 92, MIDDLE], [SIDE + 30, MIDDLE]]); // prettier-ignore
  oval(on, 'figure', SIDE + 14, MIDDLE - 2, 24, 26, WHOLE);
  on.area('figure', [
    [SIDE - 7, MIDDLE + 2],
    [SIDE - 15, MIDDLE + 9],
    [SIDE - 6, MIDDLE + 12],
  ]);
  const up: Point = [-Math.cos(elevation), -Math.sin(elevation)];
  key(on, [SIDE, MIDDLE], up);
  arc(on, [SIDE, MIDDLE], 52, -1 * elevation, 0, [-1, 0]);
  on.text(
    SIDE - 56,
    194,
    `key ${angle(elevation, style)} ${elevation < 0 ? 'down' : 'up'}`,
    'middle',
  );

  // The front of the face to scale, as one sees it who stands before the nose.
  const [right, down] = [-Number(results['across']), Number(results['down'])];
  const far = Math.max(Math.abs(right), Math.abs(down));
  const most = 4 * nose;
  const [short, room] = [far <= most, Math.max(nose * 1.7, Math.min(far, most))];
  const scale = scaleFor(64 / room);
  const n = nose * scale;
  const at = (x: number, y: number): Point => [TIP_X + x, TIP_Y + y];
  const edge = (face / 2) * scale;
  for (const side of [-1, 1])
    on.line('construction', [[TIP_X + side * edge, FRONT[1]], [TIP_X + side * edge, FRONT[1] + 44]], FRONT); // prettier-ignore
  // Where the shadow's end lies, or far along its way.
  const along = Math.hypot(right, down) || 1;
  const way: Point = Number.isFinite(along)
    ? [right / along, down / along]
    : [Math.sign(right) * (Math.abs(right) === Infinity ? 1 : 0), 0];
  const end: Point = short ? [right * scale, down * scale] : [way[0] * 4 * n, way[1] * 4 * n];
  const [root, wings] = [-1.5 * n, 0.22 * n] as const;
  const dark = far > 1e-9;
  if (dark) {
    // The shadow of the ridge: from its root to the tip's shadow, and back under the wings.
    on.area('shade', [at(0, root), at(...end), at(0.5 * n, wings)], FRONT);
    on.area('shade', [at(0, root), at(...end), at(-0.5 * n, wings)], FRONT);
  }
  on.area('object', [at(0, root), at(0.5 * n, wings), at(0, 0.4 * n), at(-0.5 * n, wings)], FRONT);
  on.ring('object', [at(0, root), at(0.5 * n, wings), at(0, 0.4 * n), at(-0.5 * n, wings)], FRONT);
  disc(on, 'ground', TIP_X, TIP_Y, 2.5, true);
  if (dark) on.line('light', [at(0, 0), at(...end)], FRONT);
  if (!short) arrow(on, 'light', ...at(end[0] * 0.9, end[1] * 0.9), ...at(...end));
  else {
    disc(on, 'emphasis', TIP_X + end[0], TIP_Y + end[1], 3);
    if (Math.abs(end[0]) > 0.5)
      level(on, 392, Math.min(TIP_X, TIP_X + end[0]), Math.max(TIP_X, TIP_X + end[0]), writeQuantity(Math.abs(right), 'mm', { significant: 3 }, style)); // prettier-ignore
    if (Math.abs(end[1]) > 0.5)
      upright(on, 194, TIP_Y + Math.min(0, end[1]), TIP_Y + Math.max(0, end[1]), writeQuantity(Math.abs(down), 'mm', { significant: 3 }, style)); // prettier-ignore
  }
  on.text(TIP_X, 224, 'the front of the face', 'middle');
  bar(on, 8, 412, scale);

  // The eye, much enlarged: the cornea and the key's image in it.
  on.text(EYE[0], 224, 'in the eye', 'middle');
  disc(on, 'object', ...EYE, CORNEA);
  on.line('construction', [[EYE[0], EYE[1] - CORNEA], [EYE[0], EYE[1] + CORNEA]]); // prettier-ignore
  on.line('construction', [[EYE[0] - CORNEA, EYE[1]], [EYE[0] + CORNEA, EYE[1]]]); // prettier-ignore
  const [cx, cy] = [Number(results['catchX']), Number(results['catchY'])];
  disc(on, 'light', EYE[0] + cx * CORNEA, EYE[1] - cy * CORNEA, 4, true);
  disc(on, 'emphasis', EYE[0] + cx * CORNEA, EYE[1] - cy * CORNEA, 4);
  const out = writeQuantity(Math.hypot(cx, cy), '1', { decimals: 2 }, style);
  on.text(EYE[0], EYE[1] + CORNEA + 22, `${out} of its radius`, 'middle');
  on.text(356, 412, show('pattern'), 'end', 'emphasis');

  const shadow = short
    ? `The shadow of the nose’s tip falls ${writeQuantity(Math.abs(right), 'mm', { significant: 3 }, style)} ${right > 0 ? 'to camera-right' : 'to camera-left'} and ${writeQuantity(Math.abs(down), 'mm', { significant: 3 }, style)} ${down < 0 ? 'up' : 'down'}`
    : 'The shadow of the nose’s tip runs off the face';
  return {
    width: WIDTH,
    height: 420,
    marks: on.marks,
    says: `The head from above and from the side: key ${angle(azimuth, style)}${hand(azimuth)} and ${angle(elevation, style)} ${elevation < 0 ? 'below' : 'above'} the eyes, nose ${angle(turn, style)}${hand(turn)}. ${shadow}: ${show('pattern')} light${results['side'] === 'neither' ? '' : `, ${show('side')} side lit`}. The key shines in the eye ${out} of the cornea’s radius from its middle.`,
    table: {
      head: ['plane of the face', 'angle to the key'],
      rows: [
        ['forehead', show('forehead')],
        ['side of the nose, camera-left', show('noseLeft')],
        ['side of the nose, camera-right', show('noseRight')],
        ['cheek, camera-left', show('cheekLeft')],
        ['cheek, camera-right', show('cheekRight')],
      ],
    },
  };
};
