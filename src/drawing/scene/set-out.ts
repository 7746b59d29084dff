import { camera as cameraSymbol, fromAbove, fromSide } from '../camera.ts';
import type { Box, Point } from '../clip.ts';
import { WIDTH, type Pen } from '../pen.ts';
import { axesIn, pointAt } from './beam.ts';
import { extentOf } from './extent.ts';
import { airOf, ground, standing } from './ground.ts';
import { along, leader, placeLabels, type Label } from './label.ts';
import { lit } from './lit.ts';
import type { Camera, Light, Scene } from './scene.ts';
import { shade } from './shade.ts';
import { stroke } from './stroke.ts';
import { sitter } from './sitter.ts';
import { lightSymbol } from './symbol.ts';
import { viewsFor, type Space, type View, type Views } from './views.ts';

/** A scene laid on a sheet, to which its owner may add lines and labels before they are written. */
export interface SetOut extends Views {
  /** Adds a label; it is given a place when all are known. */
  readonly label: (label: Label) => void;
  /** Keeps labels off a part of the sheet while there is a choice. */
  readonly keep: (box: Box) => void;
  /** Writes every label within the views, or within a frame in which no other words stand. */
  readonly write: (frame?: Box) => void;
}

const middle = ([left, top, right, bottom]: Box): readonly [number, number] => [
  (left + right) / 2,
  (top + bottom) / 2,
];

/** The edges of what the camera sees; where they run comes back. */
const frameEdges = (
  on: Pen,
  view: View,
  { at, across, up, tilt = 0 }: Camera,
  air: Box,
): readonly Box[] => {
  const [p, q] = view.flat(at);
  const far = (1.5 * WIDTH) / view.scale;
  return [-0.5, 0.5].flatMap((way) => {
    const slope = Math.tan(view.name === 'plan' ? way * across : tilt + way * up);
    const [a, b] = [view.onto([p, q]), view.onto([p + far, q + far * slope])];
    stroke(on, 'construction', a, b, air);
    // Thin lines weigh half as much as the edge of a beam.
    return along(a, b, air).filter((_, i) => i % 2 === 0);
  });
};

/** A direction in a view, of length 1; along the sheet where it is seen end on. */
const unit = ([x, y]: Point): Point => {
  const length = Math.hypot(x, y);
  return length > 1e-9 ? [x / length, y / length] : [1, 0];
};

/** What a light stands on, in the side view. */
const stand = (on: Pen, view: View, { at, source }: Light, air: Box): void => {
  if (view.name === 'plan' || source === 'window' || at.height <= 0) return;
  const [x, y] = view.at(at);
  const [, foot] = view.at({ ...at, height: 0 });
  const spread = Math.min(10, (foot - y) / 3);
  stroke(on, 'dimension', [x, y], [x, foot], air);
  for (const way of [-1, 1])
    stroke(on, 'dimension', [x, foot - spread], [x + way * spread, foot], air);
};

