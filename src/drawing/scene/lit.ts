import { clip, type Box, type Point } from '../clip.ts';
import { WIDTH, type Pen } from '../pen.ts';
import { axesIn, contour, outline } from './beam.ts';
import { along, type Label } from './label.ts';
import type { Light } from './scene.ts';
import { strokes } from './stroke.ts';
import type { View } from './views.ts';

/** Sheet units beyond which nothing is seen of a beam. */
const FAR = 1.5 * WIDTH;
/** From here on a cone is drawn as light on all sides. */
const ROUND = Math.PI * 0.98;

const inside = ([x, y]: Point, [left, top, right, bottom]: Box): boolean =>
  x >= left && x <= right && y >= top && y <= bottom;

/** The beams of a light and its lines of equal exposure, as far as the air goes; labels for both come back, and where the edges run. */
export const lit = (
  on: Pen,
  view: View,
  light: Light,
  air: Box,
): { readonly labels: Label[]; readonly things: Box[] } => {
  const axes = axesIn(view, light.at, light.aim);
  const labels: Label[] = [];
  const things: Box[] = [];
  light.beams.forEach(({ angle, name, compared }) => {
    const ring = outline(axes, light, angle, FAR / view.scale).map((pair) => view.onto(pair));
    if (!compared) on.area('light', ring, air);
    if (angle >= ROUND) return;
    // The sides alone: where a beam ends is where the air does.
    const sides = [ring.slice(0, 3), ring.slice(3)];
    for (const side of sides) {
      strokes(on, compared ? 'construction' : 'light', side, air);
      side.slice(1).forEach((b, i) => things.push(...along(side[i] ?? b, b, air)));
    }
    if (name === undefined) return;
    // Said at the side that runs on longer, where there is more room.
    const [longest] = sides
      .map((side) => clip(side[0] === ring[0] ? side.slice(1) : side.slice(0, 2), air))
      .filter((side) => side.length > 1)
      .map(([a = [0, 0], b = [0, 0]]) => ({ a, b, length: Math.hypot(b[0] - a[0], b[1] - a[1]) }))
      .sort((one, other) => other.length - one.length);
    if (!longest) return;
    const { a, b } = longest;
    labels.push({
      text: name,
      at: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2],
      role: 'dimension',
    });
  });
  const [first] = light.beams;
  for (const stops of (first && light.contours?.stops) ?? []) {
    if (!first || !light.contours) break;
    const line = contour(axes, first.angle, light.contours.from, stops).map((pair) =>
      view.onto(pair),
    );
    strokes(on, 'light', line, air);
    // Beside the axis where the arc is wide enough: on it stands what is lit.
    const spots = (first.angle > 2 ? [0.36, 0.4, 0.44, 0.47, 0.5] : [0.5]).map(
      (share) => line[Math.round(share * (line.length - 1))],
    );
    const spot = spots.find((one) => one && inside(one, air));
    if (spot)
      labels.push({
        text: stops === 0 ? '0' : `\u2212${stops}`,
        at: spot,
        clear: -2,
        side: 'left',
        role: 'dimension',
      });
  }
  return { labels, things };
};
