import { writeQuantity } from '../formula/notation/write.ts';
import type { Given, Results } from '../formula/record.ts';
import { showResult, type Style } from '../formula/show.ts';
import formula from '../sitting/print/viewing-distance.ts';
import { across, upright } from './dimension.ts';
import { disc } from './disc.ts';
import { corners, pen, WIDTH } from './pen.ts';
import { bar, scaleFor } from './scale.ts';
import type { Sheet } from './sheet.ts';

const [LEFT, TOP, TALL] = [40, 26, 120];

/** Eye and print from the side, to scale; under them the pixels needed and the pixels there are. */
export const draw = (given: Given, results: Results, style: Style = {}): Sheet => {
  const { D, h, w, W, H } = given as unknown as Parameters<typeof formula.compute>[0];
  const on = pen(style);
  const show = (key: keyof typeof formula.outputs): string =>
    showResult(formula.outputs[key], results[key], style);
  const size = (metres: number): string =>
    writeQuantity(metres, style.system === 'imperial' ? 'in' : metres < 1 ? 'cm' : 'm', 3, style);
  const high = h ?? 0.3;

  const scale = scaleFor(Math.min((WIDTH - LEFT - 90) / D, TALL / high));
  const middle = TOP + TALL / 2;
  const [eye, print] = [LEFT, LEFT + D * scale];
  const half = (high / 2) * scale;
  disc(on, 'object', eye - 6, middle, 6);
  disc(on, 'figure', eye - 3, middle, 2.5, true);
  on.area('object', corners([print, middle - half, print + 4, middle + half]));
  for (const side of [-1, 1])
    on.line('construction', [
      [eye, middle],
      [print, middle + side * half],
    ]);
  if (h !== undefined) upright(on, print + 16, middle - half, middle + half, size(h));
  across(on, TOP + TALL + 22, eye, print, size(D));
  bar(on, 8, TOP + TALL + 46, scale);

  let y = TOP + TALL + 78;
  on.text(8, y, `the eye can use ${show('resolution')}`, 'start', 'emphasis');
  const rows = (
    [
      ['across', w, results['leastWidth'], W],
      ['up', h, results['leastHeight'], H],
    ] as const
  ).filter(([, side]) => side !== undefined);
  const most = Math.max(1, ...rows.flatMap(([, , need, have]) => [Number(need), have ?? 0]));
  const long = (px: number): number => (px / most) * (WIDTH - 16);
  const px = (n: number): string => writeQuantity(n, 'px', { decimals: 0 }, style);
  for (const [name, , need, have] of rows) {
    on.text(
      8,
      y + 24,
      `${name}: needed ${px(Number(need))}${have === undefined ? '' : `, there ${px(have)}`}`,
    );
    on.area('light', corners([8, y + 30, 8 + long(Number(need)), y + 38]));
    if (have !== undefined) on.area('shade', corners([8, y + 40, 8 + long(have), y + 48]));
    y += 50;
  }
  return {
    width: WIDTH,
    height: y + 14,
    marks: on.marks,
    says: `The eye ${size(D)} from the print, from the side, to scale. It can use ${show('resolution')}${rows.map(([name, , need]) => `; ${name} that is ${px(Number(need))}`).join('')}.`,
    table: {
      head: ['', 'needed', 'there'],
      rows: [
        ['across', show('leastWidth'), W === undefined ? 'not given' : px(W)],
        ['up', show('leastHeight'), H === undefined ? 'not given' : px(H)],
      ],
    },
  };
};