/** Everything of a scene in one view, light first; the labels it wants and the parts of the sheet it covers. */
const drawIn = (on: Pen, view: View, scene: Scene): { labels: Label[]; things: Box[] } => {
  const air = airOf(view, scene);
  const plan = view.name === 'plan';
  const labels: Label[] = [];
  const things: Box[] = [];
  const name = (text: string, box: Box, clear: number, side?: Label['side']): void => {
    things.push(box);
    labels.push({ text, at: middle(box), clear: Math.min(clear, 40), ...(side && { side }) });
  };

  ground(on, view, scene);
  const beams = scene.lights.map((light) => lit(on, view, light, air));
  for (const light of scene.lights)
    if (scene.shadows?.includes(light.name)) shade(on, view, light, scene, air);
  if (scene.camera) things.push(...frameEdges(on, view, scene.camera, air));
  standing(on, view, scene);
  for (const light of scene.lights) stand(on, view, light, view.box);
  if (scene.sitter) {
    const box = sitter(on, view, scene.sitter, view.box);
    const word = scene.sitter.kind === 'child' ? 'child' : 'knitted rabbit';
    name(word, box, (plan ? box[3] - box[1] : box[2] - box[0]) / 2, plan ? 'under' : 'left');
  }
  for (const card of scene.cards ?? []) {
    const axes = axesIn(view, card.at, card.faces);
    const half = card.width / 2;
    // Round, as far as it is turned towards the reader; edge on it is a line.
    const round = half * Math.sqrt(Math.max(0, 1 - Math.hypot(...axes.along) ** 2));
    const [along, across] = [unit(axes.along), axes.across];
    if (round * view.scale < 0.5)
      on.line(
        'object',
        [-half, half].map((v) => view.onto(pointAt(axes, 0, v))),
        view.box,
      );
    else
      on.ring(
        'object',
        Array.from({ length: 32 }, (_, i) => {
          const [u, v] = [
            round * Math.cos((i * Math.PI) / 16),
            half * Math.sin((i * Math.PI) / 16),
          ];
          const [p, q] = axes.at;
          return view.onto([p + u * along[0] + v * across[0], q + u * along[1] + v * across[1]]);
        }),
        view.box,
      );
    labels.push({ text: card.name, at: view.at(card.at), clear: 4 });
  }
  if (scene.camera) {
    const { at, upright, tilt } = scene.camera;
    const held = upright ? 'portrait' : 'landscape';
    const [x, y] = view.at(at);
    const [broad, up] = plan ? [fromAbove(held), 0] : [fromSide(held), tilt];
    cameraSymbol(on, x, y, view.scale, broad, up);
    name('camera', [x - 20, y - 9, x + 2, y + 9], 9, 'under');
  }
  for (const light of scene.lights) {
    const box = lightSymbol(on, view, axesIn(view, light.at, light.aim), light, view.box);
    name(light.name, box, Math.min(box[2] - box[0], box[3] - box[1]) / 2 + 2);
  }
  if (scene.backdrop) {
    const [x] = view.at({ aside: 0, behind: scene.backdrop.behind, height: 0 });
    // Clear of the ceiling's line, where there is one.
    const top = Math.max(view.box[1] + 9, scene.room ? air[1] + 12 : 0);
    labels.push({ text: 'backdrop', at: [x, top], side: 'left', clear: 2 });
    things.push(...along([x, view.box[1]], [x, view.box[3]], view.box));
  }
  return {
    labels: [...labels, ...beams.flatMap((one) => one.labels)],
    things: [...things, ...beams.flatMap((one) => one.things)],
  };
};

/**
 * Lays a scene on a sheet: plan and side view to one scale, each thing with a word beside it. Nothing leaves its view, and
 * no two words meet, at any setting.
 */
export const setOut = (on: Pen, scene: Scene, space: Space, extent = extentOf(scene)): SetOut => {
  const views = viewsFor(extent, scene.room ? { ...space, still: true } : space);
  const drawn = views.all.map((view) => drawIn(on, view, scene));
  const labels = drawn.flatMap((one) => one.labels);
  const things = drawn.flatMap((one) => one.things);
  const boxes = views.all.map(({ box }) => box);
  const whole: Box = [
    Math.min(...boxes.map(([left]) => left)),
    Math.min(...boxes.map(([, top]) => top)),
    Math.max(...boxes.map(([, , right]) => right)),
    Math.max(...boxes.map(([, , , bottom]) => bottom)),
  ];
  return {
    ...views,
    label: (label) => void labels.push(label),
    keep: (box) => void things.push(box),
    write(frame = whole) {
      for (const placed of placeLabels(labels, things, frame)) {
        const line = leader(placed);
        if (line) on.line('dimension', line);
        on.text(placed.x, placed.y, placed.text, 'start', placed.role);
      }
    },
  };
};
