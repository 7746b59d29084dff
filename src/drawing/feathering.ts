import type { Given, Results } from '../formula/record.ts';
import { writeQuantity } from '../formula/notation/write.ts';
import { showResult, type Style } from '../formula/show.ts';
import formula, { exponent } from '../optics/light/feathering.ts';
import type { Point } from './clip.ts';
import { disc } from './disc.ts';
import { toCentimetre, type Handle } from './handle.ts';
import { pen, WIDTH } from './pen.ts';
import { bar } from './scale.ts';
import { axesIn, outline } from './scene/beam.ts';
import { extentOf } from './scene/extent.ts';
import { along } from './scene/label.ts';
import { movable } from './scene/movable.ts';
import type { Light, Place, Scene } from './scene/scene.ts';
import { setOut } from './scene/set-out.ts';
import { stroke } from './scene/stroke.ts';
import { viewsFor, type Extent, type Space } from './scene/views.ts';
import type { Sheet } from './sheet.ts';

type From = Parameters<typeof formula.compute>[0];

const SPACE: Space = { columns: [4, WIDTH - 4], plan: [6, 226], axis: 0.75 };
const DEGREE = Math.PI / 180;

/** A direction at the light, 0 at the nearer child; the farther one lies up the sheet. */
const at = (distance: number, turn: number): Place => ({
  behind: distance * Math.cos(turn),
  aside: -distance * Math.sin(turn),
  height: 0,
});

const HERE = at(0, 0);

/** Where the handle of the axis stands: clear of both children. */
const aimPlace = ({ near, far, aim }: From): Place => at(0.6 * Math.min(near, far), aim);

const lightOf = ({ angle, near, aim }: From): Light => ({
  name: 'light',
  source: 'standard reflector',
  at: HERE,
  aim: at(1, aim),
  width: 0.18,
  beams: [{ angle }],
  contours: { from: near, stops: [0, 1, 2] },
});

const sceneOf = (from: From): Scene => ({ lights: [lightOf(from)] });

/** The light and both children; the metre of aim that the light’s direction is written with is not part of it. */
const extentFor = (from: From): Extent => {
  const { height } = extentOf(sceneOf(from));
  const far = at(from.far, from.between);
  return {
    behind: [-0.35, Math.max(from.near, far.behind) + 0.1],
    aside: [far.aside - 0.1, 0.2],
    height,
  };
};

