import { writeQuantity } from '../formula/notation/write.ts';
import type { Given, Results } from '../formula/record.ts';
import { showResult, type Style } from '../formula/show.ts';
import formula from '../sitting/print/wrap-allowance.ts';
import { across, upright } from './dimension.ts';
import { corners, pen, WIDTH } from './pen.ts';
import { bar, scaleFor } from './scale.ts';
import type { Sheet } from './sheet.ts';

const [LEFT, TOP, TALL] = [20, 26, 220];

/** The file laid flat, to scale: the front, the edges, what folds under, and the part that surely stays in front. */
export const draw = (given: Given, results: Results, style: Style = {}): Sheet => {
  const { w, h, depth, fold, edge, drift } = given as unknown as Parameters<
    typeof formula.compute
  >[0];
  const on = pen(style);
  const show = (key: keyof typeof formula.outputs): string =>
    showResult(formula.outputs[key], results[key], style);
  const size = (metres: number): string =>
    writeQuantity(metres, style.system === 'imperial' ? 'in' : metres < 1 ? 'cm' : 'm', 3, style);
  const more = depth + fold;

  const scale = scaleFor(Math.min((WIDTH - LEFT - 84) / (w + 2 * more), TALL / (h + 2 * more)));
  const [right, bottom] = [LEFT + (w + 2 * more) * scale, TOP + (h + 2 * more) * scale];
  const inset = (by: number) =>
    corners([LEFT + by * scale, TOP + by * scale, right - by * scale, bottom - by * scale]);
  on.area(edge === 'plain' ? 'ground' : 'shade', inset(0));
  on.area(edge === 'wrapped' ? 'light' : edge === 'mirrored' ? 'shade' : 'ground', inset(fold));
  on.area('ground', inset(more));
  on.ring('object', inset(0));
  if (fold > 0) on.ring('dimension', inset(fold));
  on.ring('frame', inset(more));
  if (drift > 0) on.ring('hidden', inset(more + drift));
  // Its size stands in the front where there is room.
  if (h * scale > 44 && w * scale > 120) {
    on.text((LEFT + right) / 2, (TOP + bottom) / 2, 'front', 'middle');
    on.text((LEFT + right) / 2, (TOP + bottom) / 2 + 16, `${size(w)} by ${size(h)}`, 'middle');
  }
  on.text(
    LEFT,
    TOP - 10,
    edge === 'wrapped'
      ? 'the picture goes round the edges'
      : edge === 'mirrored'
        ? 'the border is mirrored on the edges'
        : 'the edges stay plain',
  );
  const file = edge === 'plain' ? more : 0;
  across(on, bottom + 22, LEFT + file * scale, right - file * scale, `file ${show('fileWidth')}`);
  upright(on, right + 12, TOP + file * scale, bottom - file * scale, show('fileHeight'));
  bar(on, LEFT, bottom + 46, scale);
  return {
    width: WIDTH,
    height: bottom + 58,
    marks: on.marks,
    says: `The picture laid flat, to scale: a front of ${size(w)} by ${size(h)}, edges ${writeQuantity(depth, 'mm', 3, { ...style, exact: true })} deep. The file is ${show('fileWidth')} by ${show('fileHeight')}; ${show('safeWidth')} by ${show('safeHeight')} surely stay in front.`,
    table: {
      head: ['', 'width', 'height'],
      rows: [
        ['front', size(w), size(h)],
        ['file', show('fileWidth'), show('fileHeight')],
        ['stays in front', show('safeWidth'), show('safeHeight')],
      ],
    },
  };
};
