import type { Given, Results } from '../formula/record.ts';
import { showResult, type Style } from '../formula/show.ts';
import formula from '../optics/light/room-fill.ts';
import { across, upright } from './dimension.ts';
import { fromOver } from './figure.ts';
import { corners, pen, WIDTH } from './pen.ts';
import { bar, scaleFor } from './scale.ts';
import type { Sheet } from './sheet.ts';
import { underKey } from './under-key.ts';

const [LEFT, TOP] = [16, 30];

/** The room from above with the key and the child, to scale, light going round it; under it key and room in stops. */
export const draw = (given: Given, results: Results, style: Style = {}): Sheet => {
  const { d, l, w, h } = given as unknown as Parameters<typeof formula.compute>[0];
  const on = pen(style);
  const show = (key: keyof typeof formula.outputs): string =>
    showResult(formula.outputs[key], results[key], style);
  const under = Number(results['under']);

  const scale = scaleFor(Math.min((WIDTH - 90) / Math.max(l, d), 170 / w));
  const [long, wide] = [l * scale, w * scale];
  const box = [LEFT, TOP, LEFT + long, TOP + wide] as const;
  on.ring('object', corners([LEFT, TOP, LEFT + long, TOP + wide]));
  const [x, y] = [LEFT + long * 0.55, TOP + wide * 0.5];
  const key: readonly [number, number] = [
    x - d * scale * Math.SQRT1_2,
    y - d * scale * Math.SQRT1_2,
  ];
  fromOver(on, x, y, scale, box);
  on.line('light', [key, [x, y]], box);
  on.line(
    'object',
    [
      [key[0] - 6, key[1] + 6],
      [key[0] + 6, key[1] - 6],
    ],
    box,
  );
  // Once round the walls: a path of the light that comes back.
  on.line('construction', [
    [x, y],
    [LEFT + long, TOP + wide * 0.75],
    [LEFT + long * 0.6, TOP + wide],
    [LEFT, TOP + wide * 0.8],
    [x, y],
  ]);
  const fits = key[0] > LEFT && key[1] > TOP;
  on.text(
    fits ? key[0] + 10 : LEFT + 6,
    fits ? Math.max(TOP + 14, key[1] + 4) : TOP + 16,
    `key ${on.length(d)}${fits ? '' : ', beyond the wall'}`,
  );
  across(on, TOP + wide + 22, LEFT, LEFT + long, on.length(l));
  upright(on, LEFT + long + 14, TOP, TOP + wide, on.length(w));
  on.text(LEFT, TOP - 10, `from above; ceiling ${on.length(h)}`);
  bar(on, LEFT, TOP + wide + 44, scale);

  const ruler = TOP + wide + 112;
  underKey(on, ruler, under, `room ${showResult(formula.outputs.under, -under, style)}`);
  return {
    width: WIDTH,
    height: ruler + 32,
    marks: on.marks,
    says: `The room from above, ${on.length(l)} by ${on.length(w)}, the key ${on.length(d)} from the child. On a scale of stops the light the room sends back lies ${show('under')} under the key, which allows ${show('ratio')} to 1 at most; an estimate.`,
    table: {
      head: ['', 'value'],
      rows: [
        ['room’s light under key', show('under')],
        ['highest ratio', `${show('ratio')} to 1`],
      ],
    },
  };
};
