import type { Angle, Length } from '../formula/quantities.ts';
import type { Style } from '../formula/show.ts';
import { spotOf } from '../optics/light/beam-spread.ts';
import { direction } from '../optics/light/direction.ts';
import { framed, type Format, type Orientation } from '../optics/lens/frame.ts';
import { imageDistance } from '../optics/lens/thin-lens.ts';
import { chain } from './dimension.ts';
import { pen, WIDTH } from './pen.ts';
import { bar } from './scale.ts';
import { axesIn, pointAt } from './scene/beam.ts';
import { along } from './scene/label.ts';
import type { Place, Scene } from './scene/scene.ts';
import { setOut } from './scene/set-out.ts';
import { CROWN } from './scene/sitter.ts';
import { stroke } from './scene/stroke.ts';
import { placesTable } from './scene/table.ts';
import { from, span } from './scene/vector.ts';
import type { Space } from './scene/views.ts';
import type { Sheet } from './sheet.ts';

/** A set with key, card, rim light and background light, the child’s place in its middle. */
export interface ThreeLights {
  readonly room: {
    readonly length: Length;
    readonly width: Length;
    readonly ceiling: Length;
    /** From the backdrop to the wall behind it. */
    readonly clearance: Length;
  };
  readonly backdrop: { readonly behind: Length; readonly width: Length; readonly height: Length };
  readonly platform: { readonly height: Length; readonly depth: Length };
  /** Level with the eyes, which the key is aimed at. */
  readonly camera: {
    readonly distance: Length;
    readonly height: Length;
    readonly f: Length;
    readonly format: Format;
    readonly orientation: Orientation;
  };
  readonly key: {
    readonly distance: Length;
    readonly azimuth: Angle;
    readonly elevation: Angle;
    readonly size: Length;
  };
  /** Beside the face, away from the key. */
  readonly card: { readonly size: Length; readonly distance: Length };
  /** Counted from the hair. */
  readonly rim: {
    readonly behind: Length;
    readonly aside: Length;
    readonly height: Length;
    readonly angle: Angle;
  };
  /** The background light: its axis level, turned off square towards the middle, its aim on the backdrop. */
  readonly glow: {
    readonly aim: Length;
    readonly height: Length;
    readonly distance: Length;
    readonly tilt: Angle;
    readonly angle: Angle;
  };
  /** The opening of both gridded reflectors. */
  readonly opening: Length;
}

const SPACE: Space = { columns: [4, WIDTH - 4], side: [6, 188], plan: [196, 436] };

const place = (aside: number, behind: number, height: number): Place => ({
  aside,
  behind,
  height,
});

/** Towards the camera: a plain number, whose sign may be turned round. */
const before = (length: number): number => -length;

/** Where everything stands and what it is aimed at. */
const placesOf = ({ backdrop, platform, camera, key, card, rim, glow }: ThreeLights) => {
  const [right, up, near] = direction(key.azimuth, key.elevation);
  const hair = platform.height + CROWN - 0.05;
  return {
    face: place(0, 0, camera.height),
    hair: place(0, 0, hair),
    aim: place(glow.aim, backdrop.behind, glow.height),
    key: place(
      key.distance * right,
      before(key.distance * near),
      camera.height + key.distance * up,
    ),
    card: place((right < 0 ? 1 : -1) * card.distance, 0, camera.height),
    rim: place(rim.aside, rim.behind, hair + rim.height),
    glow: place(
      glow.aim + glow.distance * Math.sin(glow.tilt),
      backdrop.behind - glow.distance * Math.cos(glow.tilt),
      glow.height,
    ),
  };
};

/** The scene these numbers make, for whoever lays it out. */
export const sceneOf = (given: ThreeLights): Scene => {
  const { room, backdrop, platform, camera, key, card, rim, glow, opening } = given;
  const at = placesOf(given);
  const v = imageDistance({ f: camera.f, s: camera.distance });
  const { across, up } = framed({ ...camera, aspect: null });
  const back = backdrop.behind + room.clearance;
  return {
    room: { front: back - room.length, back, half: room.width / 2, ceiling: room.ceiling },
    backdrop: { behind: backdrop.behind, half: backdrop.width / 2, top: backdrop.height },
    platform: {
      front: before(platform.depth / 2),
      back: platform.depth / 2,
      half: 0.5,
      top: platform.height,
    },
    sitter: { kind: 'rabbit', seat: place(0, 0, platform.height) },
    camera: {
      at: place(0, before(camera.distance), camera.height),
      across: 2 * Math.atan(across / 2 / v),
      up: 2 * Math.atan(up / 2 / v),
      upright: camera.orientation === 'portrait',
    },
    lights: [
      { name: 'key', source: 'softbox', at: at.key, aim: at.face, width: key.size, beams: [] },
      {
        name: 'rim light',
        source: 'grid',
        at: at.rim,
        aim: at.hair,
        width: opening,
        beams: [{ angle: rim.angle }],
      },
      {
        name: 'background light',
        source: 'grid',
        at: at.glow,
        aim: at.aim,
        width: opening,
        beams: [{ angle: glow.angle }],
      },
    ],
    cards: [{ name: 'card', at: at.card, faces: at.face, width: card.size }],
  };
};

