import type { Box, Point } from '../clip.ts';
import type { Pen } from '../pen.ts';
import type { Scene } from './scene.ts';
import { stroke } from './stroke.ts';
import type { View } from './views.ts';

const block = (view: View, front: number, back: number, low: number, high: number): Point[] =>
  (
    [
      [front, low],
      [back, low],
      [back, high],
      [front, high],
    ] as const
  ).map((pair) => view.onto(pair));

/** Where light goes in a view: to the walls, the backdrop and the floor, no farther. */
export const airOf = (view: View, { room, backdrop }: Scene): Box => {
  const [left, top, right, bottom] = view.box;
  const plan = view.name === 'plan';
  const [from, over] = view.onto([
    room?.front ?? -1e6,
    plan ? -(room?.half ?? 1e6) : (room?.ceiling ?? 1e6),
  ]);
  const [to, under] = view.onto([
    Math.min(room?.back ?? 1e6, backdrop?.behind ?? 1e6),
    plan ? (room?.half ?? 1e6) : 0,
  ]);
  return [
    Math.max(left, Math.min(right, from)),
    Math.max(top, Math.min(bottom, over)),
    Math.max(left, Math.min(right, to)),
    Math.max(top, Math.min(bottom, under)),
  ];
};

/** The floor, and the room where there is one: what lies under everything. */
export const ground = (on: Pen, view: View, { room }: Scene): void => {
  const plan = view.name === 'plan';
  if (room) {
    const { front, back, half, ceiling } = room;
    const walls = plan
      ? block(view, front, back, -half, half)
      : block(view, front, back, 0, ceiling);
    on.area('ground', walls, view.box);
    on.ring('object', walls, view.box);
  } else if (!plan) {
    const [, y] = view.onto([0, 0]);
    stroke(on, 'ground', [view.box[0], y], [view.box[2], y], view.box);
  }
};

/** What stands on the floor and stops the light: the platform's edge and the backdrop. */
export const standing = (on: Pen, view: View, { platform, backdrop, room }: Scene): void => {
  const plan = view.name === 'plan';
  if (platform) {
    const { front, back, half, top } = platform;
    const edge = plan ? block(view, front, back, -half, half) : block(view, front, back, 0, top);
    if (!plan) on.area('ground', edge, view.box);
    on.ring('ground', edge, view.box);
  }
  if (backdrop) {
    const half = backdrop.half ?? room?.half ?? 1e4;
    const [low, high] = plan ? [-half, half] : [0, backdrop.top ?? room?.ceiling ?? 1e4];
    stroke(
      on,
      'object',
      view.onto([backdrop.behind, low]),
      view.onto([backdrop.behind, high]),
      view.box,
    );
  }
};
