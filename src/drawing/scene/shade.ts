import type { Box, Point } from '../clip.ts';
import type { Pen } from '../pen.ts';
import { axesIn, pointAt } from './beam.ts';
import type { Light, Scene } from './scene.ts';
import { castBy } from './shadow.ts';
import { CROWN, SHOULDER } from './sitter.ts';
import { stroke } from './stroke.ts';
import type { View } from './views.ts';

/** The sitter's shadow towards the backdrop: filled where there is none of this light, lines where there begins to be less. */
export const shade = (
  on: Pen,
  view: View,
  light: Light,
  { backdrop, sitter }: Scene,
  air: Box,
): void => {
  if (!backdrop || !sitter) return;
  const axes = axesIn(view, light.at, light.aim);
  const plan = view.name === 'plan';
  const half = (plan ? light.width : (light.tall ?? light.width)) / 2;
  const [p, q] = view.flat(sitter.seat);
  const body: readonly [Point, Point] = plan
    ? [
        [p, q - SHOULDER],
        [p, q + SHOULDER],
      ]
    : [
        [p, q],
        [p, q + CROWN],
      ];
  const source = [pointAt(axes, 0, -half), pointAt(axes, 0, half)] as const;
  const cast = castBy(source, body, backdrop.behind);
  if (!cast) return;
  const at = (height: number): Point => view.onto([backdrop.behind, height]);
  const [low, high] = [view.onto(body[0]), view.onto(body[1])];
  if (cast.full) {
    on.area('shade', [low, at(cast.full[0]), at(cast.full[1]), high], air);
    stroke(on, 'shade', at(cast.full[0]), at(cast.full[1]), air);
  }
  stroke(on, 'shade', low, at(cast.edge[0]), air);
  stroke(on, 'shade', high, at(cast.edge[1]), air);
};
