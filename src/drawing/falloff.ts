import type { Given, Results } from '../formula/record.ts';
import { writeQuantity } from '../formula/notation/write.ts';
import { showResult, type Style } from '../formula/show.ts';
import formula from '../optics/light/falloff.ts';
import type { Box, Point } from './clip.ts';
import { disc } from './disc.ts';
import { toCentimetre, type Handle } from './handle.ts';
import { pen, WIDTH } from './pen.ts';
import { bar } from './scale.ts';
import { extentOf } from './scene/extent.ts';
import { movable } from './scene/movable.ts';
import type { Place, Scene } from './scene/scene.ts';
import { setOut } from './scene/set-out.ts';
import { stroke } from './scene/stroke.ts';
import { viewsFor, type Space } from './scene/views.ts';
import type { Sheet } from './sheet.ts';
import { words } from './words.ts';

type From = Parameters<typeof formula.compute>[0];

/** The graph’s frame: the set’s depth across, stops downwards. */
const GRAPH: Box = [44, 40, WIDTH - 12, 170];
const SPACE: Space = { columns: [4, WIDTH - 4], plan: [232, 372] };

interface Set {
  readonly light: Place;
  readonly first: Place;
  readonly second: Place;
  /** From the light, the nearer point of the record first. */
  readonly near: number;
  readonly far: number;
  /** Set by three places, not by two distances. */
  readonly placed: boolean;
}

/** Light and points as they stand: by their places, or one behind the other with the near point in the middle. */
const setOf = (from: From): Set => {
  const { light, first, second } = from;
  const near: number = from.near ?? 0;
  const far: number = from.far ?? 0;
  const at = ([aside = 0, behind = 0]: readonly number[]): Place => ({ aside, behind, height: 0 });
  const placed = light !== undefined && first !== undefined && second !== undefined;
  const places = placed
    ? { light: at(light), first: at(first), second: at(second) }
    : { light: at([0, -near]), first: at([0, 0]), second: at([0, far - near]) };
  const apart = (a: Place, b: Place): number => Math.hypot(a.aside - b.aside, a.behind - b.behind);
  return {
    ...places,
    placed,
    near: apart(places.light, places.first),
    far: apart(places.light, places.second),
  };
};

const sceneOf = ({ light, first, near }: Set): Scene => ({
  lights: [
    {
      name: 'light',
      source: 'bare bulb',
      at: light,
      aim: first,
      width: 0.06,
      beams: [{ angle: 2 * Math.PI }],
      contours: { from: near, stops: [0, 1, 2, 3] },
    },
  ],
});

/** The extent of light and both points; an outline of the light alone would let the far point off the sheet. */
const extentFor = (set: Set) => {
  const { behind, aside, height } = extentOf(sceneOf(set));
  const ends = (from: readonly [number, number], at: number): readonly [number, number] => [
    Math.min(from[0], at),
    Math.max(from[1], at),
  ];
  return {
    behind: ends(behind, set.second.behind),
    aside: ends(aside, set.second.aside),
    height,
  };
};

