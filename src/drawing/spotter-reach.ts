import type { Given, Results } from '../formula/record.ts';
import { showResult, type Style } from '../formula/show.ts';
import formula from '../optics/lens/spotter-reach.ts';
import { across, chain } from './dimension.ts';
import { ADULT, CHILD, figure } from './figure.ts';
import { corners, pen, WIDTH } from './pen.ts';
import { bar, scaleFor } from './scale.ts';
import type { Sheet } from './sheet.ts';

const FLOOR = 172;
/** The seat over the floor, and the spotter's shoulder: the child's chest is as high. */
const SEAT = 0.2;
const SHOULDER = 0.47;

/** The child's plane from the camera: frame, child, and the spotter beside the nearer edge with an arm's length drawn. */
export const draw = (given: Given, results: Results, style: Style = {}): Sheet => {
  const { W, e, k, r } = given as unknown as Parameters<typeof formula.compute>[0];
  const on = pen(style);
  const gap = showResult(formula.outputs.gap, results['gap'], style);
  const within = results['within'] === true;
  const verdict = showResult(formula.outputs.within, within, style);
  const way = e < 0 ? -1 : 1;
  const child = Math.abs(e);
  const edge = W / 2;
  const shoulder = edge + k;
  const [from, to] = [
    Math.min(-edge, child - 0.3, shoulder - r),
    Math.max(shoulder + 0.52, child + 0.3),
  ];
  const scale = scaleFor(Math.min(340 / (to - from), 156 / 0.9));
  const x = (metres: number): number => 180 + way * scale * (metres - (from + to) / 2);
  const y = (metres: number): number => FLOOR - scale * metres;

  on.line('ground', [
    [4, FLOOR],
    [356, FLOOR],
  ]);
  on.area('light', corners([x(-edge), 24, x(edge), FLOOR]));
  on.solid(corners([x(child - 0.3), y(SEAT), x(child + 0.3), FLOOR]));
  figure(on, CHILD, (u, v) => [x(child + u), y(SEAT + v)]);
  figure(on, ADULT, (u, v) => [x(shoulder + u), y(v)]);
  for (const at of [-edge, edge])
    on.line('frame', [
      [x(at), 24],
      [x(at), FLOOR],
    ]);
  on.line('construction', [
    [x(child), y(SEAT + 0.51) - 4],
    [x(child), FLOOR + 24],
  ]);
  on.line('construction', [
    [x(edge), FLOOR],
    [x(edge), FLOOR + 24],
  ]);
  on.line('construction', [
    [x(shoulder), y(SHOULDER)],
    [x(shoulder), FLOOR + 58],
  ]);

  // As far as the hand comes, a sixth of a turn about the shoulder.
  const [dx, dy] = [r * Math.cos(Math.PI / 6), r * Math.sin(Math.PI / 6)];
  const role = within ? 'dimension' : 'emphasis';
  on.path(
    role,
    `M${x(shoulder - dx).toFixed(3)} ${y(SHOULDER + dy).toFixed(3)}A${(r * scale).toFixed(3)} ${(r * scale).toFixed(3)} 0 0 ${way > 0 ? 0 : 1} ${x(shoulder - dx).toFixed(3)} ${y(SHOULDER - dy).toFixed(3)}`,
  );
  on.line(role, [
    [x(shoulder), y(SHOULDER)],
    [x(shoulder - r), y(SHOULDER)],
  ]);

  across(on, 18, x(-edge), x(edge), on.length(W));
  const places = [x(child), x(edge), x(shoulder)];
  const texts = [gap, on.length(k)];
  if (way < 0) chain(on, FLOOR + 20, places.reverse(), texts.reverse());
  else chain(on, FLOOR + 20, places, texts);
  across(on, FLOOR + 56, x(shoulder - r), x(shoulder), on.length(r));
  bar(on, 8, FLOOR + 80, scale);
  on.text(
    356,
    FLOOR + 82,
    `${formula.outputs.within.name}: ${verdict}`,
    'end',
    within ? undefined : 'emphasis',
  );

  return {
    width: WIDTH,
    height: FLOOR + 88,
    marks: on.marks,
    says: `The child's plane as the camera faces it: ${gap} from the child to the nearer edge of a frame ${on.length(W)} wide, ${on.length(k)} more to the spotter's shoulder, and a reach of ${on.length(r)}. Within reach: ${verdict}.`,
    table: {
      head: ['drawn', 'length'],
      rows: [
        ['frame width', on.length(W)],
        ['child to the nearer edge', gap],
        ['edge to the shoulder', on.length(k)],
        ['reach', on.length(r)],
      ],
    },
  };
};
