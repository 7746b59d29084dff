import type { Given, Results } from '../formula/record.ts';
import { writeQuantity } from '../formula/notation/write.ts';
import { showResult, type Style } from '../formula/show.ts';
import formula from '../optics/light/backdrop-exposure.ts';
import { chain } from './dimension.ts';
import { pen, WIDTH, type Pen } from './pen.ts';
import { bar } from './scale.ts';
import { along as boxes } from './scene/label.ts';
import type { Light, Place, Scene } from './scene/scene.ts';
import { setOut } from './scene/set-out.ts';
import { measure, stroke } from './scene/stroke.ts';
import type { Space } from './scene/views.ts';
import type { Role, Sheet } from './sheet.ts';
import { words } from './words.ts';

type From = Parameters<typeof formula.compute>[0];

const SPACE: Space = { columns: [4, WIDTH - 4], plan: [6, 168] };
/** The background light’s beam is not part of the reckoning; it is drawn with the harbour set’s grid. */
const GRID = (20 * Math.PI) / 180;

const place = (behind: number, aside: number): Place => ({ behind, aside, height: 0 });

interface Tone {
  readonly at: number;
  readonly name: string;
  readonly role?: Role;
}

/** A row of stops from an end to another, with what stands where named over it in up to two rows. */
const stopRow = (
  on: Pen,
  y: number,
  [low, high]: readonly [number, number],
  zero: string,
  tones: readonly Tone[],
): void => {
  const unit = (WIDTH - 40) / (high - low);
  const x = (stops: number): number => 20 + (stops - low) * unit;
  on.line('object', [
    [12, y],
    [WIDTH - 12, y],
  ]);
  const every = Math.max(1, Math.ceil(26 / unit));
  for (let n = Math.ceil(low); n <= high; n += 1) {
    if (n % every !== 0) continue;
    on.line('object', [
      [x(n), y],
      [x(n), y + 6],
    ]);
    on.text(
      x(n),
      y + 19,
      n === 0 ? zero : writeQuantity(n, '1', { decimals: 0 }, on.style),
      'middle',
      n === 0 ? undefined : 'dimension',
    );
  }
  for (const { at, role } of tones)
    on.line(role ?? 'shade', [
      [x(at), y - 10],
      [x(at), y],
    ]);
  words(
    on,
    y - 30,
    tones.map(({ at, name, role }) => [x(at), name, role === 'light' ? undefined : role] as const),
  );
};

