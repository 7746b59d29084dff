import { writeQuantity } from '../formula/notation/write.ts';
import type { Given, Results } from '../formula/record.ts';
import { showResult, type Style } from '../formula/show.ts';
import formula from '../sitting/day/break-even.ts';
import type { Point } from './clip.ts';
import { pen, WIDTH } from './pen.ts';
import type { Sheet } from './sheet.ts';
import { words } from './words.ts';

const [LEFT, TOP, TALL] = [16, 40, 150];

/** What the day leaves for each number of sittings: a loss until the line crosses nought. */
export const draw = (given: Given, results: Results, style: Style = {}): Sheet => {
  const { fixed, booked, noShows, currency } = given as unknown as Parameters<
    typeof formula.compute
  >[0];
  const money: Style = { ...style, currency };
  const on = pen(style);
  const show = (key: keyof typeof formula.outputs): string =>
    showResult(formula.outputs[key], results[key], money);
  const sum = (x: number): string => writeQuantity(x, 'EUR', { decimals: 0 }, money);
  const margin = Number(results['margin']);
  const pays = Number(results['sittings']);
  const come = booked * (1 - noShows);

  const most = Math.max(4, Number.isFinite(pays) ? pays * 1.6 : 8, come * 1.15);
  const left = (n: number): number => n * margin - fixed;
  const nobody = left(0);
  const [low, high] = [Math.min(nobody, left(most), 0), Math.max(left(most), nobody, 0)];
  const range = high - low || 1;
  const x = (n: number): number => LEFT + (n / most) * (WIDTH - LEFT - 24);
  const y = (value: number): number => TOP + ((high - value) / range) * TALL;
  const line: Point[] = [
    [x(0), y(left(0))],
    [x(most), y(left(most))],
  ];
  on.line('object', [
    [x(0), TOP],
    [x(0), TOP + TALL],
  ]);
  on.line('object', [
    [x(0), y(0)],
    [x(most), y(0)],
  ]);
  on.line('light', line);
  const every = [1, 2, 5, 10, 20, 50, 100].find((n) => x(n) - x(0) > 22) ?? Math.ceil(most / 8);
  for (let n = every; n <= most; n += every) {
    on.line('dimension', [
      [x(n), TOP + TALL],
      [x(n), TOP + TALL + 5],
    ]);
    on.text(x(n), TOP + TALL + 20, String(n), 'middle');
  }
  on.text(WIDTH - 8, TOP + TALL + 38, 'sittings', 'end');
  on.text(LEFT, TOP + TALL + 38, `before anyone comes ${sum(nobody)}`);
  if (Number.isFinite(pays))
    on.line('emphasis', [
      [x(pays), y(0) - 10],
      [x(pays), y(0) + 10],
    ]);
  if (come > 0)
    on.line('hidden', [
      [x(come), TOP],
      [x(come), TOP + TALL],
    ]);
  words(on, 14, [
    ...(Number.isFinite(pays)
      ? [[x(pays), `pays from ${show('sittings')}`, 'emphasis'] as const]
      : []),
    ...(come > 0
      ? [[x(come), `expected ${writeQuantity(come, '1', 3, { ...style, exact: true })}`] as const]
      : []),
  ]);
  return {
    width: WIDTH,
    height: TOP + TALL + 50,
    marks: on.marks,
    says: `What the day leaves over the number of sittings: ${sum(nobody)} before anyone comes, ${show('margin')} more with each. ${Number.isFinite(pays) ? `It pays from ${show('sittings')} sittings on.` : 'It never pays.'}`,
    table: {
      head: ['sittings', 'left over'],
      rows: [0, Math.ceil(most / 3), Math.ceil((2 * most) / 3), Math.ceil(most)].map((n) => [
        String(n),
        sum(left(n)),
      ]),
    },
  };
};
