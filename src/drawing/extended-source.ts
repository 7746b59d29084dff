import { writeNumber } from '../formula/notation/write.ts';
import type { Length } from '../formula/quantities.ts';
import type { Given, Results } from '../formula/record.ts';
import { showResult, type Style } from '../formula/show.ts';
import formula, { reach } from '../optics/light/extended-source.ts';
import type { Point } from './clip.ts';
import { across, upright } from './dimension.ts';
import { CHILD_SIDE, figure } from './figure.ts';
import { corners, pen, WIDTH } from './pen.ts';
import { bar, scaleFor } from './scale.ts';
import type { Sheet } from './sheet.ts';

const [LEFT, RIGHT, TOP] = [44, WIDTH - 60, 16];
const [TALL, GRAPH] = [150, 130];

/** The source before the child's face, to scale; under it the light over distance by the point law and in truth. */
export const draw = (given: Given, results: Results, style: Style = {}): Sheet => {
  const { shape, w, h, d } = given as unknown as Parameters<typeof formula.compute>[0];
  const source = { shape, w, h };
  const on = pen(style);
  const show = (key: keyof typeof formula.outputs): string =>
    showResult(formula.outputs[key], results[key], style);
  const high = shape === 'disc' ? w : (h ?? w);

  const scale = scaleFor(Math.min((RIGHT - LEFT) / d, TALL / Math.max(high, 0.51)));
  const middle = TOP + TALL / 2;
  const [front, face] = [LEFT, LEFT + d * scale];
  const half = (high / 2) * scale;
  figure(on, CHILD_SIDE, (x, y) => [face + x * scale, middle - (y - 0.41) * scale], [
    0,
    TOP - 8,
    WIDTH,
    TOP + TALL + 8,
  ]);
  on.area('object', corners([front - 6, middle - half, front, middle + half]));
  for (const side of [-1, 1])
    on.line('light', [
      [front, middle + side * half],
      [face, middle],
    ]);
  on.line('construction', [
    [front, middle],
    [face, middle],
  ]);
  upright(on, front - 16, middle - half, middle + half, on.length(high), true);
  across(on, TOP + TALL + 22, front, face, on.length(d));
  bar(on, LEFT, TOP + TALL + 44, scale);

  // Light in stops against that at the front itself, over distance in doublings: the point law is a straight line.
  const [base, top] = [TOP + TALL + 76 + GRAPH, TOP + TALL + 76];
  const near = Math.min(Math.min(w, high) / 4, d / 1.25);
  const far = Math.max(Number(results['percent']), d) * 1.25;
  const x = (at: number): number =>
    LEFT + (Math.log2(at / near) / Math.log2(far / near)) * (WIDTH - LEFT - 12);
  const truth = (at: number): number => Math.log2(reach(source, at as Length));
  const low = truth(far);
  const y = (stops: number): number => base - ((stops - low) / -low) * GRAPH;
  const point = (at: number): number => truth(far) + 2 * Math.log2(far / at);
  const places = Array.from({ length: 49 }, (_, i) => near * (far / near) ** (i / 48));
  const box = [LEFT, top, WIDTH - 12, base] as const;
  on.line('object', [
    [LEFT, top],
    [LEFT, base],
    [WIDTH - 12, base],
  ]);
  on.line(
    'construction',
    places.map((at): Point => [x(at), y(point(at))]),
    box,
  );
  on.line(
    'light',
    places.map((at): Point => [x(at), y(truth(at))]),
    box,
  );
  for (let n = 0; n >= low; n -= 2) {
    on.line('dimension', [
      [LEFT - 4, y(n)],
      [LEFT, y(n)],
    ]);
    on.text(LEFT - 7, y(n) + 4, writeNumber(n, { decimals: 0 }), 'end');
  }
  on.text(4, top - 14, 'stops');
  for (const [key, name] of [
    ['tenth', '1/10 stop'],
    ['percent', '1 %'],
  ] as const) {
    const at = Number(results[key]);
    on.line('dimension', [
      [x(at), base - 8],
      [x(at), base + 4],
    ]);
    on.text(x(at), base + 16, name, 'middle');
    on.text(x(at), base + 30, show(key), 'middle');
  }
  on.line('emphasis', [
    [x(d), base],
    [x(d), Math.max(top, y(truth(d)))],
  ]);
  // The upper right is free at every setting: both curves run down to the right.
  on.text(WIDTH - 8, top + 2, `at ${on.length(d)}: ${show('error')}`, 'end', 'emphasis');
  return {
    width: WIDTH,
    height: base + 40,
    marks: on.marks,
    says: `A ${shape === 'disc' ? 'round source' : 'rectangle'} ${on.length(w)} wide at ${on.length(d)} from the face, to scale. Under it the light over distance: the straight dashed line of the inverse square law lies ${show('error')} over the truth here; they meet within a tenth of a stop from ${show('tenth')} and within 1 % from ${show('percent')}.`,
    table: {
      head: ['distance', 'truth, stops under the front', 'point law'],
      rows: [0.5, 1, 2, 4].map((times) => [
        on.length(d * times, 3),
        writeNumber(-truth(d * times), { decimals: 2 }, style),
        writeNumber(-point(d * times), { decimals: 2 }, style),
      ]),
    },
  };
};
