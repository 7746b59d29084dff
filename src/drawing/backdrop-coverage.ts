import type { Length } from '../formula/quantities.ts';
import type { Given, Results } from '../formula/record.ts';
import { showResult, type Style } from '../formula/show.ts';
import formula from '../optics/lens/backdrop-coverage.ts';
import { fromLens } from '../optics/lens/measured-from.ts';
import { imageDistance } from '../optics/lens/thin-lens.ts';
import { camera, fromAbove, fromSide } from './camera.ts';
import type { Box, Point } from './clip.ts';
import { chain } from './dimension.ts';
import { CHILD, CHILD_SIDE, figure, fromOver } from './figure.ts';
import { finder, rim } from './finder.ts';
import { corners, pen, WIDTH } from './pen.ts';
import { bar, scaleFor } from './scale.ts';
import type { Sheet } from './sheet.ts';

const LENS = 30;
const FLOOR = 166;
const MIDDLE = 256;
const SIDE: Box = [4, 8, 248, 172];
const PLAN: Box = [4, 178, 248, 334];

/** The backdrop from the side and from above, to one scale, and in the frame: what is covered and what is not. */
export const draw = (given: Given, results: Results, style: Style = {}): Sheet => {
  const from = given as unknown as Parameters<typeof formula.compute>[0];
  const { f, b, c, aim, platform, e, width, height, orientation } = from;
  const { viewWidth, viewHeight, lowerEdge, upperEdge, spareSide, spareTop, floorLine, tilt } =
    results as unknown as Readonly<Record<'viewWidth' | 'viewHeight' | 'tilt', number>> &
      Readonly<
        Record<
          'lowerEdge' | 'upperEdge' | 'spareSide' | 'spareTop' | 'floorLine',
          number | undefined
        >
      >;
  const show = (key: keyof typeof formula.outputs): string =>
    showResult(formula.outputs[key], results[key], style);
  const on = pen(style);
  const s = fromLens(from);
  const far = s + b;
  // Heights count from the floor, or from the lens where its height is not given.
  const lens = c ?? 0;
  const low = lowerEdge ?? -viewHeight / 2;
  const high = upperEdge ?? viewHeight / 2;
  const wide = width ?? viewWidth * 2;
  const tall = height ?? high;
  const edges = [e - wide / 2, e + wide / 2] as const;

  const need = Math.max(
    Math.max(high, lens, c === undefined ? 0 : tall) - Math.min(low, 0),
    wide + 2 * Math.abs(e),
    viewWidth,
  );
  const scale = scaleFor(Math.min(196 / far, 134 / Math.abs(lens), Math.max(152 / need, 80 / far)));
  const child = LENS + s * scale;
  const wall = LENS + far * scale;

  // From the side.
  // A camera under the floor, as before a stage, lifts the floor in its view.
  const base = c === undefined ? 90 : FLOOR + Math.min(0, lens) * scale;
  const up = (metres: number): number => base - metres * scale;
  const air: Box = c === undefined ? SIDE : [SIDE[0], SIDE[1], SIDE[2], FLOOR];
  const eye: Point = [LENS, up(lens)];
  on.area('light', [eye, [wall, up(high)], [wall, up(low)]], air);
  if (c !== undefined) {
    on.line('ground', [
      [SIDE[0], base],
      [SIDE[2], base],
    ]);
    on.solid(corners([child - 0.3 * scale, up(platform), child + 0.3 * scale, base]), air);
    figure(on, CHILD_SIDE, (x, y) => [child + x * scale, up(platform + y)], air);
    // The camera's height stands at the sheet's edge, its number under the floor: clear of every ray.
    on.line(
      'dimension',
      [
        [8, base],
        [8, up(lens)],
      ],
      air,
    );
    on.line(
      'dimension',
      [
        [4, up(lens)],
        [14, up(lens)],
      ],
      air,
    );
    on.text(4, FLOOR + 14, on.length(lens));
    if (height !== undefined)
      on.line(
        'object',
        [
          [wall, base],
          [wall, up(height)],
        ],
        air,
      );
  }
  for (const y of [high, low]) on.line('light', [eye, [wall, up(y)]], air);
  on.line('construction', [eye, [wall, up(lens + far * Math.tan(tilt))]], air);
  if (height !== undefined && c !== undefined && high > height)
    on.line(
      'emphasis',
      [
        [wall, up(Math.max(height, low))],
        [wall, up(high)],
      ],
      air,
    );
  camera(on, ...eye, scale, fromSide(orientation), tilt);
  if (Math.abs(tilt) > 0.0005) on.text(6, up(lens) - 14, `tilt ${show('tilt')}`);
  const room = b * scale > 62;
  if (room)
    on.text(
      wall - 6,
      Math.max(24, Math.min(160, up((Math.max(low, c === undefined ? low : 0) + high) / 2) - 10)),
      show('viewHeight'),
      'end',
    );

  // From above.
  const aside = (metres: number): number => MIDDLE + metres * scale;
  on.area(
    'light',
    [
      [LENS, MIDDLE],
      [wall, aside(viewWidth / 2)],
      [wall, aside(-viewWidth / 2)],
    ],
    PLAN,
  );
  fromOver(on, child, aside(e), scale, PLAN);
  if (width !== undefined)
    on.line(
      'object',
      [
        [wall, aside(edges[0])],
        [wall, aside(edges[1])],
      ],
      PLAN,
    );
  for (const sign of [-1, 1]) {
    on.line(
      'light',
      [
        [LENS, MIDDLE],
        [wall, aside((sign * viewWidth) / 2)],
      ],
      PLAN,
    );
    const end = sign * (sign < 0 ? edges[0] : edges[1]);
    if (width !== undefined && end < viewWidth / 2)
      on.line(
        'emphasis',
        [
          [wall, aside(sign * Math.max(end, -viewWidth / 2))],
          [wall, aside((sign * viewWidth) / 2)],
        ],
        PLAN,
      );
  }
  on.line('construction', [
    [LENS, MIDDLE],
    [wall, MIDDLE],
  ]);
  camera(on, LENS, MIDDLE, scale, fromAbove(orientation));
  if (room) on.text(wall - 6, MIDDLE - 5, show('viewWidth'), 'end');
  on.line('construction', [
    [LENS, MIDDLE + 10],
    [LENS, 352],
  ]);
  on.line('construction', [
    [child, MIDDLE + 10],
    [child, 352],
  ]);
  on.line('construction', [
    [wall, MIDDLE],
    [wall, 352],
  ]);
  chain(on, 348, [LENS, child, wall], [on.length(s), on.length(b)]);
  bar(on, 8, 382, scale);

  // As the camera sees it.
  const seen = finder(from, [258, 8, 354, 152]);
  const v = imageDistance({ f, s: Math.hypot(s, aim === undefined ? 0 : aim - lens) as Length });
  const forward = (y: number, z: number): number =>
    z * Math.cos(tilt) + (y - lens) * Math.sin(tilt);
  const project = (x: number, y: number, z: number): Point => {
    const k = (seen.scale * v) / forward(y, z);
    return [
      seen.middle[0] + k * x,
      seen.middle[1] - k * ((y - lens) * Math.cos(tilt) - z * Math.sin(tilt)),
    ];
  };
  const [left, top, right, bottom] = seen.print;
  const ground = bottom - (floorLine ?? 0) * (bottom - top);
  on.area('ground', corners([left, ground, right, bottom]));
  const foot = c === undefined ? low : Math.max(0, low);
  const crown = Math.min(tall, high);
  const cloth =
    crown > foot
      ? (
          [
            [edges[0], foot],
            [edges[0], crown],
            [edges[1], crown],
            [edges[1], foot],
          ] as const
        ).map(([x, y]) => project(x, y, far))
      : [];
  on.area('shade', cloth, seen.print);
  // A stroke every sixth unit, wherever the frame sees neither cloth nor floor.
  const [a, d] = [cloth[0] ?? [left, ground], cloth[1] ?? [left, ground]];
  const [a2, d2] = [cloth[3] ?? a, cloth[2] ?? d];
  let strokes = '';
  for (let y = top + 3; y < ground; y += 6) {
    const t = (y - a[1]) / (d[1] - a[1]);
    const covered = y >= d[1] && cloth.length > 0;
    const [x1, x2] = covered
      ? [a[0] + (d[0] - a[0]) * t, a2[0] + (d2[0] - a2[0]) * t]
      : [right, right];
    if (x1 > left + 0.01)
      strokes += `M${left.toFixed(2)} ${y.toFixed(2)}H${Math.min(x1, right).toFixed(2)}`;
    if (x2 < right - 0.01)
      strokes += `M${Math.max(x2, left).toFixed(2)} ${y.toFixed(2)}H${right.toFixed(2)}`;
  }
  if (strokes) on.path('light', strokes);
  for (const i of tall < high ? [0, 1, 2] : [0, 2])
    on.line('object', cloth.slice(i, i + 2), seen.print);
  // A sitter behind the plane of the lens is not in the picture.
  if (c !== undefined && Math.min(forward(0, s), forward(platform + 0.51, s)) > 0.05 * s) {
    on.solid(
      corners([-0.3, platform, 0.3, 0]).map(([x, y]) => project(e + x, y, s)),
      seen.print,
    );
    figure(on, CHILD, (x, y) => project(e + x, platform + y, s), seen.print);
  }
  rim(on, seen);

  let line = seen.whole[3] + 18;
  const word = (text: string, bad = false): void => {
    on.text(306, line, text, 'middle', bad ? 'emphasis' : undefined);
    line += 15;
  };
  const verdict = (name: string, spare: number | undefined): void => {
    if (spare === undefined) return;
    word(name);
    word(
      `${on.length(Math.abs(spare), { decimals: 2 })} ${spare < 0 ? 'short' : 'spare'}`,
      spare < 0,
    );
    line += 4;
  };
  word(`${show('viewWidth')} wide`);
  word(`${show('viewHeight')} high`);
  line += 4;
  verdict('each side', spareSide);
  verdict('above', spareTop);
  if (floorLine) {
    word('floor in frame');
    word(show('floorLine'));
  }

  const short = [
    spareSide !== undefined &&
      spareSide < 0 &&
      `${on.length(-spareSide, { decimals: 2 })} short at the tighter side`,
    spareTop !== undefined &&
      spareTop < 0 &&
      `${on.length(-spareTop, { decimals: 2 })} short above`,
  ].filter(Boolean);
  return {
    width: WIDTH,
    height: 388,
    marks: on.marks,
    says: `From the side, from above and in the frame: at ${on.length(far)} the camera sees ${show('viewWidth')} of backdrop across and ${show('viewHeight')} up. ${width === undefined && height === undefined ? '' : short.length ? `With the margin the backdrop is ${short.join(' and ')}.` : 'With the margin the backdrop covers it.'}`,
    table: {
      head: ['drawn', 'value'],
      rows: Object.entries(formula.outputs)
        .filter(([key]) => results[key] !== undefined)
        .map(([key, { name }]) => [name, show(key as never)]),
    },
  };
};
