import { as, mm } from '../formula/quantities.ts';
import type { Given, Results } from '../formula/record.ts';
import { showResult, type Style } from '../formula/show.ts';
import formula, { angleOfView } from '../optics/lens/angle-of-view.ts';
import { focalLength } from '../optics/lens/inputs.ts';
import { fromLens } from '../optics/lens/measured-from.ts';
import { imageDistance } from '../optics/lens/thin-lens.ts';
import { camera } from './camera.ts';
import type { Box } from './clip.ts';
import { across } from './dimension.ts';
import { fromOver } from './figure.ts';
import { pen, WIDTH } from './pen.ts';
import { bar, scaleFor } from './scale.ts';
import type { Sheet } from './sheet.ts';

const [LENS, AXIS] = [32, 106];
const VIEW: Box = [4, 14, 356, 198];

/** The fan of the angle from above, the frame's width where it is focused, and the neighbouring lenses in thin lines. */
export const draw = (given: Given, results: Results, style: Style = {}): Sheet => {
  const from = given as unknown as Parameters<typeof formula.compute>[0];
  const {
    f,
    format: { width },
  } = from;
  const s = fromLens(from);
  const on = pen(style);
  const near = Number.isFinite(s);
  const v = imageDistance({ f, s });
  const slope = width / 2 / v;
  const scale = near ? scaleFor(Math.min(262 / s, 84 / (s * slope))) : 0;
  const run = near ? scale * s : Math.min(262, 84 / slope);
  const plane = LENS + run;
  const half = run * slope;
  const show = (key: 'horizontal' | 'vertical' | 'diagonal'): string =>
    showResult(formula.outputs[key], results[key], style);
  const rows = [
    ['across the longer side', show('horizontal')],
    ['across the shorter side', show('vertical')],
    ['corner to corner', show('diagonal')],
  ];

  on.area('light', [
    [LENS, AXIS],
    [plane, AXIS - half],
    [plane, AXIS + half],
  ]);
  // The next shorter lens is named over the fan, the next longer under it, so that their names stay apart.
  const label = Math.min(AXIS - half + 4, AXIS - 14);
  const neighbour = (length: number | undefined, side: 1 | -1): void => {
    const other = mm(length ?? Infinity);
    if (length === undefined || !(s > other)) return;
    const image = imageDistance({ f: other, s });
    const rise = (run * width) / 2 / image;
    for (const sign of [1, -1])
      on.line(
        'construction',
        [
          [LENS, AXIS],
          [plane, AXIS + sign * rise],
        ],
        VIEW,
      );
    const reach = Math.min(rise, AXIS - VIEW[1]);
    const y = AXIS + side * reach + 4;
    on.text(
      LENS + (run * reach) / rise + 5,
      side < 0 ? Math.max(12, Math.min(y, label - 14)) : Math.max(y, AXIS + 22),
      on.mm(other),
    );
    rows.push([
      `the same with ${on.mm(other)}`,
      showResult(formula.outputs.horizontal, angleOfView({ d: width, v: image }), style),
    ]);
  };
  const here = as(f, 'mm');
  neighbour(
    focalLength.series.findLast((one) => one < here - 0.05),
    -1,
  );
  neighbour(
    focalLength.series.find((one) => one > here + 0.05),
    1,
  );

  for (const sign of [1, -1])
    on.line('light', [
      [LENS, AXIS],
      [plane, AXIS + sign * half],
    ]);
  on.line('construction', [
    [LENS, AXIS],
    [plane, AXIS],
  ]);
  if (near) {
    on.line('frame', [
      [plane, AXIS - half],
      [plane, AXIS + half],
    ]);
    fromOver(on, plane + 0.07 * scale, AXIS, scale, VIEW);
  }
  camera(on, LENS, AXIS, scale, 13);
  const radius = Math.min(96, run * 0.6);
  const [x, y] = [radius * Math.cos(Math.atan(slope)), radius * Math.sin(Math.atan(slope))];
  on.path(
    'dimension',
    `M${(LENS + x).toFixed(3)} ${(AXIS - y).toFixed(3)}A${radius.toFixed(3)} ${radius.toFixed(3)} 0 0 1 ${(LENS + x).toFixed(3)} ${(AXIS + y).toFixed(3)}`,
  );
  on.text(
    run < 110 ? plane + 64 : LENS + radius + 5,
    AXIS + (run < 110 ? 4 : -4),
    show('horizontal'),
  );
  on.text(plane + 5, label, on.mm(f), 'start', 'emphasis');
  const wide = on.length(2 * s * slope);
  if (near) {
    const clear = plane + 0.16 * scale + 5;
    if (clear < 312) on.text(clear, AXIS + 4, wide);
    else on.text(plane - 6, AXIS - 4, wide, 'end');
    on.line('construction', [
      [plane, AXIS + half],
      [plane, 218],
    ]);
    bar(on, 8, 238, scale);
    rows.push(['frame width where focused', wide], ['focused at, from the lens', on.length(s)]);
  }
  on.line('construction', [
    [LENS, AXIS + 8],
    [LENS, 218],
  ]);
  across(on, 214, LENS, plane, on.length(s));

  return {
    width: WIDTH,
    height: 244,
    marks: on.marks,
    says: `From above: the ${on.mm(f)} lens takes in ${show('horizontal')} across the longer side of the frame${near ? `, ${wide} at ${on.length(s)}` : ', focused at infinity'}. Thin lines show the neighbouring focal lengths.`,
    table: { head: ['drawn', 'value'], rows },
  };
};