/** Key, child, backdrop and background light from above, and on a scale of stops how bright face, spot and spill are. */
export const draw = (given: Given, results: Results, style: Style = {}): Sheet => {
  const { light, power, gel, rho, ...along } = given as unknown as From;
  const key: number = along.key;
  const b: number = along.b;
  const on = pen(style);
  const show = (name: keyof typeof formula.outputs): string =>
    showResult(formula.outputs[name], results[name], style);
  const stops = (n: number): string => writeQuantity(n, 'stop', { decimals: 2 }, style);
  const against = Number(results['against']);
  const spill = against - Number(results['contrast']);
  const lit = light !== undefined && power !== undefined;
  const alone = lit ? power - gel + 2 * Math.log2(key / light) : undefined;

  // The key shines past the child on to the cloth; the background light stands clear of that line.
  const most = Math.max(key + b, light ?? 0);
  const aside = Math.max(0.75, 0.24 * most);
  const lights: Light[] = [
    {
      name: 'key',
      source: 'softbox',
      at: place(-key, 0),
      aim: place(0, 0),
      width: Math.min(0.9, 0.5 * most),
      // As wide as a softbox shines: nothing of its edges is in the reckoning.
      beams: [{ angle: (17 * Math.PI) / 18 }],
      contours: { from: key, stops: [0, 1, 2] },
    },
    ...(lit
      ? [
          {
            name: 'background light',
            source: 'grid',
            at: place(b - light, aside),
            aim: place(b, aside),
            width: 0.18,
            beams: [{ angle: GRID }],
          } as const,
        ]
      : []),
  ];
  const scene: Scene = {
    backdrop: { behind: b },
    sitter: { kind: 'child', seat: place(0, 0) },
    lights,
  };
  const set = setOut(on, scene, SPACE);
  const view = set.plan;
  if (view) {
    const [x, y] = view.at(place(b, 0));
    // Over the child's head, not across it.
    set.label({ text: `spill ${stops(spill)}`, at: [x, y - 24], clear: 4, side: 'left' });
    if (lit) {
      const half = Math.min(100, light * Math.tan(GRID / 2) + 0.02);
      stroke(on, 'emphasis', view.at(place(b, aside - half)), view.at(place(b, aside + half)), [
        view.box[0],
        view.box[1],
        view.box[2] + 4,
        view.box[3],
      ]);
      const [x, y] = view.at(place(b, aside));
      set.label({
        text: `spot ${stops(against)}`,
        at: [x, y],
        clear: 4,
        side: 'left',
        role: 'emphasis',
      });
      const row = Math.min(view.box[3] - 4, y + Math.max(14, 0.2 * view.scale));
      const end = view.at(place(b - light, aside))[0];
      measure(on, [end, row], [x, row], view.box);
      boxes([end, row], [x, row], view.box).forEach(set.keep);
      set.label({ text: on.length(light), at: [(end + x) / 2, row], clear: 1, side: 'under' });
    }
  }
  set.write([4, 4, WIDTH - 4, 172]);
  const at = (behind: number): number => view?.at(place(behind, 0))[0] ?? 0;
  chain(on, 190, [at(-key), at(0), at(b)], [on.length(key), on.length(b)]);
  bar(on, 8, 222, set.scale);
  on.text(WIDTH - 4, 224, 'arcs: stops under the face', 'end', 'dimension');

  const tone = results['tone'] as number | undefined;
  const light0: Tone[] = [
    { at: 0, name: 'face', role: 'light' },
    { at: spill, name: 'spill' },
    ...(alone === undefined ? [] : [{ at: alone, name: 'spot alone' }]),
    ...(lit ? [{ at: against, name: 'both', role: 'emphasis' as const }] : []),
  ];
  const range = (values: readonly number[]): readonly [number, number] => [
    Math.floor(Math.min(-3, ...values) - 0.4),
    Math.ceil(Math.max(2, ...values) + 0.4),
  ];
  on.text(8, 248, 'light on it, in stops against the face', 'start', 'dimension');
  stopRow(on, 296, range(light0.map((one) => one.at)), '0', light0);
  let y = 322;
  if (tone !== undefined && rho !== undefined) {
    on.text(8, 338, 'how it comes out, against middle grey', 'start', 'dimension');
    const dark = spill + Math.log2(rho / 0.18);
    const tones: Tone[] = [
      ...(lit
        ? [
            { at: dark, name: 'cloth beside' },
            { at: tone, name: 'spot', role: 'emphasis' as const },
          ]
        : [{ at: tone, name: 'cloth', role: 'emphasis' as const }]),
    ];
    stopRow(on, 386, range(tones.map((one) => one.at)), 'grey', tones);
    y = 412;
  }
  return {
    width: WIDTH,
    height: y,
    marks: on.marks,
    says: `From above: key ${on.length(key)} before the child, backdrop ${on.length(b)} behind it${lit ? `, background light ${on.length(light)} from the cloth` : ', no light of its own on it'}. The key’s spill is ${stops(spill)} against the face${lit ? `, with the spot ${show('against')}: ${show('contrast')} over the spill` : ''}${tone === undefined ? '.' : `; the cloth comes out ${show('tone')} against middle grey.`}`,
    table: {
      head: ['drawn', 'value'],
      rows: [
        ['key to the face', on.length(key)],
        ['child to the backdrop', on.length(b)],
        ['background light to the backdrop', light === undefined ? 'not given' : on.length(light)],
        ['spill against the face', stops(spill)],
        ['spot alone against the face', alone === undefined ? 'not given' : stops(alone)],
        ...Object.entries(formula.outputs).map(([name, output]) => [
          'label' in output ? output.label : output.name,
          show(name as never),
        ]),
      ],
    },
  };
};
