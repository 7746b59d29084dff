import type { Given, Results } from '../formula/record.ts';
import { showResult, type Style } from '../formula/show.ts';
import formula from '../optics/lens/perspective.ts';
import { camera } from './camera.ts';
import { chain } from './dimension.ts';
import { corners, pen, WIDTH } from './pen.ts';
import { bar, scaleFor } from './scale.ts';
import type { Sheet } from './sheet.ts';

const [PUPIL, ROW, TALL] = [32, 104, 54];
/** Two equal features, as high as a small child's head. */
const FEATURE = 0.18;

/** Two equal features one behind the other, seen from one distance and from another: the rays, and the sizes they make. */
export const draw = (given: Given, results: Results, style: Style = {}): Sheet => {
  const { s, depth, compare } = given as unknown as Parameters<typeof formula.compute>[0];
  const on = pen(style);
  const rows = [{ s, ratio: results['ratio'], key: 'ratio' as const }];
  if (compare !== undefined)
    rows.push({ s: compare, ratio: results['compareRatio'], key: 'compareRatio' as never });
  // The farther row sets the scale; where depth dwarfs the distances it may run off, and says so.
  const farthest = Math.max(...rows.map((row) => row.s));
  const scale = scaleFor(Math.min(188 / (farthest + depth), 300));
  const half = Math.min((FEATURE / 2) * scale, 30);
  const head = rows.map((row, i) => {
    const axis = 50 + i * ROW;
    const [near, far] = [PUPIL + row.s * scale, PUPIL + (row.s + depth) * scale];
    const ratio = Number(row.ratio);
    for (const sign of [1, -1]) {
      // Rays past the near feature's edges, on to the far one's plane: by so much it outgrows its equal.
      on.line(
        'light',
        [
          [PUPIL, axis],
          [far, axis + sign * half * ratio],
        ],
        [4, axis - 44, 262, axis + 34],
      );
      on.line('construction', [
        [PUPIL, axis],
        [far, axis + sign * half],
      ]);
    }
    on.line('object', [
      [near, axis - half],
      [near, axis + half],
    ]);
    on.line('object', [
      [far, axis - half],
      [far, axis + half],
    ]);
    camera(on, PUPIL, axis, Math.min(scale, 110), 9);
    chain(on, axis + 40, [PUPIL, near, far], [on.length(row.s), on.length(depth)]);
    // The same two as they stand in the picture, enlarged until the near one is as tall in both rows.
    const foot = axis + 30;
    on.area('light', corners([268, foot - TALL, 290, foot]));
    on.ring('object', corners([268, foot - TALL, 290, foot]));
    on.area('figure', corners([298, foot - TALL / ratio, 320, foot]));
    on.line('construction', [
      [268, foot - TALL],
      [330, foot - TALL],
    ]);
    on.text(279, foot + 14, 'near', 'middle');
    on.text(311, foot + 14, 'far', 'middle');
    const text = showResult(formula.outputs.ratio, ratio, style);
    on.text(356, foot - TALL - 7, `${text} : 1`, 'end', 'emphasis');
    return [on.length(row.s), text] as const;
  });
  const height = rows.length * ROW + 26;
  bar(on, 8, height - 6, scale);
  on.text(356, height - 4, 'enlarged, the near ones alike', 'end');
  return {
    width: WIDTH,
    height,
    marks: on.marks,
    says: `From the side: two equal features, one ${on.length(depth)} behind the other. ${head.map(([at, ratio]) => `From ${at} the near one is drawn ${ratio} times as large as the far one.`).join(' ')}`,
    table: { head: ['distance to the near feature', 'near over far'], rows: head },
  };
};