/** The light and two children from above, its beam before and after the turn, and what each child gets. */
export const draw = (given: Given, results: Results, style: Style = {}): Sheet => {
  const from = given as unknown as From;
  const { angle, near, far, between, aim } = from;
  const on = pen(style);
  const show = (key: keyof typeof formula.outputs): string =>
    showResult(formula.outputs[key], results[key], style);
  const degrees = (x: number): string =>
    writeQuantity(x, 'deg', { significant: 3 }, { ...style, exact: true });
  const stops = (n: number): string => writeQuantity(n, 'stop', { decimals: 2 }, style);
  const less = (key: 'before' | 'after'): string => {
    const n = Number(results[key]);
    return `${stops(Math.abs(n))} ${n < 0 ? 'more' : 'less'}`;
  };
  const scene = sceneOf(from);
  const set = setOut(on, scene, SPACE, extentFor(from));
  const view = set.plan;
  const n = exponent(angle);
  // Against the axis at the nearer child’s distance.
  const got = (off: number, d: number): number =>
    n * Math.log2(Math.max(0, Math.cos(off))) + 2 * Math.log2(near / d);
  const both = {
    before: [got(0, near), got(between, far)],
    after: [got(aim, near), got(between - aim, far)],
  } as const;

  if (view) {
    const reach = (1.5 * WIDTH) / view.scale;
    // The beam as it was, its axis on the nearer child.
    const before = outline(axesIn(view, HERE, at(1, 0)), lightOf(from), angle, reach).map((pair) =>
      view.onto(pair),
    );
    for (const side of [before.slice(1, 3), before.slice(3, 5)]) {
      const [a = [0, 0], b = [0, 0]] = side as readonly Point[];
      stroke(on, 'construction', a, b, view.box);
    }
    const axis = (turn: number): Point => view.at(at(reach, turn));
    stroke(on, 'light', view.at(HERE), axis(aim), view.box);
    const turn = Number(results['turn']);
    stroke(on, 'hidden', view.at(HERE), axis(turn), view.box);
    along(view.at(HERE), axis(turn), view.box).forEach(set.keep);
    const evenAt = at(0.8 * Math.max(near, far), turn);
    set.label({ text: `even at ${show('turn')}`, at: view.at(evenAt), side: 'over' });
    for (const [place, name, i] of [
      [at(near, 0), 'near', 0],
      [at(far, between), 'far', 1],
    ] as const) {
      const [x, y] = view.at(place);
      stroke(on, 'dimension', view.at(HERE), [x, y], view.box);
      // A head, seen from above; the handle stands in it.
      disc(on, 'object', x, y, Math.max(7, Math.min(14, 0.09 * view.scale)));
      set.keep([x - 13, y - 13, x + 13, y + 13]);
      set.label({
        text: `${name} ${on.length([near, far][i] ?? near)}: ${writeQuantity(both.after[i], '1', { decimals: 2 }, style)}`,
        at: [x, y],
        clear: 13,
        side: i ? 'over' : 'under',
        role: 'emphasis',
      });
    }
    const [x, y] = view.at(aimPlace(from));
    set.keep([x - 13, y - 13, x + 13, y + 13]);
    set.label({ text: `aim ${degrees(aim)}`, at: [x, y], clear: 13, side: 'under' });
    set.write();
  }
  bar(on, 8, 248, set.scale);
  on.text(WIDTH - 4, 250, 'dashed: before the turn', 'end', 'dimension');
  const row = (y: number, name: string, [a, b]: readonly [number, number], bold?: true): void => {
    const number = (x: number): string => writeQuantity(x, '1', { decimals: 2 }, style);
    const role = bold && 'emphasis';
    on.text(8, y, name, 'start', role);
    on.text(170, y, number(a), 'end', role);
    on.text(240, y, number(b), 'end', role);
    on.text(WIDTH - 4, y, stops(Math.abs(a - b)), 'end', role);
  };
  on.text(8, 276, 'stops', 'start', 'dimension');
  on.text(170, 276, 'near', 'end', 'dimension');
  on.text(240, 276, 'far', 'end', 'dimension');
  on.text(WIDTH - 4, 276, 'apart', 'end', 'dimension');
  on.line('dimension', [
    [8, 282],
    [WIDTH - 4, 282],
  ]);
  row(298, 'before', both.before);
  row(316, 'after', both.after, true);

  return {
    width: WIDTH,
    height: 324,
    marks: on.marks,
    says: `From above: a beam of ${degrees(angle)} turned ${degrees(aim)} from the nearer child, ${on.length(near)} off, towards the farther one at ${on.length(far)}. Before the turn the farther child gets ${less('before')}, after it ${less('after')}; at ${show('turn')} both get the same.${results['bounce'] === undefined ? '' : ` Turned up to the ceiling instead the light loses about ${show('bounce')}.`}`,
    table: {
      head: ['stops over the axis at the nearer child', 'near', 'far'],
      rows: [
        ['before the turn', ...both.before.map(stops)],
        ['after the turn', ...both.after.map(stops)],
        ['distance', on.length(near), on.length(far)],
        ['off the axis, after', degrees(Math.abs(aim)), degrees(Math.abs(between - aim))],
      ],
    },
  };
};

/** Both children and the axis by hand. */
export const handles = (given: Given, _: Results, style: Style = {}): readonly Handle[] => {
  const from = given as unknown as From;
  const { near, far, between, aim } = from;
  const { plan } = viewsFor(extentFor(from), SPACE);
  if (!plan) return [];
  const { length } = pen(style);
  const { inputs } = formula;
  const anywhere = [-1000, 1000] as const;
  const turnOf = ({ behind, aside }: Place): number => Math.atan2(-aside, behind);
  /** To half a degree, in radians. */
  const limited = (turn: number, [low, high]: readonly [number, number]): number =>
    (Math.min(high, Math.max(low, Math.round((turn / DEGREE) * 2) / 2)) + 0) * DEGREE;
  const degrees = (x: number): string => writeQuantity(x, 'deg', { significant: 3 }, style);
  return [
    {
      ...movable(
        plan,
        { id: 'near', name: 'nearer child', says: `${length(near)} from the light` },
        at(near, 0),
        { behind: anywhere, fine: true },
        ({ behind }) => ({ near: toCentimetre(behind, inputs.near.range) }),
      ),
      now: near,
      ends: inputs.near.range,
    },
    {
      ...movable(
        plan,
        {
          id: 'far',
          name: 'farther child',
          says: `${length(far)} from the light, ${degrees(between)} from the nearer child`,
        },
        at(far, between),
        { behind: anywhere, other: anywhere, fine: true },
        (to) => ({
          far: toCentimetre(Math.hypot(to.behind, to.aside), inputs.far.range),
          between: limited(turnOf(to), inputs.between.range),
        }),
      ),
      now: far,
      ends: inputs.near.range,
    },
    {
      ...movable(
        plan,
        { id: 'aim', name: 'axis of the light', says: `${degrees(aim)} from the nearer child` },
        aimPlace(from),
        { behind: anywhere, other: anywhere, fine: true },
        (to) => ({ aim: limited(turnOf(to), inputs.aim.range) }),
      ),
      now: aim / DEGREE,
      ends: inputs.aim.range,
    },
  ];
};
