import { as, mm } from '../formula/quantities.ts';
import { writeNumber } from '../formula/notation/write.ts';
import type { Given, Results } from '../formula/record.ts';
import { showResult, type Style } from '../formula/show.ts';
import { defaultCircle } from '../optics/aperture/inputs.ts';
import formula from '../optics/aperture/circle-of-confusion.ts';
import { disc } from './disc.ts';
import { corners, pen, WIDTH } from './pen.ts';
import { bar, scaleFor } from './scale.ts';
import type { Sheet } from './sheet.ts';

const [EDGE, BASE] = [12, 118];

/** The circle in the frame's corner, much enlarged, beside the sizes that others agreed on; and the whole frame beside it. */
export const draw = (given: Given, results: Results, style: Style = {}): Sheet => {
  const { format } = given as unknown as Parameters<typeof formula.compute>[0];
  const on = pen(style);
  const c = Number(results['c']);
  const divisor = showResult(formula.outputs.divisor, results['divisor'], style);
  const write = (metres: number): string => showResult(formula.outputs.c, metres, style);
  const text = write(c);
  const all = [
    [c, 'yours', text],
    [defaultCircle(given), 'd/1500', write(defaultCircle(given))],
    [mm(0.03), 'usual', write(mm(0.03))],
    [mm(1 / 30), 'older', write(mm(1 / 30))],
  ] as const;
  const scale = scaleFor(74 / Math.max(...all.map(([size]) => size)));

  // The corner of the sensor: its edges are where the discs stand.
  on.line('frame', [
    [EDGE, 8],
    [EDGE, BASE],
    [352, BASE],
  ]);
  all.forEach(([size, name, written], i) => {
    const [x, radius] = [EDGE + 40 + i * 86, (size * scale) / 2];
    disc(on, i ? 'shade' : 'light', x, BASE - radius, radius, true);
    if (!i) disc(on, 'emphasis', x, BASE - radius, radius);
    on.text(x, BASE - 2 * radius - 7, written, 'middle', i ? undefined : 'emphasis');
    on.text(x, BASE + 16, name, 'middle');
  });
  bar(on, EDGE, BASE + 40, scale);

  // The whole frame, and how small a part of it that corner is.
  const whole = Math.min(84 / format.width, 64 / format.height);
  const [right, foot] = [350, BASE + 98];
  const left = right - format.width * whole;
  const top = foot - format.height * whole;
  on.ring('frame', corners([left, top, right, foot]));
  on.line('construction', [
    [left, foot],
    [right, top],
  ]);
  const reach = Math.min(Math.hypot(right - left, foot - top), (340 / scale) * whole);
  on.line('emphasis', [
    [left, foot - Math.max(3, reach * 0.3)],
    [left, foot],
    [left + Math.max(3, reach), foot],
  ]);
  on.text(left - 8, foot - 40, `d = ${divisor} circles`, 'end');
  on.text(
    left - 8,
    foot - 22,
    `${writeNumber(as(format.width, 'mm'), 4, { ...style, exact: true })} × ${on.mm(format.height)}`,
    'end',
  );
  on.text(left - 8, foot - 4, 'the corner above', 'end');
  return {
    width: WIDTH,
    height: BASE + 104,
    marks: on.marks,
    says: `A corner of the frame, much enlarged, and in it the circle of ${text}. Beside it the diagonal over 1500, ${write(mm(0.03))} and 1/30 mm, to the same scale. The frame’s diagonal is ${divisor} circles long.`,
    table: {
      head: ['circle', 'diameter'],
      rows: [
        ['yours', text],
        ['diagonal over 1500, the default here', all[1][2]],
        ['usual for 36 × 24 mm', all[2][2]],
        ['makers’ tables in the days of film, 1/30 mm', all[3][2]],
      ],
    },
  };
};