/**
 * Camera, stand-in, card and three lights from the side and from above, to scale in their room.
 *
 * Model: every place as it is said to the reader, beams as cones from their openings. Valid: a set that lies in its room.
 */
export const drawThreeLights = (given: ThreeLights, style: Style = {}): Sheet => {
  const { room, backdrop, camera, key, card, glow } = given;
  const on = pen(style);
  const scene = sceneOf(given);
  const at = placesOf(given);
  const set = setOut(on, scene, SPACE);
  const spot = spotOf({ ...glow, D: glow.distance });
  // The middle of the pool slips on, away from the lamp.
  const middle = glow.aim - spot.offset;

  for (const view of set.all) {
    const plan = view.name === 'plan';
    // What the face sees of the key.
    const axes = axesIn(view, at.key, at.face);
    for (const side of [-0.5, 0.5]) {
      const edge = view.onto(pointAt(axes, 0, side * key.size));
      stroke(on, 'light', edge, view.at(at.face), view.box);
      along(edge, view.at(at.face), view.box).forEach(set.keep);
    }
    const half = (plan ? spot.length : spot.width) / 2;
    const pool = [-half, half].map((off) =>
      view.at(
        plan
          ? place(middle + off, backdrop.behind, glow.height)
          : place(middle, backdrop.behind, glow.height + off),
      ),
    );
    const [a = [0, 0], b = [0, 0]] = pool;
    stroke(on, 'emphasis', a, b, view.box);
    set.keep([a[0] - 2, Math.min(a[1], b[1]), a[0] + 2, Math.max(a[1], b[1])]);
    set.label({
      text: 'glow',
      at: [a[0], (a[1] + b[1]) / 2],
      clear: 3,
      side: 'right',
      role: 'emphasis',
    });
  }
  set.write();

  const x = (one: Place): number => set.plan?.at(one)[0] ?? 0;
  const lens = place(0, before(camera.distance), camera.height);
  const y = (SPACE.plan?.[1] ?? 0) + 22;
  const behind = place(0, backdrop.behind, 0);
  chain(
    on,
    y,
    [x(lens), x(at.face), x(behind)],
    [on.length(camera.distance), on.length(backdrop.behind)],
  );
  bar(on, 8, y + 26, set.scale);
  on.text(WIDTH - 4, y + 28, `room ${on.length(room.length)} long`, 'end');

  const { head, rows } = placesTable(scene, on.length);
  const reach: Readonly<Record<string, number>> = {
    camera: camera.distance,
    key: key.distance,
    'rim light': span(from(at.rim, at.hair)),
    'background light': glow.distance,
    card: card.distance,
  };
  const side = (one: number): string => `camera-${one < 0 ? 'left' : 'right'}`;
  return {
    width: WIDTH,
    height: y + 34,
    marks: on.marks,
    says: `The set from the side and from above, to scale, in a room ${on.length(room.length)} long. The camera stands ${on.length(camera.distance)} before the knitted rabbit, the backdrop ${on.length(backdrop.behind)} behind it. The key, ${on.length(key.size)} across, is ${on.length(key.distance)} from the face to ${side(at.key.aside)}; a card ${on.length(card.size)} wide stands ${on.length(card.distance)} off on the other side. The rim light is ${on.length(span(from(at.rim, at.hair)))} from the hair, behind it and to ${side(at.rim.aside)}; the background light stands to ${side(at.glow.aside)}, ${on.length(glow.distance)} from the backdrop, and lights a pool ${on.length(spot.length)} by ${on.length(spot.width)} on it.`,
    table: {
      head: [...head.map((one) => one.replace('the sitter', 'the rabbit')), 'from what it faces'],
      rows: rows.map((row) => {
        const far = reach[row[0] ?? ''];
        return [...row, far === undefined ? '' : on.length(far)];
      }),
    },
  };
};
