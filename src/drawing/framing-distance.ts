import type { Given, Results } from '../formula/record.ts';
import { showResult, type Style } from '../formula/show.ts';
import formula from '../optics/lens/framing-distance.ts';
import { CHILD, CHILD_SIDE } from './figure.ts';
import { framing } from './framing.ts';
import { pen } from './pen.ts';
import type { Sheet } from './sheet.ts';

type In = Parameters<typeof formula.compute>[0];
type Out = ReturnType<typeof formula.compute>;

/** The camera as far off as the framing asks, from the side, and the frame it then sees. */
export const draw = (given: Given, results: Results, style: Style = {}): Sheet => {
  const from = given as unknown as In;
  const { s, W } = results as unknown as Required<Out> & { readonly s: In['H'] };
  return framing(
    {
      ...from,
      s,
      distance: showResult(formula.outputs.s, s, style),
      wide: showResult(formula.outputs.W, W, style),
      high: pen(style).length(from.H),
      sitter: [CHILD, CHILD_SIDE, 'child'],
    },
    style,
  );
};
