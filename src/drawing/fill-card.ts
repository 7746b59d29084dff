import type { Given, Results } from '../formula/record.ts';
import { showResult, type Style } from '../formula/show.ts';
import formula from '../optics/light/fill-card.ts';
import { across, upright } from './dimension.ts';
import { oval } from './figure.ts';
import { corners, pen, WIDTH } from './pen.ts';
import { bar, scaleFor } from './scale.ts';
import type { Sheet } from './sheet.ts';
import { underKey } from './under-key.ts';

const [LEFT, TOP, TALL] = [64, 24, 140];

/** The card beside the face from above, to scale, lit by the key; under it key and card in stops. */
export const draw = (given: Given, results: Results, style: Style = {}): Sheet => {
  const { w, d } = given as unknown as Parameters<typeof formula.compute>[0];
  const on = pen(style);
  const show = (key: keyof typeof formula.outputs): string =>
    showResult(formula.outputs[key], results[key], style);
  const under = Number(results['under']);

  const scale = scaleFor(Math.min((WIDTH - LEFT - 100) / d, TALL / Math.max(w, 0.2)));
  const middle = TOP + TALL / 2;
  const [card, half] = [LEFT, (w / 2) * scale];
  const face = card + d * scale;
  const box = [0, 0, WIDTH, TOP + TALL + 12] as const;
  oval(on, 'figure', face + 0.09 * scale, middle, 0.09 * scale, 0.075 * scale, box);
  on.area('object', corners([card - 5, middle - half, card, middle + half]));
  for (const side of [-1, 1])
    on.line('light', [
      [card, middle + side * half],
      [face, middle],
    ]);
  // The key comes from the other side and reaches card and face.
  on.line('construction', [
    [WIDTH - 10, TOP],
    [card, middle - half * 0.4],
  ]);
  on.line('construction', [
    [WIDTH - 10, TOP],
    [face + 0.09 * scale, middle - 0.075 * scale],
  ]);
  on.text(WIDTH - 8, TOP - 6, 'key', 'end');
  upright(on, card - 18, middle - half, middle + half, on.length(w), true);
  across(on, TOP + TALL + 26, card, face, on.length(d));
  bar(on, LEFT, TOP + TALL + 48, scale);

  const ruler = TOP + TALL + 116;
  underKey(on, ruler, under, `card ${showResult(formula.outputs.under, -under, style)}`);
  return {
    width: WIDTH,
    height: ruler + 32,
    marks: on.marks,
    says: `From above, to scale: a card ${on.length(w)} wide, ${on.length(d)} from the shadow side of the face. On a scale of stops its light lies ${show('under')} under the key: ${show('ratio')} to 1.`,
    table: {
      head: ['', 'value'],
      rows: [
        ['card’s light under key', show('under')],
        ['ratio', `${show('ratio')} to 1`],
      ],
    },
  };
};
