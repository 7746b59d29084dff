import type { Given, Results } from '../formula/record.ts';
import { showResult, type Style } from '../formula/show.ts';
import { writeQuantity } from '../formula/notation/write.ts';
import formula from '../optics/aperture/movement-blur.ts';
import { arrow } from './arrow.ts';
import { disc } from './disc.ts';
import { corners, pen, WIDTH } from './pen.ts';
import { bar, scaleFor } from './scale.ts';
import type { Sheet } from './sheet.ts';

const [LEFT, END, ROW] = [12, 344, 66];
/** The largest radius a row has room for. */
const MOST = 21;

/** How far a point's image smears by flash and by ambient light, beside the circle, all to one scale. */
export const draw = (given: Given, results: Results, style: Style = {}): Sheet => {
  const { u, c } = given as unknown as Parameters<typeof formula.compute>[0];
  const on = pen(style);
  const show = (key: keyof typeof formula.outputs): string =>
    showResult(formula.outputs[key], results[key], style);
  const kinds = [
    ['flash', 'flashCircles', 'light', 'by flash'],
    ['ambient', 'ambientCircles', 'shade', 'by ambient light'],
  ] as const;
  const smears = kinds.filter(([key]) => results[key] !== undefined);
  const lengths = [...smears.map(([key]) => Number(results[key])), c ?? 0].sort((a, b) => b - a);
  const [longest = 0, second = 0] = lengths;
  // One far longer than the rest runs off the sheet, so that the rest can be seen.
  const most = second > 0 ? Math.min(longest, 40 * second) : longest;
  // What no drawing could show counts as nothing.
  const scale = most > 1e-30 ? scaleFor((END - LEFT - 16) / most) : 0;
  const circle = c === undefined ? undefined : (c * scale) / 2;

  // Each row is a name over what it names; a circle too large for its row is drawn as its width alone.
  let y = 14;
  const middle = (): number => y + 30;
  if (c !== undefined && circle !== undefined) {
    on.text(LEFT, y, `circle ${showResult(formula.outputs.flash, c, style)}`);
    if (circle <= MOST) disc(on, 'emphasis', LEFT + circle, middle(), circle);
    on.line('object', [
      [LEFT, middle()],
      [Math.min(LEFT + 2 * circle, END), middle()],
    ]);
    if (LEFT + 2 * circle > END) arrow(on, 'object', END - 12, middle(), END + 10, middle());
    y += ROW;
  }
  const rows = smears.map(([key, circles, role, name], row) => {
    const blur = Number(results[key]);
    const off = blur * scale > END - LEFT;
    const end = off ? END : LEFT + blur * scale;
    const box = corners([LEFT, middle() - 8, end, middle() + 8]);
    on.text(LEFT, y, `${name} ${show(key)}`, 'start', row ? undefined : 'emphasis');
    if (c !== undefined) on.text(356, y, `${show(circles)} circles`, 'end');
    on.area(role, box);
    on.ring(role, box);
    if (off) arrow(on, role, end - 12, middle(), end + 10, middle());
    // Laid end to end the circles can be counted, while they are few.
    if (circle !== undefined && circle > 2.5 && circle <= MOST)
      for (let x = LEFT + circle; x + circle <= end + 0.5; x += 2 * circle)
        disc(on, 'construction', x, middle(), circle);
    y += ROW;
    return [name, show(key), show(circles)] as const;
  });
  if (!smears.length) {
    on.text(LEFT, y, 'no shutter and no flash duration given');
    y += 22;
  }
  if (scale > 0) {
    bar(on, 8, y + 4, scale);
    on.text(356, y + 6, 'on the sensor', 'end');
  }
  const notes = [
    ...(results['ghost'] === undefined ? [] : [`ghost: ${show('ghost')}`]),
    ...(results['outlasts'] === true ? ['the flash outlasts the shutter'] : []),
  ];
  notes.forEach((note, i) =>
    on.text(
      i ? 356 : LEFT,
      y + 32,
      note,
      i ? 'end' : 'start',
      note.endsWith('no') ? undefined : 'emphasis',
    ),
  );
  const speed = writeQuantity(u, 'm/s', { significant: 2 }, style);
  return {
    width: WIDTH,
    height: y + 36,
    marks: on.marks,
    says: `A point moving at ${speed} smears on the sensor, drawn to one scale${c === undefined ? '' : ` with the circle of ${showResult(formula.outputs.flash, c, style)}`}. ${smears.length ? `The smear is ${smears.map(([key, , , name]) => `${show(key)} ${name}`).join(' and ')}` : 'No times are given'}.`,
    table: {
      head: ['drawn', 'on the sensor', 'circles'],
      rows: [
        ...rows,
        [
          'circle',
          c === undefined ? 'not given' : showResult(formula.outputs.flash, c, style),
          '1',
        ],
        ['speed of the child', speed, '–'],
      ],
    },
  };
};
