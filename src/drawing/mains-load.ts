import type { Given, Results } from '../formula/record.ts';
import { showResult, type Style } from '../formula/show.ts';
import { writeQuantity } from '../formula/notation/write.ts';
import formula from '../sitting/safety/mains-load.ts';
import { corners, pen, WIDTH } from './pen.ts';
import type { Sheet } from './sheet.ts';

const [LEFT, TOP, THICK] = [12, 44, 30];

/** What is drawn as one bar beside what the breaker allows. */
export const draw = (given: Given, results: Results, style: Style = {}): Sheet => {
  const { rating, share, load, U } = given as unknown as Parameters<typeof formula.compute>[0];
  const on = pen(style);
  const show = (key: keyof typeof formula.outputs): string =>
    showResult(formula.outputs[key], results[key], style);
  const amperes = (x: number): string => writeQuantity(x, 'A', 3, { ...style, exact: true });
  const current = Number(results['current']);
  const usable = rating * share;
  const most = Math.max(current, rating) * 1.08;
  const x = (a: number): number => LEFT + (a / most) * (WIDTH - 2 * LEFT);

  on.text(LEFT, TOP - 24, `drawn ${show('current')}`, 'start', 'emphasis');
  on.area(current > usable ? 'emphasis' : 'light', corners([LEFT, TOP, x(current), TOP + THICK]));
  on.ring('object', corners([LEFT, TOP, x(current), TOP + THICK]));
  let sum = 0;
  for (const one of load ?? []) {
    sum += one / U;
    if (load && load.length > 1 && sum < current * (1 - 1e-9))
      on.line('object', [
        [x(sum), TOP],
        [x(sum), TOP + THICK],
      ]);
  }
  on.line('object', [
    [LEFT, TOP + THICK + 16],
    [x(most), TOP + THICK + 16],
  ]);
  const marks = [
    [rating, `breaker ${amperes(rating)}`],
    ...(share < 1 ? [[usable, `for hours ${amperes(usable)}`] as const] : []),
  ] as const;
  marks.forEach(([at, text], i) => {
    on.line(i === 0 ? 'object' : 'hidden', [
      [x(at), TOP - 8],
      [x(at), TOP + THICK + 22],
    ]);
    on.text(x(at), TOP + THICK + 38 + i * 16, text, 'middle');
  });
  return {
    width: WIDTH,
    height: TOP + THICK + 64,
    marks: on.marks,
    says: `A bar of the current drawn, ${show('current')}, beside a breaker of ${amperes(rating)}${share < 1 ? `, of which ${amperes(usable)} may be used for hours` : ''}: ${show('margin')} left on one circuit, ${show('circuits')} needed.`,
    table: {
      head: ['', 'value'],
      rows: [
        ['drawn', show('current')],
        ['usable on a circuit', amperes(usable)],
        ['circuits', show('circuits')],
      ],
    },
  };
};
