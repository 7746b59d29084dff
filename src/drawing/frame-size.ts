import type { Given, Results } from '../formula/record.ts';
import { showResult, type Style } from '../formula/show.ts';
import formula from '../optics/lens/frame-size.ts';
import { fromLens } from '../optics/lens/measured-from.ts';
import { RABBIT, RABBIT_SIDE } from './figure.ts';
import { framing } from './framing.ts';
import { pen } from './pen.ts';
import type { Sheet } from './sheet.ts';

/** What the frame takes in at a distance, tried on the stand-in: from the side, and as the camera sees it. */
export const draw = (given: Given, results: Results, style: Style = {}): Sheet => {
  const from = given as unknown as Parameters<typeof formula.compute>[0];
  const s = fromLens(from);
  return framing(
    {
      ...from,
      s,
      distance: pen(style).length(s),
      wide: showResult(formula.outputs.W, results['W'], style),
      high: showResult(formula.outputs.H, results['H'], style),
      sitter: [RABBIT, RABBIT_SIDE, 'knitted rabbit', true],
    },
    style,
  );
};
