import type { Style } from '../formula/show.ts';
import { framed, type Aspect, type Format, type Orientation } from '../optics/lens/frame.ts';
import { imageDistance } from '../optics/lens/thin-lens.ts';
import type { Length } from '../formula/quantities.ts';
import { camera, fromSide } from './camera.ts';
import type { Box, Point } from './clip.ts';
import { across, upright } from './dimension.ts';
import { figure, oval } from './figure.ts';
import { finder, rim } from './finder.ts';
import { corners, pen, WIDTH } from './pen.ts';
import { bar, scaleFor } from './scale.ts';
import type { Sheet } from './sheet.ts';

interface Framing {
  readonly format: Format;
  readonly orientation: Orientation;
  readonly aspect: Aspect | null;
  readonly f: Length;
  /** From the lens; may be infinite. */
  readonly s: Length;
  /** The three numbers drawn, as the results are written. */
  readonly distance: string;
  readonly wide: string;
  readonly high: string;
  /** Who sits there, from the front and from the side, the word for it, and whether it has button eyes. */
  readonly sitter: readonly [front: string, side: string, name: string, buttons?: true];
}

/** The lens at the sitter's eye height, level: eyes 0.41 m over a seat 0.20 m high. */
const EYE = 0.41;
const SEAT = 0.2;
const [LENS, AXIS, REACH] = [32, 92, 148];
const VIEW: Box = [4, 8, 252, 171];

/** A level camera and its sitter from the side, and beside it the frame as seen: what two formulas share. */
export const framing = (given: Framing, style: Style): Sheet => {
  const {
    f,
    s,
    distance,
    wide,
    high,
    orientation,
    sitter: [front, side, name, buttons],
  } = given;
  const on = pen(style);
  const v = imageDistance({ f, s });
  const seen = finder(given, [258, AXIS - 72, 354, AXIS + 72]);
  const slope = seen.frame.up / 2 / v;
  const whole = framed({ ...given, aspect: null }).up / 2 / v;
  const near = Number.isFinite(s);
  const scale = near ? scaleFor(Math.min(REACH / s, 68 / (s * whole))) : 0;
  const run = near ? scale * s : Math.min(REACH, 68 / whole);
  const plane = LENS + run;
  const half = run * slope;
  const place = (x: number, y: number): Point => [plane + x * scale, AXIS + (EYE - y) * scale];
  const foot = AXIS + (EYE + SEAT) * scale;

  // From the side.
  if (near) {
    on.solid(
      corners([-0.3, 0, 0.3, -SEAT]).map(([x, y]) => place(x, y)),
      VIEW,
    );
    if (foot < VIEW[3])
      on.line('ground', [
        [LENS - 20, foot],
        [244, foot],
      ]);
  }
  on.area('light', [
    [LENS, AXIS],
    [plane, AXIS - half],
    [plane, AXIS + half],
  ]);
  if (near) figure(on, side, place, VIEW);
  for (const sign of [1, -1]) {
    on.line('light', [
      [LENS, AXIS],
      [plane, AXIS + sign * half],
    ]);
    if (seen.cropped)
      on.line('hidden', [
        [LENS, AXIS],
        [plane, AXIS + sign * run * whole],
      ]);
  }
  on.line('construction', [
    [LENS, AXIS],
    [plane, AXIS],
  ]);
  if (near)
    on.line('frame', [
      [plane, AXIS - half],
      [plane, AXIS + half],
    ]);
  camera(on, LENS, AXIS, scale, fromSide(orientation));
  // Close up the sitter takes the room behind the frame, and its height is written before it.
  const close = scale > 180;
  upright(
    on,
    close
      ? Math.max(60, plane - 0.03 * scale)
      : Math.min(plane + Math.max(0.3 * scale, 4) + 8, 200),
    AXIS - half,
    AXIS + half,
    high,
    close,
  );
  const low = Math.min(AXIS + Math.max(run * whole, near ? (EYE + SEAT) * scale : 0, 24), 168) + 22;
  on.line('construction', [
    [LENS, AXIS + 8],
    [LENS, low + 4],
  ]);
  on.line('construction', [
    [plane, AXIS + half],
    [plane, low + 4],
  ]);
  across(on, low, LENS, plane, distance);
  if (near) bar(on, 8, 216, scale);

  // As the camera sees it.
  if (near) {
    const sensor = (v / s) * seen.scale;
    const at = (x: number, y: number): Point => [
      seen.middle[0] + x * sensor,
      seen.middle[1] + (EYE - y) * sensor,
    ];
    on.solid(
      corners([-0.3, 0, 0.3, -SEAT]).map(([x, y]) => at(x, y)),
      seen.whole,
    );
    figure(on, front, at, seen.whole);

    if (buttons)
      for (const x of [-0.035, 0.035]) {
        const [u, y] = at(x, EYE);
        oval(on, 'ground', u, y, 0.008 * sensor, 0.008 * sensor, seen.whole);
      }
  }
  rim(on, seen);
  across(on, seen.whole[3] + 20, seen.print[0], seen.print[2], wide);
  on.text(
    306,
    Math.max(seen.whole[3] + 40, 200),
    seen.cropped ? 'dashed: the print' : 'what it sees',
    'middle',
  );

  const held = orientation === 'portrait' ? 'upright' : 'lying';
  return {
    width: WIDTH,
    height: 222,
    marks: on.marks,
    says: `The camera, ${held}, with ${on.mm(f)} stands ${distance} from the ${name}. Its frame there is ${wide} wide and ${high} high${seen.cropped ? ', as cropped for the print; the whole frame is drawn around it' : ''}.`,
    table: {
      head: ['drawn', 'length'],
      rows: [
        [`lens to the ${name}`, distance],
        ['frame width', wide],
        ['frame height', high],
        ['focal length', on.mm(f)],
      ],
    },
  };
};
