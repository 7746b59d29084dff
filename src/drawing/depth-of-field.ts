import type { Given, Results } from '../formula/record.ts';
import { showResult, type Style } from '../formula/show.ts';
import formula from '../optics/aperture/depth-of-field.ts';
import { fromLens } from '../optics/lens/measured-from.ts';
import { arrow } from './arrow.ts';
import { camera } from './camera.ts';
import type { Box } from './clip.ts';
import { chain } from './dimension.ts';
import { corners, pen, WIDTH, widthOf } from './pen.ts';
import { bar, scaleFor } from './scale.ts';
import { sharpChild } from './sharp.ts';
import type { Sheet } from './sheet.ts';
import { comparedStops, stop } from './stops.ts';

type In = Parameters<typeof formula.compute>[0];
type Depth = ReturnType<typeof formula.compute> &
  Readonly<Record<'near' | 'far' | 'inFront' | 'behind' | 'total', number>>;

/** A panel: one aperture's strip, as wide as the child with its toes and back. */
const [PANEL, TOP, FOOT] = [114, 22, 152];
/** Where the lens stands in the row that shows it, and how far the row runs. */
const [LENS, END] = [32, 330];

/**
 * The depth strip: the seated child from the side at three apertures a stop apart, solid where sharp, the plane in focus
 * and both limits; under them the whole way from the lens. Focused at infinity, that way three times.
 */
export const draw = (given: Given, results: Results, style: Style = {}): Sheet => {
  const from = given as unknown as In;
  const on = pen(style);
  const show = (depth: Depth, key: keyof typeof formula.outputs): string =>
    showResult(formula.outputs[key], depth[key], style);
  const strips = comparedStops(from).map(({ N, chosen }) => {
    const depth = (chosen ? results : formula.compute({ ...from, N })) as unknown as Depth;
    return { depth, name: stop(N, style), chosen };
  });
  const { s } = from;
  const lens = s - fromLens(from);
  const endless = s === Infinity;

  /** From the lens to both limits, the near one and the far. */
  const row = (y: number, depth: Depth, name: string): void => {
    const most = endless ? Math.max(Math.abs(depth.near) * 1.6, 0.001) : Math.min(depth.far, 2 * s);
    const scale = scaleFor((END - LENS - 24) / most);
    const x = (metres: number): number => LENS + metres * scale;
    const off = x(depth.far) > END;
    const far = off ? END : x(depth.far);
    on.area('light', corners([Math.max(4, x(depth.near)), y - 14, far, y + 14]));
    on.line('construction', [
      [LENS, y],
      [END + 10, y],
    ]);
    camera(on, x(endless ? 0 : lens), y, scale, 9);
    const inside = endless ? [depth.near] : [depth.near, s];
    for (const at of off ? inside : [...inside, depth.far])
      on.line(at === s ? 'frame' : 'light', [
        [x(at), y - 14],
        [x(at), y + 30],
      ]);
    on.line('construction', [
      [LENS, y],
      [LENS, y + 52],
    ]);
    on.text(x(depth.near) - 5, y - 8, show(depth, 'near'), 'end');
    if (off) {
      arrow(on, 'light', x(depth.near), y, END + 16, y);
      on.text(END + 8, y - 18, show(depth, 'far'), 'end');
    } else on.text(far + 5, y - 8, show(depth, 'far'));
    if (!endless) {
      on.line('dimension', [
        [LENS, y + 30],
        [x(s), y + 30],
      ]);
      on.text((LENS + x(s)) / 2, y + 26, on.length(s), 'middle');
    }
    on.text(END + 8, y + 28, name, 'end', 'emphasis');
    bar(on, 8, y + 54, scale);
  };

  if (endless) strips.forEach(({ depth, name }, i) => row(32 + i * 92, depth, name));
  else {
    const deepest = strips[2]?.depth ?? strips[0]?.depth;
    const ahead = Math.max(0.25, deepest?.inFront ?? 0);
    const behind = Math.max(0.21, Math.min(deepest?.behind ?? 0, 2 * ahead));
    const scale = scaleFor(Math.min(250, (PANEL - 2) / (ahead + behind)));
    strips.forEach(({ depth, name, chosen }, i) => {
      const left = 4 + i * (PANEL + 5);
      const box: Box = [left, TOP, left + PANEL, FOOT];
      const focus = left + 1 + ahead * scale + (PANEL - 2 - (ahead + behind) * scale) / 2;
      const near = focus - depth.inFront * scale;
      const off = focus + depth.behind * scale > box[2];
      const far = off ? box[2] : focus + depth.behind * scale;
      on.area('light', corners([near, TOP, far, FOOT]), box);
      on.line('ground', [
        [left, FOOT],
        [left + PANEL, FOOT],
      ]);
      sharpChild(on, (x, y) => [focus + x * scale, FOOT - y * scale], box, near, far);
      on.line('frame', [
        [focus, TOP],
        [focus, FOOT + 6],
      ]);
      for (const x of off ? [near] : [near, far])
        on.line('light', [
          [x, TOP],
          [x, FOOT + 6],
        ]);
      on.text(left + PANEL / 2, 14, name, 'middle', chosen ? 'emphasis' : undefined);
      if (off) arrow(on, 'light', focus, FOOT - 8, box[2], FOOT - 8);
      chain(on, FOOT + 24, off ? [near, focus] : [near, focus, far], []);
      // Ahead and behind stand on their own sides of the plane as far as the panel lets them.
      const [before, after] = [show(depth, 'inFront'), show(depth, 'behind')];
      const split = Math.max(focus, left + widthOf(before) + 3);
      const apart = widthOf(before) + widthOf(after) + 6 > PANEL;
      on.text(split - 3, FOOT + 19, before, 'end');
      if (apart) on.text(box[2], FOOT + 39, after, 'end');
      else on.text(Math.min(split + 3, box[2] - widthOf(after)), FOOT + 19, after);
      const total = `${show(depth, 'total')} in all`;
      on.text(
        left + PANEL / 2,
        FOOT + 54,
        widthOf(total) > PANEL ? show(depth, 'total') : total,
        'middle',
        chosen ? 'emphasis' : undefined,
      );
    });
    bar(on, 8, FOOT + 78, scale);
    on.text(356, FOOT + 80, 'solid: sharp', 'end');
    row(FOOT + 116, results as unknown as Depth, stop(from.N, style));
  }
  const mine = results as unknown as Depth;
  return {
    width: WIDTH,
    height: endless ? 280 : FOOT + 176,
    marks: on.marks,
    says: endless
      ? `From the lens, focused at infinity: at ${stop(from.N, style)} all beyond ${show(mine, 'near')} is sharp. Over and under it the same a stop wider and a stop narrower.`
      : `The seated child from the side at ${strips.map(({ name }) => name).join(', ')}, solid where sharp. At ${stop(from.N, style)} that is from ${show(mine, 'near')} to ${show(mine, 'far')}: ${show(mine, 'inFront')} ahead of the eye and ${show(mine, 'behind')} behind it.`,
    table: {
      head: ['f-number', 'near', 'far', 'in front', 'behind', 'in all'],
      rows: strips.map(({ depth, name }) => [
        name,
        ...(['near', 'far', 'inFront', 'behind', 'total'] as const).map((key) => show(depth, key)),
      ]),
    },
  };
};
