import type { Given, Results } from '../formula/record.ts';
import { showResult, type Style } from '../formula/show.ts';
import formula from '../optics/light/softness.ts';
import type { Point } from './clip.ts';
import { across, upright } from './dimension.ts';
import { oval } from './figure.ts';
import { pen, WIDTH } from './pen.ts';
import { bar, scaleFor } from './scale.ts';
import type { Sheet } from './sheet.ts';

const [LEFT, TOP, TALL] = [52, 24, 140];
const FACE = 0.15;

/** The source and the face from above, to scale, with the angle between its edges; under it the shadow's edge over the face. */
export const draw = (given: Given, results: Results, style: Style = {}): Sheet => {
  const { w, D, turn, face } = given as unknown as Parameters<typeof formula.compute>[0];
  const on = pen(style);
  const show = (key: keyof typeof formula.outputs): string =>
    showResult(formula.outputs[key], results[key], style);
  const wide = face ?? 0.105;

  const scale = scaleFor(
    Math.min(
      (WIDTH - LEFT - 70) / (D + Math.abs(Math.sin(turn)) * (w / 2)),
      TALL / Math.max(w, FACE),
    ),
  );
  const lead = Math.abs(Math.sin(turn)) * (w / 2) * scale;
  const [front, middle] = [LEFT + lead, TOP + TALL / 2];
  const edge: Point = [front + D * scale, middle];
  const ends = [-1, 1].map((side): Point => [
    front + side * Math.sin(turn) * (w / 2) * scale,
    middle + side * Math.cos(turn) * (w / 2) * scale,
  ]);
  const [one, other] = ends as [Point, Point];
  const sheet = [0, 0, WIDTH, TOP + TALL + 20] as const;
  oval(on, 'figure', edge[0] + 0.09 * scale, middle, 0.09 * scale, (wide / 2) * scale * 1.4, sheet);
  on.line('object', [one, other]);
  for (const end of ends) on.line('light', [end, edge]);
  on.line('construction', [[front, middle], edge]);
  on.text(edge[0] + 0.18 * scale + 8, middle + 4, show('angle'), 'start', 'emphasis');
  upright(
    on,
    LEFT - 24,
    Math.min(one[1], other[1]),
    Math.max(one[1], other[1]),
    on.length(w),
    true,
  );
  across(on, TOP + TALL + 26, front, edge[0], on.length(D));
  bar(on, LEFT, TOP + TALL + 48, scale);

  // Over the face's width the light runs from full to none across the shadow's edge; to a scale of its own.
  const [high, low] = [TOP + TALL + 84, TOP + TALL + 134];
  const blur = results['across'] === undefined ? undefined : Number(results['across']);
  const span = Math.max(wide, blur ?? 0) * 1.15;
  const grain = scaleFor((WIDTH - 32) / span);
  const [start, centre] = [WIDTH / 2 - (wide / 2) * grain, WIDTH / 2];
  on.text(8, high - 12, 'the shadow’s edge over the face');
  on.line('dimension', [
    [start, low],
    [start + wide * grain, low],
  ]);
  if (blur !== undefined) {
    const half = (blur / 2) * grain;
    const left = Math.min(start, centre - half - 8);
    const right = Math.max(start + wide * grain, centre + half + 8);
    on.area('light', [
      [left, high],
      [centre - half, high],
      [centre + half, low],
      [left, low],
    ]);
    on.area('shade', [
      [centre - half, high],
      [right, high],
      [right, low],
      [centre + half, low],
    ]);
    on.text(left + 4, high + 28, 'light');
    on.text(right - 4, high + 28, 'shade', 'end');
    across(on, low + 20, centre - half, centre + half, show('across'));
  }
  across(
    on,
    low + 52,
    start,
    start + wide * grain,
    `face ${showResult(formula.outputs.across, wide, style)}`,
  );
  bar(on, 8, low + 80, grain);
  return {
    width: WIDTH,
    height: low + 92,
    marks: on.marks,
    says: `From above, to scale: the source ${on.length(w)} wide, ${on.length(D)} from the face, fills ${show('angle')} of its view. Under it, to a larger scale, the shadow’s edge: from full light to full shade it takes ${show('across')} of a face ${showResult(formula.outputs.across, wide, style)} wide.`,
    table: {
      head: ['', 'value'],
      rows: [
        ['apparent width', show('angle')],
        ['upright edge', show('across')],
        ['level edge', show('up')],
        ['share of the face', show('share')],
      ],
    },
  };
};
