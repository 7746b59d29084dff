import { writeNumber, writeQuantity } from '../formula/notation/write.ts';
import type { Given, Results } from '../formula/record.ts';
import { showResult, type Style } from '../formula/show.ts';
import formula from '../optics/aperture/ambient-exposure.ts';
import { arrow } from './arrow.ts';
import { corners, pen, WIDTH } from './pen.ts';
import type { Sheet } from './sheet.ts';
import { stop } from './stops.ts';

const [TOP, TALL] = [26, 210];
/** Columns: the flash, the ambient, and the words. */
const [LEFT, FLASH, AMBIENT, RIGHT, WORDS] = [40, 66, 122, 158, 172];

/** The ambient ladder: flash and ambient light on one scale of stops, and what moves which. */
export const draw = (given: Given, results: Results, style: Style = {}): Sheet => {
  const { N, t, S, sync, margin } = given as unknown as Parameters<typeof formula.compute>[0];
  const on = pen(style);
  const show = (key: keyof typeof formula.outputs): string =>
    showResult(formula.outputs[key], results[key], style);
  const over = Number(results['over']);
  const below = results['below'] === true;
  const high = Math.ceil(Math.max(0, over)) + 1;
  const low = Math.floor(Math.min(0, over, 0 - margin)) - 1;
  const rung = TALL / (high - low);
  const y = (stops: number): number => TOP + (high - stops) * rung;
  const foot = TOP + TALL;

  const every = Math.ceil(15 / rung);
  for (let n = low; n <= high; n += 1) {
    on.line(n % every ? 'ground' : 'dimension', [
      [LEFT, y(n)],
      [RIGHT, y(n)],
    ]);
    if (n % every === 0)
      on.text(LEFT - 6, y(n) + 4, `${n > 0 ? '+' : ''}${writeNumber(n, { decimals: 0 })}`, 'end');
  }
  for (const x of [LEFT, RIGHT])
    on.line('dimension', [
      [x, TOP],
      [x, foot],
    ]);
  // The flash is taken to be right; the ambient stands where it stands.
  on.area('light', corners([FLASH - 14, y(0), FLASH + 14, foot]));
  on.ring('light', corners([FLASH - 14, y(0), FLASH + 14, foot]));
  on.area('shade', corners([AMBIENT - 14, y(over), AMBIENT + 14, foot]));
  on.ring('shade', corners([AMBIENT - 14, y(over), AMBIENT + 14, foot]));
  on.line('object', [
    [LEFT, y(0)],
    [RIGHT, y(0)],
  ]);
  if (margin > 0)
    on.line('hidden', [
      [LEFT, y(0 - margin)],
      [RIGHT, y(0 - margin)],
    ]);
  on.line('emphasis', [
    [AMBIENT - 14, y(over)],
    [AMBIENT + 14, y(over)],
  ]);
  on.text(FLASH, 14, 'flash', 'middle');
  on.text(AMBIENT, 14, 'ambient', 'middle');

  // Beside the ladder, in the order of their heights and never over one another.
  const beside = [
    [y(0), 'correct', undefined] as const,
    [y(over), show('over'), 'emphasis'] as const,
    ...(margin > 0
      ? [
          [
            y(0 - margin),
            `margin ${writeQuantity(margin, 'stop', { decimals: 2 }, { ...style, exact: true })}`,
            undefined,
          ] as const,
        ]
      : []),
  ].sort(([a], [b]) => a - b);
  let last = TOP - 16;
  beside.forEach(([at, text, role], i) => {
    last = Math.min(Math.max(at + 4, last + 15), foot + 4 - 15 * (beside.length - 1 - i));
    on.text(RIGHT + 6, last, text, 'start', role);
  });

  // What moves which.
  const moves = [
    [`aperture ${stop(N, style)}`, 'moves both', true, true],
    [writeQuantity(S, 'ISO', 4, { ...style, exact: true }), 'moves both', true, true],
    [`shutter ${writeQuantity(t, 's', { fraction: true }, style)}`, 'ambient only', false, true],
    ['flash power', 'flash only', true, false],
    ['flash distance', 'flash only', true, false],
  ] as const;
  moves.forEach(([what, which, flash, ambient], i) => {
    const line = foot + 24 + i * 18;
    for (const [x, moved, role] of [
      [FLASH, flash, 'light'],
      [AMBIENT, ambient, 'shade'],
    ] as const)
      if (moved) {
        arrow(on, role, x, line - 3, x, line - 11);
        arrow(on, role, x, line - 5, x, line + 3);
      }
    on.text(WORDS, line, what);
    on.text(356, line, which, 'end');
  });
  const end = foot + 24 + moves.length * 18;
  on.text(6, end + 6, `share of the whole: ${show('share')}`);
  on.text(
    356,
    end + 6,
    below ? 'under the margin' : 'over the margin',
    'end',
    below ? undefined : 'emphasis',
  );
  const synced = sync === undefined ? '' : ` Shutter slow enough for the flash: ${show('within')}.`;
  return {
    width: WIDTH,
    height: end + 14,
    marks: on.marks,
    says: `A ladder of stops: the flash stands at correct, the ambient light at ${show('over')}, ${below ? 'under' : 'over'} the margin. Aperture and ISO move both, the shutter moves the ambient only, flash power and distance move the flash only.${synced}`,
    table: {
      head: ['on the ladder', 'value'],
      rows: [
        ['ambient against correct', show('over')],
        ['margin under the flash', writeQuantity(margin, 'stop', { decimals: 2 }, style)],
        ['ambient share of the whole', show('share')],
        ['rise over the flash alone', show('rise')],
        ['shutter for the ambient alone', show('correct')],
      ],
    },
  };
};
