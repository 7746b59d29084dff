import type { Place, Scene } from './scene.ts';
import { CROWN } from './sitter.ts';
import type { Extent } from './views.ts';

const ends = (values: readonly number[]): readonly [number, number] => [
  Math.min(...values),
  Math.max(...values),
];

/** Everything in the scene that has a place, with half its breadth. */
const placesOf = ({ sitter, camera, lights, cards = [] }: Scene): (Place & { half: number })[] => [
  ...(sitter
    ? [
        { ...sitter.seat, half: 0.3 },
        { ...sitter.seat, height: sitter.seat.height + CROWN + 0.05, half: 0 },
      ]
    : []),
  ...(camera ? [{ ...camera.at, half: 0.16 }] : []),
  ...lights.flatMap(({ at, aim, width, tall = width }) => [
    // With the head behind its front.
    { ...at, half: Math.max(width / 2, tall / 2, 0.2) },
    { ...aim, half: 0 },
  ]),
  ...cards.map(({ at, width }) => ({ ...at, half: width / 2 })),
];

/** What a scene needs of the sheet, in metres. */
export const extentOf = (scene: Scene): Extent => {
  const places = placesOf(scene);
  const { room, backdrop, platform } = scene;
  return {
    behind: ends([
      ...places.flatMap((one) => [one.behind - one.half, one.behind + one.half]),
      ...(room ? [room.front, room.back] : []),
      ...(backdrop ? [backdrop.behind] : []),
      ...(platform ? [platform.front, platform.back] : []),
    ]),
    aside: ends([
      ...places.flatMap((one) => [one.aside - one.half, one.aside + one.half]),
      ...(room ? [room.half] : []),
      ...(backdrop?.half === undefined ? [] : [backdrop.half]),
      ...(platform ? [platform.half] : []),
    ]),
    height: ends([
      0,
      ...places.map((one) => one.height + one.half),
      ...places.map((one) => Math.min(0, one.height - one.half)),
      ...(room ? [room.ceiling] : []),
      ...(backdrop?.top === undefined ? [] : [backdrop.top]),
    ]),
  };
};