/** Exposure in stops over the set's depth from where the light is and from where it would be even enough; under it the plan. */
export const draw = (given: Given, results: Results, style: Style = {}): Sheet => {
  const from = given as unknown as From;
  const set = setOf(from);
  const { near, far } = set;
  const on = pen(style);
  const show = (key: keyof typeof formula.outputs): string =>
    showResult(formula.outputs[key], results[key], style);
  const stops = (n: number, decimals = 2): string => writeQuantity(n, 'stop', { decimals }, style);
  const depth = Math.abs(far - near);
  const closest = Math.min(near, far);
  const even = results['even'] as number | undefined;
  const wanted: number | undefined = from.wanted;

  // Over the set's depth, from the side towards the light.
  const [left, top, right, bottom] = GRAPH;
  const lossFrom = (d: number, x: number): number => 2 * Math.log2((d + x) / d);
  const here = depth > 0 ? lossFrom(closest, depth) : 0;
  const most = Math.max(here, wanted ?? 0, 0.25) * 1.15;
  const every = [0.25, 0.5, 1, 2, 5, 10, 20].find((step) => most / step <= 5) ?? 50;
  const x = (metres: number): number => left + ((right - left) * metres) / Math.max(depth, 1e-9);
  const y = (n: number): number => top + ((bottom - top) * n) / most;
  const line = (d: number): Point[] =>
    Array.from({ length: 33 }, (_, i): Point => {
      const at = (depth * i) / 32;
      return [
        Math.round(x(at) * 100) / 100,
        Math.round(y(depth > 0 ? lossFrom(d, at) : 0) * 100) / 100,
      ];
    });
  const curves = depth > 0 ? line(closest) : [[left, top] as Point, [right, top] as Point];
  on.area('light', [...curves, [right, bottom], [left, bottom]], GRAPH);
  for (let n = 0; n <= most; n += every) {
    on.line(n === 0 ? 'object' : 'dimension', [
      [left - 4, y(n)],
      [n === 0 ? right : left, y(n)],
    ]);
    on.text(
      left - 8,
      y(n) + 4,
      n === 0
        ? '0'
        : `\u2212${writeQuantity(n, '1', { decimals: every < 0.5 ? 2 : every < 1 ? 1 : 0 }, style)}`,
      'end',
    );
  }
  on.text(6, 30, 'stops', 'start', 'dimension');
  on.line('dimension', [
    [left, top],
    [left, bottom],
  ]);
  if (wanted !== undefined && y(wanted) < bottom)
    on.line('construction', [
      [left, y(wanted)],
      [right, y(wanted)],
    ]);
  if (even !== undefined && depth > 0) on.line('shade', line(even), GRAPH);
  on.line('emphasis', curves, GRAPH);
  // Each curve is named where it ends.
  const ends = [
    { text: `${on.length(closest)} from the light: ${stops(-here)}`, n: here, role: 'emphasis' },
    ...(even !== undefined && depth > 0
      ? [
          {
            text: `${on.length(even, 3)} from it: ${stops(-(wanted ?? 0))}`,
            n: wanted ?? 0,
            role: undefined,
          } as const,
        ]
      : []),
  ] as const;
  words(on, 14, [
    [left, near <= far ? 'near' : 'far'],
    [right, near <= far ? 'far' : 'near'],
  ]);
  ends.forEach(({ text, role }, i) => {
    const row = bottom + 20 + i * 17;
    on.line(role ?? 'shade', [
      [left, row - 4],
      [left + 20, row - 4],
    ]);
    on.text(left + 26, row, text, 'start', role);
  });
  on.text(right, top - 10, `set ${on.length(depth)} deep`, 'end', 'dimension');

  // The plan.
  const plan = setOut(on, sceneOf(set), SPACE, extentFor(set));
  const view = plan.plan;
  if (view) {
    for (const [place, name, metres] of [
      [set.first, 'near', near],
      [set.second, 'far', far],
    ] as const) {
      // One line where both lie on it.
      if (set.placed || metres === Math.max(near, far))
        stroke(on, 'construction', view.at(set.light), view.at(place), view.box);
      const [u, v] = view.at(place);
      disc(on, 'object', u, v, 3);
      plan.keep([u - 13, v - 13, u + 13, v + 13]);
      plan.label({
        text: `${name} ${on.length(metres)}`,
        at: [u, v],
        clear: 13,
        side: name === 'near' ? 'under' : 'over',
      });
    }
    const [u, v] = view.at(set.light);
    plan.keep([u - 13, v - 13, u + 13, v + 13]);
  }
  plan.write([4, 226, WIDTH - 4, 376]);
  bar(on, 8, 394, plan.scale);
  on.text(WIDTH - 4, 396, 'arcs: stops under near', 'end', 'dimension');

  return {
    width: WIDTH,
    height: 402,
    marks: on.marks,
    says: `Exposure in stops over a set ${on.length(depth)} deep. With the light ${on.length(near)} from the near point and ${on.length(far)} from the far one the difference is ${show('stops')}, ${show('percent')} of the light is left${even === undefined ? '.' : `; from ${show('even')} the same depth would lose only ${stops(wanted ?? 0)}.`}`,
    table: {
      head: ['drawn', 'value'],
      rows: [
        ['light to the near point', on.length(near)],
        ['light to the far point', on.length(far)],
        ['depth', on.length(depth)],
        ...Object.entries(formula.outputs).map(([key, { name }]) => [name, show(key as never)]),
      ],
    },
  };
};

/** Light, near and far point by hand: along their line by their distances, or anywhere once the plate goes by places. */
export const handles = (given: Given, _: Results, style: Style = {}): readonly Handle[] => {
  const set = setOf(given as unknown as From);
  const { plan } = viewsFor(extentFor(set), SPACE);
  if (!plan) return [];
  const { length } = pen(style);
  const anywhere = [-100, 100] as const;
  const ends = formula.inputs.near.range;
  if (set.placed)
    return (
      [
        ['light', 'light', set.light],
        ['first', 'near point', set.first],
        ['second', 'far point', set.second],
      ] as const
    ).map(([key, name, place]) =>
      movable(
        plan,
        {
          id: key,
          name,
          says: `${length(place.behind)} along, ${length(place.aside)} across`,
        },
        place,
        { behind: anywhere, other: anywhere },
        ({ aside, behind }) => ({ [key]: [aside, behind] }),
      ),
    );
  const { near, far } = set;
  // What counts is how far a point is from the light, wherever the sheet’s own middle lies.
  const heard = (one: Handle, now: number): Handle => ({ ...one, now, ends });
  const along = { behind: anywhere, fine: true } as const;
  return [
    heard(
      movable(
        plan,
        { id: 'light', name: 'light', says: `${length(near)} from the near point` },
        set.light,
        along,
        // The points stay; both distances change by as much.
        ({ behind }) => ({
          near: toCentimetre(-behind, ends),
          far: toCentimetre(far - near - behind, ends),
        }),
      ),
      near,
    ),
    heard(
      movable(
        plan,
        { id: 'first', name: 'near point', says: `${length(near)} from the light` },
        set.first,
        along,
        ({ behind }) => ({ near: toCentimetre(near + behind, ends) }),
      ),
      near,
    ),
    heard(
      movable(
        plan,
        { id: 'second', name: 'far point', says: `${length(far)} from the light` },
        set.second,
        along,
        ({ behind }) => ({ far: toCentimetre(near + behind, ends) }),
      ),
      far,
    ),
  ];
};
