import type { Box } from '../clip.ts';
import { CHILD_SIDE, figure, fromOver, oval, RABBIT_SIDE } from '../figure.ts';
import type { Pen } from '../pen.ts';
import type { Scene } from './scene.ts';
import type { View } from './views.ts';

/** The outlines count from the eye; a sitter's place is under the middle of the head. */
const EYE = -0.075;

/** The sitting child, or the knitted rabbit, as a view shows it. Returns what it covers of the sheet. */
export const sitter = (
  on: Pen,
  view: View,
  { kind, seat }: NonNullable<Scene['sitter']>,
  air: Box,
): Box => {
  const { scale } = view;
  const [x, y] = view.at(seat);
  if (view.name === 'side') {
    const outline = kind === 'child' ? CHILD_SIDE : RABBIT_SIDE;
    figure(on, outline, (u, v) => [x + (u + EYE) * scale, y - v * scale], air);
    return [x - 0.3 * scale, y - 0.52 * scale, x + 0.15 * scale, y];
  }
  if (kind === 'child') fromOver(on, x, y, scale, air);
  else {
    oval(on, 'figure', x, y, 0.13 * scale, 0.13 * scale, air);
    for (const side of [-1, 1])
      oval(on, 'figure', x + 0.1 * scale, y + side * 0.06 * scale, 0.06 * scale, 0.03 * scale, air);
  }
  return [x - 0.27 * scale, y - 0.13 * scale, x + 0.1 * scale, y + 0.13 * scale];
};

/** Half the breadth of its shoulders, and how high it sits: what throws its shadow. */
export const SHOULDER = 0.12;
export const CROWN = 0.51;
