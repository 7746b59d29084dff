import type { Given, Results } from '../formula/record.ts';
import { writeQuantity } from '../formula/notation/write.ts';
import { showResult, type Style } from '../formula/show.ts';
import formula from '../optics/light/beam-spread.ts';
import type { Box, Point } from './clip.ts';
import { disc } from './disc.ts';
import { pen, WIDTH } from './pen.ts';
import { bar } from './scale.ts';
import { along, leader, placeLabels } from './scene/label.ts';
import type { Place, Scene } from './scene/scene.ts';
import { setOut } from './scene/set-out.ts';
import { measure, stroke } from './scene/stroke.ts';
import type { Sheet } from './sheet.ts';

type From = Parameters<typeof formula.compute>[0];

/** The section through the axis, and the backdrop seen from in front beside it: one scale, level with one another. */
const SECTION: Box = [4, 8, 226, 258];
const FRONT: Box = [240, 8, WIDTH - 4, 258];
/** A spot that never closes is drawn to the sheet’s edge. */
const OPEN = 1e4;

const ellipse = (x: number, y: number, rx: number, ry: number): Point[] =>
  Array.from({ length: 64 }, (_, i): Point => {
    const turn = (i * Math.PI) / 32;
    return [
      Math.round((x + rx * Math.cos(turn)) * 100) / 100,
      Math.round((y + ry * Math.sin(turn)) * 100) / 100,
    ];
  });

