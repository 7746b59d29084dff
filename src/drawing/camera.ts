import type { Orientation } from '../optics/lens/frame.ts';
import type { Point } from './clip.ts';
import type { Pen } from './pen.ts';

/**
 * A plain camera, a box and a tube, looking to the right from the front of its lens.
 * Its place is exact; it is drawn to scale but never too small to see.
 * @param breadth centimetres of box across the line of sight in this view
 * @param tilt radians, upwards
 */
export const camera = (
  on: Pen,
  x: number,
  y: number,
  scale: number,
  breadth: number,
  tilt = 0,
): void => {
  const cm = Math.max(1.1, Math.min(2, scale / 100));
  const [c, s] = [Math.cos(tilt) * cm, Math.sin(tilt) * cm];
  const box = (from: number, to: number, half: number): Point[] =>
    [
      [from, half],
      [to, half],
      [to, -half],
      [from, -half],
    ].map(([a = 0, b = 0]) => [x + a * c - b * s, y - a * s - b * c]);
  on.area('figure', box(-9, 0, 3));
  on.area('figure', box(-14, -8, breadth / 2));
};

/** How broad the box is seen from the side, and from above. */
export const fromSide = (held: Orientation): number => (held === 'portrait' ? 13 : 9);
export const fromAbove = (held: Orientation): number => (held === 'portrait' ? 9 : 13);
