import type { Given, Results } from '../formula/record.ts';
import { writeQuantity } from '../formula/notation/write.ts';
import { showResult, type Style } from '../formula/show.ts';
import { framed } from '../optics/lens/frame.ts';
import { imageDistance } from '../optics/lens/thin-lens.ts';
import formula from '../optics/light/rim-light.ts';
import type { Box, Point } from './clip.ts';
import { chain } from './dimension.ts';
import { disc } from './disc.ts';
import type { Handle } from './handle.ts';
import { pen, WIDTH } from './pen.ts';
import { bar } from './scale.ts';
import { along } from './scene/label.ts';
import { movable } from './scene/movable.ts';
import type { Scene } from './scene/scene.ts';
import { extentOf } from './scene/extent.ts';
import { setOut } from './scene/set-out.ts';
import { CROWN } from './scene/sitter.ts';
import { measure, stroke } from './scene/stroke.ts';
import { viewsFor, type Space } from './scene/views.ts';
import type { Sheet } from './sheet.ts';

const SPACE: Space = { columns: [4, WIDTH - 4], side: [6, 160], plan: [172, 382] };
/** The seat over the floor: as in the harbour set. */
const SEAT = 0.2;
/** The hair the light is aimed at; the lens is level with it, and so are the set’s edges. */
const HAIR = SEAT + CROWN - 0.05;
const STANDARD = (70 * Math.PI) / 180;

type From = Parameters<typeof formula.compute>[0];
/** The set’s lengths and the beam, free of their dimensions: drawing turns signs round. */
type Numbers = Readonly<Record<'behind' | 'aside' | 'height' | 'angle' | 'depth' | 'D', number>>;

const angleText = (angle: number, style: Style): string =>
  writeQuantity(angle, 'deg', { significant: 3 }, { ...style, exact: true });

/** The set as these numbers have it. */
const sceneOf = (from: From, style: Style, inFrame = false): Scene => {
  const { behind, aside, height, angle, depth, D }: Numbers = from;
  const v = imageDistance({ f: from.f, s: from.D });
  const { across, up } = framed({ ...from, aspect: null });
  const hair = { aside: 0, behind: 0, height: HAIR };
  return {
    platform: { front: -depth / 2, back: depth / 2, half: 0.5, top: SEAT },
    sitter: { kind: 'child', seat: { aside: 0, behind: 0, height: SEAT } },
    camera: {
      at: { aside: 0, behind: -D, height: HAIR },
      across: 2 * Math.atan(across / 2 / v),
      up: 2 * Math.atan(up / 2 / v),
      upright: from.orientation === 'portrait',
    },
    lights: [
      {
        name: inFrame ? 'rim light, in the picture' : 'rim light',
        source: angle < STANDARD * 0.9 ? 'grid' : 'standard reflector',
        at: { aside, behind, height: HAIR + height },
        aim: hair,
        width: 0.18,
        beams: [
          { angle, name: angleText(angle, style) },
          ...(Math.abs(angle - STANDARD) < 0.02
            ? []
            : [{ angle: STANDARD, name: 'reflector 70°', compared: true as const }]),
        ],
      },
    ],
  };
};

const edge = (behind: number) => ({ aside: 0, behind, height: HAIR });

