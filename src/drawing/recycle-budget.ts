import { writeQuantity } from '../formula/notation/write.ts';
import type { Given, Results } from '../formula/record.ts';
import { showResult, type Style } from '../formula/show.ts';
import formula from '../sitting/safety/recycle-budget.ts';
import { corners, pen, WIDTH } from './pen.ts';
import type { Sheet } from './sheet.ts';

const [LEFT, TOP] = [12, 44];

/** Frames along a line of time, and under each how long the flash charges after it. */
export const draw = (given: Given, results: Results, style: Style = {}): Sheet => {
  const { recycle, rate } = given as unknown as Parameters<typeof formula.compute>[0];
  const on = pen(style);
  const show = (key: keyof typeof formula.outputs): string =>
    showResult(formula.outputs[key], results[key], style);
  const time = (s: number): string => writeQuantity(s, 's', 3, { ...style, exact: true });
  const interval = 1 / rate;
  const span = Math.max(4.4 * interval, Math.min(recycle * 1.2, 40 * interval));
  const x = (t: number): number => LEFT + (Math.min(t, span) / span) * (WIDTH - 2 * LEFT);

  on.line('object', [
    [LEFT, TOP],
    [x(span), TOP],
  ]);
  on.text(LEFT, TOP - 24, `a frame every ${time(interval)}`);
  let ready = 0;
  for (let i = 0; i * interval < span && i < 60; i += 1) {
    const t = i * interval;
    const lit = t >= ready * (1 - 1e-9);
    on.line(lit ? 'emphasis' : 'hidden', [
      [x(t), TOP - 12],
      [x(t), TOP + 4],
    ]);
    if (!lit) continue;
    on.area('shade', corners([x(t), TOP + 12, x(t + recycle), TOP + 26]));
    on.ring('object', corners([x(t), TOP + 12, x(t + recycle), TOP + 26]));
    ready = t + recycle;
  }
  on.text(LEFT, TOP + 44, `charging ${time(recycle)} after each flash`);
  on.text(
    LEFT,
    TOP + 64,
    results['wait'] === 0 ? 'ready in time' : `dashed frames come too soon: ${show('wait')} short`,
    'start',
    'emphasis',
  );
  return {
    width: WIDTH,
    height: TOP + 74,
    marks: on.marks,
    says: `Frames ${time(interval)} apart on a line of time; after each flash it charges for ${time(recycle)}. ${results['wait'] === 0 ? 'It is ready for each.' : `The next frame comes ${show('wait')} too soon.`}`,
    table: {
      head: ['', 'value'],
      rows: [
        ['between frames', time(interval)],
        ['charging', time(recycle)],
        ['short by', show('wait')],
      ],
    },
  };
};
