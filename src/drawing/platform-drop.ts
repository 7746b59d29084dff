import type { Given, Results } from '../formula/record.ts';
import { showResult, type Style } from '../formula/show.ts';
import formula from '../sitting/safety/platform-drop.ts';
import { arrow } from './arrow.ts';
import { upright } from './dimension.ts';
import { CHILD_SIDE, figure } from './figure.ts';
import { corners, pen, WIDTH } from './pen.ts';
import { bar, scaleFor } from './scale.ts';
import type { Sheet } from './sheet.ts';

const [TOP, TALL, EDGE] = [24, 190, 190];
/** The outline's own crown over its seat. */
const CROWN = 0.51;

/** The child on the platform from the side, to scale, with both drops beside it. */
export const draw = (given: Given, results: Results, style: Style = {}): Sheet => {
  const { h, head } = given as unknown as Parameters<typeof formula.compute>[0];
  const on = pen(style);
  const show = (key: keyof typeof formula.outputs): string =>
    showResult(formula.outputs[key], results[key], style);
  const up = head ?? CROWN;
  const scale = scaleFor(Math.min(TALL / Math.max(h + up, 0.2), 220));
  const floor = TOP + TALL;
  const [seat, crown] = [floor - h * scale, floor - (h + up) * scale];
  const grown = up / CROWN;
  on.line('ground', [
    [8, floor],
    [WIDTH - 8, floor],
  ]);
  if (h > 0) on.solid(corners([40, seat, EDGE, floor]));
  figure(
    on,
    CHILD_SIDE,
    (x, y) => [EDGE - 40 + x * grown * scale * 0.8, seat - y * grown * scale],
    [0, 0, WIDTH, floor],
  );
  if (h > 0) {
    arrow(on, 'object', EDGE + 22, seat, EDGE + 22, floor - 2);
    on.text(EDGE + 30, (seat + floor) / 2 + 4, `foot ${show('foot')}`);
  }
  if (head !== undefined) {
    arrow(on, 'emphasis', EDGE + 10, crown, EDGE + 10, floor - 2);
    on.text(
      EDGE + 30,
      Math.min(seat - 10, (crown + seat) / 2),
      `head ${show('headSpeed')}`,
      'start',
      'emphasis',
    );
  }
  upright(on, 24, seat, floor, on.length(h), true);
  bar(on, 8, floor + 24, scale);
  return {
    width: WIDTH,
    height: floor + 36,
    marks: on.marks,
    says: `A child on a platform ${on.length(h)} high, from the side, to scale. A foot that slips off comes down at ${show('foot')}${head === undefined ? '' : `, a head from ${on.length(h + head, 3)} at ${show('headSpeed')}`}.`,
    table: {
      head: ['', 'from', 'speed at the floor'],
      rows: [
        ['foot', on.length(h), show('foot')],
        ['head', head === undefined ? 'not given' : on.length(h + head, 3), show('headSpeed')],
      ],
    },
  };
};
