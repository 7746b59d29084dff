import { as } from '../formula/quantities.ts';
import type { Given, Results } from '../formula/record.ts';
import { showResult, type Style } from '../formula/show.ts';
import { writeNumber } from '../formula/notation/write.ts';
import formula from '../optics/lens/equivalence.ts';
import { framed, type Format, type Frame } from '../optics/lens/frame.ts';
import { across } from './dimension.ts';
import type { Box } from './clip.ts';
import { corners, pen, WIDTH } from './pen.ts';
import { bar } from './scale.ts';
import type { Sheet } from './sheet.ts';

const MIDDLE = 86;
const APEX = 320;

/** Both formats over one another with their crops and diagonals, and the one angle that both lenses take in. */
export const draw = (given: Given, results: Results, style: Style = {}): Sheet => {
  const { format, to, f, aspect } = given as unknown as Parameters<typeof formula.compute>[0];
  const on = pen(style);
  const show = (key: 'factor' | 'fEquivalent' | 'fByWidth' | 'NEquivalent'): string =>
    showResult(formula.outputs[key], results[key], style);
  const alone = f === undefined;
  const [cx, room] = alone ? [180, 330] : [104, 192];
  const scale = Math.min(
    room / Math.max(format.width, to.width),
    140 / Math.max(format.height, to.height),
  );
  const around = ({ across: w, up: h }: Frame): Box => [
    cx - (w * scale) / 2,
    MIDDLE - (h * scale) / 2,
    cx + (w * scale) / 2,
    MIDDLE + (h * scale) / 2,
  ];
  const size = ({ width, height }: Format): string =>
    `${writeNumber(as(width, 'mm'), 4, { ...style, exact: true })} × ${on.mm(height)}`;

  const prints = [format, to].map((one, i) => {
    const print = framed({ format: one, orientation: 'landscape', aspect });
    const [left, top, right, bottom] = around(print);
    on.ring(i ? 'shade' : 'object', corners(around({ across: one.width, up: one.height })));
    if (aspect) on.ring('hidden', corners([left, top, right, bottom]));
    // One diagonal falls, the other rises: two lie apart even where the shapes agree.
    on.line(
      'construction',
      i
        ? [
            [left, bottom],
            [right, top],
          ]
        : [
            [left, top],
            [right, bottom],
          ],
    );
    return print;
  });
  // The larger is named above both, the smaller under both.
  const swap = Math.hypot(to.width, to.height) > Math.hypot(format.width, format.height);
  const tall = (Math.max(format.height, to.height) * scale) / 2;
  on.text(cx, MIDDLE - tall - 6, `outer: ${size(swap ? to : format)}`, 'middle');
  on.text(cx, MIDDLE + tall + 15, `inner: ${size(swap ? format : to)}`, 'middle');
  bar(on, 8, 214, scale);

  const rows = [
    ['given format', size(format)],
    ['other format', size(to)],
    ['crop factor', show('factor')],
  ];
  if (!alone) {
    const [d, e] = prints.map((print) => Math.hypot(print.across, print.up)) as [number, number];
    const g = (f * e) / d;
    const long = Math.max(f, g);
    const unit = Math.min(96 / long, 120 / Math.max(d, e));
    const slope = d / 2 / f;
    const out = Math.min(34, 70 / slope);
    on.area('light', [
      [APEX, MIDDLE],
      [APEX + out, MIDDLE - out * slope],
      [APEX + out, MIDDLE + out * slope],
    ]);
    on.area('light', [
      [APEX, MIDDLE],
      [APEX - long * unit, MIDDLE - long * unit * slope],
      [APEX - long * unit, MIDDLE + long * unit * slope],
    ]);
    for (const sign of [-1, 1])
      on.line('light', [
        [APEX - long * unit, MIDDLE - sign * long * unit * slope],
        [APEX + out, MIDDLE + sign * out * slope],
      ]);
    on.line('object', [
      [APEX - f * unit, MIDDLE - (d / 2) * unit],
      [APEX - f * unit, MIDDLE + (d / 2) * unit],
    ]);
    on.line('shade', [
      [APEX - g * unit, MIDDLE - (e / 2) * unit],
      [APEX - g * unit, MIDDLE + (e / 2) * unit],
    ]);
    on.line('construction', [
      [APEX, MIDDLE],
      [APEX, 196],
    ]);
    across(on, 172, APEX - f * unit, APEX, on.mm(f));
    across(on, 194, APEX - g * unit, APEX, show('fEquivalent'));
    bar(on, 224, 214, unit);
    rows.push(
      ['focal length', on.mm(f)],
      ['equivalent by diagonal', show('fEquivalent')],
      ['equivalent by width', show('fByWidth')],
    );
  }
  const stop =
    results['NEquivalent'] === undefined
      ? ''
      : ` For the same blur and depth set ${show('NEquivalent')}.`;
  if (stop) rows.push(['equivalent f-number', show('NEquivalent')]);
  return {
    width: WIDTH,
    height: 220,
    marks: on.marks,
    says: `${size(format)} and ${size(to)} over one another${aspect ? ', the print’s crop dashed' : ''}: their diagonals are as 1 to ${show('factor')}.${alone ? '' : ` ${on.mm(f)} on the first sees the same angle from corner to corner as ${show('fEquivalent')} on the second.`}${stop}`,
    table: { head: ['drawn', 'value'], rows },
  };
};
