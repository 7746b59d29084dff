import type { Given, Results } from '../formula/record.ts';
import { showResult, type Style } from '../formula/show.ts';
import { framed } from '../optics/lens/frame.ts';
import formula from '../optics/lens/room-fit.ts';
import { sensorToSubject, subjectDistance } from '../optics/lens/thin-lens.ts';
import type { Length, Ratio } from '../formula/quantities.ts';
import { camera, fromAbove } from './camera.ts';
import type { Box } from './clip.ts';
import { across, chain } from './dimension.ts';
import { fromOver } from './figure.ts';
import { corners, pen, WIDTH } from './pen.ts';
import { bar, scaleFor } from './scale.ts';
import type { Sheet } from './sheet.ts';

const AXIS = 106;
const VIEW: Box = [4, 8, 356, 204];

/** The room from above: backdrop wall on the right, the camera as far back as it must be, and what then sticks out. */
export const draw = (given: Given, results: Results, style: Style = {}): Sheet => {
  const from = given as unknown as Parameters<typeof formula.compute>[0];
  const { H, f, a = 0, b = 0, c = 0, roomLength, roomWidth, k, orientation } = from;
  const on = pen(style);
  const show = (key: 'longest' | 'needed' | 'spare'): string =>
    showResult(formula.outputs[key], results[key], style);
  // Without a lens the longest that fits is drawn; without either, the set alone.
  const lens = (f ?? (results['longest'] as number | undefined) ?? 0) as Length;
  const { across: wide, up } = framed(from);
  const m = (up / H) as Ratio;
  const s = lens > 0 ? subjectDistance({ f: lens, m }) : 0;
  const D = lens > 0 ? sensorToSubject({ f: lens, m }) : 0;
  const W = wide / m;
  const atBackdrop = s > 0 ? (W * (s + b)) / s : W;
  const deep = a + b + D + c;
  const length = Math.max(roomLength ?? 0, deep, 0.01);
  const breadth = Math.max(roomWidth ?? 0, atBackdrop, W + 2 * (k ?? 0));
  const scale = scaleFor(Math.min(330 / length, Math.max(190 / breadth, 100 / length)));

  const wall = 180 + (length * scale) / 2;
  const x = (metres: number): number => wall - metres * scale;
  const y = (metres: number): number => AXIS + metres * scale;
  const [backdrop, child, sensor, front, back] = [
    x(a),
    x(a + b),
    x(a + b + D),
    x(a + b + s),
    x(deep),
  ];
  const end = x(roomLength ?? deep);
  const side = roomWidth === undefined ? undefined : (roomWidth * scale) / 2;
  const sides = (half: number): readonly [number, number] => [
    Math.max(VIEW[1], AXIS - half),
    Math.min(VIEW[3], AXIS + half),
  ];
  const [over, under] = sides(side ?? 98);

  on.area('ground', corners([end, over, wall, under]));
  if (k !== undefined)
    for (const sign of [-1, 1]) {
      const zone = [
        [child - 0.32 * scale, y((sign * W) / 2)],
        [child + 0.32 * scale, y((sign * W) / 2)],
        [child + 0.32 * scale, y(sign * (W / 2 + k))],
        [child - 0.32 * scale, y(sign * (W / 2 + k))],
      ] as const;
      on.area('light', zone, VIEW);
      on.ring('light', zone, VIEW);
      if (side !== undefined && (W / 2 + k) * scale > side) {
        const out = [AXIS + sign * side, y(sign * (W / 2 + k))] as const;
        on.line(
          'emphasis',
          [
            [child, out[0]],
            [child, out[1]],
          ],
          VIEW,
        );
      }
      if (k * scale > 22)
        on.text(
          child,
          Math.max(24, Math.min(196, y(sign * (W / 2 + k / 2)) + 4)),
          'light',
          'middle',
        );
    }
  if (lens > 0) {
    on.area(
      'light',
      [
        [front, AXIS],
        [backdrop, y(atBackdrop / 2)],
        [backdrop, y(-atBackdrop / 2)],
      ],
      VIEW,
    );
    for (const sign of [-1, 1])
      on.line(
        'light',
        [
          [front, AXIS],
          [backdrop, y((sign * atBackdrop) / 2)],
        ],
        VIEW,
      );
  }
  on.line(
    'frame',
    [
      [child, y(-W / 2)],
      [child, y(W / 2)],
    ],
    VIEW,
  );
  fromOver(on, child, AXIS, scale, VIEW);
  on.line(
    'object',
    [
      [backdrop, y(-atBackdrop / 2)],
      [backdrop, y(atBackdrop / 2)],
    ],
    VIEW,
  );
  if (lens > 0) {
    camera(on, front, AXIS, scale, fromAbove(orientation));
    if (c > 0)
      on.ring(
        'hidden',
        corners([
          back,
          AXIS - Math.min(0.35 * scale, 40),
          sensor,
          AXIS + Math.min(0.35 * scale, 40),
        ]),
      );
  }
  // The walls; a dashed one where the length of the room is not given.
  if (side !== undefined)
    for (const w of [AXIS - side, AXIS + side])
      on.line(
        'object',
        [
          [end, w],
          [wall, w],
        ],
        VIEW,
      );
  on.line('object', [
    [wall, over],
    [wall, under],
  ]);
  on.line(roomLength === undefined ? 'hidden' : 'object', [
    [end, over],
    [end, under],
  ]);
  if (roomLength !== undefined && deep > roomLength)
    on.line('emphasis', [
      [end, AXIS],
      [back, AXIS],
    ]);

  const parts = (
    [
      ['c', c, back],
      ['D', D, sensor],
      ['b', b, child],
      ['a', a, backdrop],
    ] as const
  ).filter(([, size]) => size > 0);
  chain(
    on,
    226,
    [...parts.map(([, , at]) => at), wall],
    parts.map(([, size]) => on.length(size)),
  );
  const spare = results['spare'] as number | undefined;
  const verdict =
    spare === undefined
      ? ''
      : `, ${on.length(Math.abs(spare), { decimals: 2 })} ${spare < 0 ? 'short' : 'spare'}`;
  if (roomLength !== undefined)
    across(on, 264, end, wall, `room ${on.length(roomLength)}${verdict}`);
  bar(on, 8, 286, scale);

  const yes = (key: 'clear' | 'light'): string =>
    showResult(formula.outputs[key], results[key], style);
  return {
    width: WIDTH,
    height: 292,
    marks: on.marks,
    says: `The room from above, the backdrop's wall on the right. ${f === undefined ? `The longest lens that fits, ${show('longest')}, is drawn.` : `With ${on.mm(f)} it needs ${show('needed')} from wall to wall${spare === undefined ? '.' : spare < 0 ? `; the room is ${on.length(-spare, { decimals: 2 })} short.` : `; ${show('spare')} is left over.`}`} Side walls out of the picture: ${yes('clear')}; a light fits beside and above: ${yes('light')}.`,
    table: {
      head: ['drawn', 'length'],
      rows: [
        ...parts.map(([key, size]) => [
          { c: 'camera room', D: 'sensor to child', b: 'child to backdrop', a: 'backdrop to wall' }[
            key
          ],
          on.length(size),
        ]),
        ['frame width at the child', on.length(W)],
        ['width in view at the backdrop', on.length(atBackdrop)],
        ['length needed', show('needed')],
        ['spare', show('spare')],
        ['longest focal length', show('longest')],
      ],
    },
  };
};
