import type { Given, Results } from '../formula/record.ts';
import { showResult, type Style } from '../formula/show.ts';
import { writeQuantity } from '../formula/notation/write.ts';
import formula, { cropOf } from '../sitting/print/print-size.ts';
import { across, upright } from './dimension.ts';
import { corners, pen, WIDTH } from './pen.ts';
import type { Sheet } from './sheet.ts';

const [LEFT, TOP, TALL] = [20, 26, 220];

/** The file as a frame, to scale in pixels, with the crop that is printed and the edge that mat or frame hides. */
export const draw = (given: Given, results: Results, style: Style = {}): Sheet => {
  const file = given as unknown as Parameters<typeof formula.compute>[0];
  const { W, H, w, hidden } = file;
  const on = pen(style);
  const show = (key: keyof typeof formula.outputs): string =>
    showResult(formula.outputs[key], results[key], style);
  const px = (n: number): string => writeQuantity(n, 'px', { decimals: 0 }, style);

  const scale = Math.min((WIDTH - LEFT - 84) / W, TALL / H);
  const [right, bottom] = [LEFT + W * scale, TOP + H * scale];
  const [wide, high] = cropOf(file);
  const [x, y] = [LEFT + ((W - wide) / 2) * scale, TOP + ((H - high) / 2) * scale];
  const box = [x, y, x + wide * scale, y + high * scale] as const;
  on.area('shade', corners([LEFT, TOP, right, bottom]));
  on.area('ground', corners(box));
  on.ring('object', corners([LEFT, TOP, right, bottom]));
  on.ring('frame', corners(box));
  const border = w === undefined ? 0 : (hidden * wide * scale) / w;
  if (border > 0.5)
    on.ring(
      'hidden',
      corners([box[0] + border, box[1] + border, box[2] - border, box[3] - border]),
    );
  across(on, bottom + 22, box[0], box[2], px(wide));
  upright(on, right + 12, box[1], box[3], px(high));
  on.text(LEFT, TOP - 10, `file ${px(W)} by ${px(H)}`);
  on.text(
    LEFT,
    bottom + 52,
    results['resolution'] === undefined
      ? 'no print size given'
      : `${show('resolution')} on the print`,
    'start',
    'emphasis',
  );
  return {
    width: WIDTH,
    height: bottom + 62,
    marks: on.marks,
    says: `The file, ${px(W)} by ${px(H)}, with the crop of ${px(wide)} by ${px(high)} that is printed${hidden > 0 ? '; a dashed line shows what mat or frame leaves to see' : ''}. ${show('lost')} are not seen.`,
    table: {
      head: ['', 'across', 'up'],
      rows: [
        ['file', px(W), px(H)],
        ['printed', px(wide), px(high)],
        ['largest print', show('largestWidth'), show('largestHeight')],
      ],
    },
  };
};