/** The cone on the backdrop, cut along its tilt, and the spot as one who faces the backdrop sees it. */
export const draw = (given: Given, results: Results, style: Style = {}): Sheet => {
  const from = given as unknown as From;
  const { angle, opening } = from;
  const D: number = from.D;
  const tilt: number = from.tilt;
  const on = pen(style);
  const show = (key: keyof typeof formula.outputs): string =>
    showResult(formula.outputs[key], results[key], style);
  const degrees = (x: number): string =>
    writeQuantity(x, 'deg', { significant: 3 }, { ...style, exact: true });
  const [width, length, offset] = (['width', 'length', 'offset'] as const).map((key) =>
    Number(results[key]),
  ) as [number, number, number];
  const open = !Number.isFinite(width);
  // Under half a millimetre it is the point aimed at.
  const beyond = Math.abs(offset) < 5e-4 ? '' : show('offset');
  const front = opening ?? 0;
  // The light stands on one side of the point aimed at, and the spot runs out on the other.
  const light: Place = { behind: -D * Math.cos(tilt), aside: -D * Math.sin(tilt), height: 0 };
  const aim: Place = { behind: 0, aside: 0, height: 0 };
  const sign = tilt < 0 ? -1 : 1;
  const middle = open ? 0 : sign * Math.abs(offset);
  const tall = open ? 2 * D : Math.min(length, 6 * D);
  const scene: Scene = {
    backdrop: { behind: 0 },
    lights: [
      {
        name: 'light',
        source: angle < 1.1 ? 'grid' : 'standard reflector',
        at: light,
        aim,
        width: front,
        beams: [{ angle }],
      },
    ],
  };
  const half = Math.max(
    Math.abs(light.aside) + Math.max(front / 2, 0.12),
    Math.abs(middle) + tall / 2,
    0.05,
  );
  const set = setOut(
    on,
    scene,
    { columns: [SECTION[0], SECTION[2]], plan: [SECTION[1], SECTION[3]] },
    {
      // No wider than what the front view has room for.
      behind: [
        Math.min(
          light.behind - Math.max(0.3, front / 2),
          -(open ? tall : Math.min(width, 6 * D)) * 1.75,
        ),
        0.02,
      ],
      aside: [-half, half],
      height: [0, 1],
    },
  );
  const view = set.plan;
  const { scale } = set;
  if (view) {
    stroke(on, 'construction', view.at(light), view.at(aim), view.box);
    along(view.at(light), view.at(aim), view.box).forEach(set.keep);
    const [x0, y0] = view.at(aim);
    const [lx, ly] = view.at(light);
    set.label({
      text: `${on.length(D)} along the axis`,
      at: [(lx + x0) / 2, (ly + y0) / 2],
      clear: 4,
      side: 'under',
    });
    if (Math.abs(tilt) > 0.02) {
      // Square to the backdrop, and how far the axis is off it.
      const foot: Point = [Math.max(SECTION[0], x0 - Math.min(60, x0 - lx + 20)), y0];
      stroke(on, 'construction', [x0, y0], foot, view.box);
      set.label({ text: `tilt ${degrees(Math.abs(tilt))}`, at: foot, clear: 3, side: 'left' });
    }
    // The spot as a length on the backdrop.
    const ends = [middle - tall / 2, middle + tall / 2].map((q) =>
      view.onto([0, Math.max(-OPEN, Math.min(OPEN, q))]),
    );
    const [a = [0, 0], b = [0, 0]] = ends as readonly Point[];
    stroke(on, 'emphasis', a, b, [view.box[0], view.box[1], view.box[2] + 4, view.box[3]]);
    set.label({ text: `beam ${degrees(angle)}`, at: [(lx + a[0]) / 2, (ly + a[1]) / 2] });
    set.write(SECTION);

    // From in front: as high on the sheet as beside it.
    const x = (FRONT[0] + FRONT[2]) / 2;
    on.area('shade', [
      [FRONT[0], FRONT[1]],
      [FRONT[2], FRONT[1]],
      [FRONT[2], FRONT[3]],
      [FRONT[0], FRONT[3]],
    ]);
    const spot = open
      ? [
          [FRONT[0], y0] as Point,
          [FRONT[2], y0] as Point,
          [FRONT[2], sign < 0 ? FRONT[1] : FRONT[3]] as Point,
          [FRONT[0], sign < 0 ? FRONT[1] : FRONT[3]] as Point,
        ]
      : ellipse(
          x,
          y0 + middle * scale,
          Math.min((width / 2) * scale, 900),
          Math.min((length / 2) * scale, 900),
        );
    on.area('light', spot, FRONT);
    if (!open) on.ring('emphasis', spot, FRONT);
    if (front > 0 && (front / 2) * scale < 60) disc(on, 'hidden', x, y0, (front / 2) * scale);
    for (const [dx, dy] of [
      [5, 0],
      [0, 5],
    ] as const)
      on.line('object', [
        [x - dx, y0 - dy],
        [x + dx, y0 + dy],
      ]);
    // How wide it is under it, how long beside the section.
    const under = Math.min(FRONT[3] - 18, (b[1] > a[1] ? b[1] : a[1]) + 12);
    if (!open && width * scale < FRONT[2] - FRONT[0])
      measure(
        on,
        [x - (width / 2) * scale, under],
        [x + (width / 2) * scale, under],
        [FRONT[0] - 4, FRONT[1], FRONT[2] + 4, FRONT[3]],
      );
    const labels = placeLabels(
      [
        {
          text: open ? 'no far edge' : `${show('width')} wide`,
          at: [x, under],
          clear: 1,
          side: 'under',
          role: 'emphasis',
        },
        ...(front > 0 ? [{ text: 'opening', at: [x, y0] as Point, clear: 6 } as const] : []),
      ],
      open
        ? []
        : [[x - (width / 2) * scale, a[1], x + (width / 2) * scale, b[1]] as Box].filter(
            ([left, top, right, bottom]) => right - left < 80 && bottom - top < 160,
          ),
      FRONT,
    );
    for (const label of labels) {
      const line = leader(label);
      if (line) on.line('dimension', line);
      on.text(label.x, label.y, label.text, 'start', label.role);
    }
  }
  bar(on, 8, 290, scale);
  on.text(
    WIDTH - 4,
    276,
    open
      ? 'its far side misses the backdrop'
      : `spot ${show('length')} by ${show('width')}${beyond === '' ? '' : `, ${beyond} off the aim`}`,
    'end',
    'emphasis',
  );
  const close = front > 0 && D < 5 * front;
  const note = close
    ? 'within five openings: no cone yet'
    : results['edge'] === undefined
      ? undefined
      : `edge ${show('edge')} under the middle`;
  if (note !== undefined) on.text(WIDTH - 4, 293, note, 'end', close ? 'emphasis' : 'dimension');
  return {
    width: WIDTH,
    height: 300,
    marks: on.marks,
    says: open
      ? `A beam of ${degrees(angle)} at ${degrees(Math.abs(tilt))} off square never meets the backdrop on its far side: there is no closed spot.`
      : `A beam of ${degrees(angle)} from ${on.length(D)}, ${degrees(Math.abs(tilt))} off square, makes a spot ${show('width')} wide and ${show('length')} long. Its middle lies ${beyond === '' ? 'at' : `${beyond} beyond`} the point aimed at${front > 0 ? `; the opening is ${on.length(front)} wide` : ''}.`,
    table: {
      head: ['drawn', 'value'],
      rows: [
        ['beam', degrees(angle)],
        ['distance along the axis', on.length(D)],
        ['tilt', degrees(tilt)],
        ['opening', opening === undefined ? 'not given' : on.length(opening)],
        ...Object.entries(formula.outputs).map(([key, { name }]) => [name, show(key as never)]),
      ],
    },
  };
};