/** The child’s set from the side and from above: what the rim light’s beam reaches, and what the camera sees of it. */
export const draw = (given: Given, results: Results, style: Style = {}): Sheet => {
  const from = given as unknown as From;
  const { behind, aside, height, angle, depth, D }: Numbers = from;
  const on = pen(style);
  const show = (key: keyof typeof formula.outputs): string =>
    showResult(formula.outputs[key], results[key], style);
  const turn = Number(results['round']);
  const round = `${showResult(formula.outputs.round, Math.abs(turn), style)} ${turn < 0 ? 'before' : 'behind'}`;
  const is = (key: 'back' | 'mid' | 'fore' | 'inFrame' | 'strikes'): boolean =>
    results[key] === true;
  const scene = sceneOf(from, style, is('inFrame'));
  const set = setOut(on, scene, SPACE);
  const light = { aside, behind, height: HAIR + height };
  const lens = { aside: 0, behind: -D, height: HAIR };

  for (const view of set.all) {
    const plan = view.name === 'plan';
    const [x, y] = view.at(light);
    set.keep([x - 14, y - 14, x + 14, y + 14]);
    if (is('strikes')) {
      stroke(on, 'emphasis', view.at(light), view.at(lens), view.box);
      along(view.at(light), view.at(lens), view.box).forEach(set.keep);
    }
    // The points the results are about, at the hair’s height.
    for (const [at, key, word] of [
      [depth / 2, 'back', 'back'],
      [-depth / 2, 'fore', 'front'],
    ] as const) {
      const [u, w] = view.at(edge(at));
      disc(on, is(key) ? 'light' : 'shade', u, w, 3.5, true);
      disc(on, is(key) ? 'light' : 'shade', u, w, 3.5);
      set.keep([u - 4, w - 4, u + 4, w + 4]);
      if (!plan)
        set.label({
          text: `${word} ${is(key) ? 'lit' : 'not lit'}`,
          at: [u, w],
          clear: 5,
          side: 'over',
        });
    }
    // How far aside it stands, or how far up: from the line through lens and hair.
    const foot = view.at(plan ? { ...light, aside: 0 } : { ...light, height: HAIR });
    const out: Point = [Math.min(WIDTH - 8, x + 18), y];
    const base: Point = [out[0], foot[1]];
    stroke(on, 'construction', view.at(edge(depth / 2)), base, view.box);
    if (Math.abs(y - foot[1]) > 4) {
      measure(on, out, base, view.box);
      set.label({
        text: plan
          ? `${on.length(Math.abs(aside))} aside`
          : `${on.length(Math.abs(height))} ${height < 0 ? 'down' : 'up'}`,
        at: [out[0], (out[1] + base[1]) / 2],
        clear: 2,
        side: 'right',
      });
    }
  }
  const { plan, side } = set;
  if (plan && Math.hypot(aside, behind) > 0) {
    // The angle is counted from level with the child.
    const way = aside < 0 ? -1 : 1;
    const r = Math.min(34, 0.45 * Math.hypot(aside, behind) * plan.scale);
    const [cx, cy] = plan.at({ aside: 0, behind: 0, height: HAIR });
    const arc = Array.from({ length: 17 }, (_, i): Point => {
      const t = (turn * i) / 16;
      return [
        Math.round((cx + r * Math.sin(t)) * 100) / 100,
        Math.round((cy + way * r * Math.cos(t)) * 100) / 100,
      ];
    });
    on.line('dimension', [[cx, cy], ...arc], plan.box);
    const tip = arc[8] ?? [cx, cy];
    set.label({ text: round, at: tip, clear: 3, side: 'right' });
  }
  if (is('strikes') && side)
    set.label({ text: 'strikes the lens', at: side.at(lens), clear: 14, role: 'emphasis' });
  const frame: Box = [4, 4, WIDTH - 4, (SPACE.plan?.[1] ?? 0) + 2];
  set.write(frame);
  const places = [
    [-D, ''],
    [0, on.length(D)],
    [behind, `${on.length(Math.abs(behind))} ${behind < 0 ? 'before' : 'behind'}`],
  ] as const;
  const y = (SPACE.plan?.[1] ?? 0) + 22;
  const x = (metres: number): number => set.plan?.at(edge(metres))[0] ?? 0;
  if (behind >= 0)
    chain(on, y, places.map(([at]) => x(at)), places.slice(1).map(([, text]) => text)); // prettier-ignore
  else {
    chain(on, y, [x(-D), x(0)], [on.length(D)]);
    chain(on, y + 18, [x(behind), x(0)], [places[2][1]]);
  }
  bar(on, 8, y + 44, set.scale);
  on.text(WIDTH - 4, y + 46, `over the key: ${show('over')}`, 'end');

  const reached = (
    [
      ['back', 'the back edge'],
      ['mid', 'the child'],
      ['fore', 'the front edge'],
    ] as const
  ).filter(([key]) => is(key));
  return {
    width: WIDTH,
    height: y + 52,
    marks: on.marks,
    says: `From the side and from above: the rim light stands ${round} level with the child, ${on.length(Math.abs(height))} ${height < 0 ? 'below' : 'above'} the hair it is aimed at. Its beam of ${angleText(angle, style)} reaches ${reached.length ? reached.map(([, word]) => word).join(', ') : 'none'} of a set ${on.length(depth)} deep. ${is('strikes') ? 'It strikes the lens' : 'It does not strike the lens'}, and it ${is('inFrame') ? 'stands in the picture' : 'is out of the picture'}.`,
    table: {
      head: ['drawn', 'value'],
      rows: [
        ['behind the child', on.length(behind)],
        ['aside, camera-right positive', on.length(aside)],
        ['over the hair', on.length(height)],
        ['beam', angleText(angle, style)],
        ['camera to child', on.length(D)],
        ['set depth', on.length(depth)],
        ...Object.entries(formula.outputs).map(([key, { label }]) => [label, show(key as never)]),
      ],
    },
  };
};

/** The light by hand, in both views; the camera along its line. */
export const handles = (given: Given, _: Results, style: Style = {}): readonly Handle[] => {
  const from = given as unknown as From;
  const { behind, aside, height, D }: Numbers = from;
  const { length } = pen(style);
  const { side, plan } = viewsFor(extentOf(sceneOf(from, style)), SPACE);
  const { inputs } = formula;
  const light = { aside, behind, height: HAIR + height };
  const placed = (what: string): string =>
    `${length(Math.abs(behind))} ${behind < 0 ? 'before' : 'behind'} the child, ${what}`;
  return [
    ...(plan
      ? [
          movable(
            plan,
            {
              id: 'light',
              name: 'rim light',
              says: placed(`${length(Math.abs(aside))} to camera-${aside < 0 ? 'left' : 'right'}`),
            },
            light,
            { behind: inputs.behind.range, other: inputs.aside.range },
            (to) => ({ behind: to.behind, aside: to.aside }),
          ),
          {
            ...movable(
              plan,
              { id: 'camera', name: 'camera', says: `${length(D)} from the child` },
              { aside: 0, behind: -D, height: HAIR },
              { behind: [-1000, -0.01] },
              (to) => ({ D: -to.behind }),
            ),
            now: D,
            ends: inputs.D.range,
          },
        ]
      : []),
    ...(side
      ? [
          movable(
            side,
            {
              id: 'light',
              name: 'rim light',
              says: placed(
                `${length(Math.abs(height))} ${height < 0 ? 'below' : 'above'} the hair`,
              ),
            },
            light,
            {
              behind: inputs.behind.range,
              other: [HAIR + inputs.height.range[0], HAIR + inputs.height.range[1]],
            },
            (to) => ({ behind: to.behind, height: Math.round((to.height - HAIR) * 100) / 100 }),
          ),
        ]
      : []),
  ];
};
