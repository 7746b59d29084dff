import { writeQuantity } from '../formula/notation/write.ts';
import type { Given, Results } from '../formula/record.ts';
import { showResult, type Style } from '../formula/show.ts';
import formula from '../optics/light/flash-exposure.ts';
import { pen, widthOf, WIDTH } from './pen.ts';
import type { Sheet } from './sheet.ts';
import { stopScale } from './stop-scale.ts';
import { stop } from './stops.ts';
import { words } from './words.ts';

const [LENS, DIAL] = [62, 158];

const part = (power: number, style: Style): string =>
  power === 1 ? '1/1' : writeQuantity(power, '1', { fraction: true }, style);

/** The f-number asked for and wanted on one scale of stops, and under it the power dial with what is set and needed. */
export const draw = (given: Given, results: Results, style: Style = {}): Sheet => {
  const { wanted, P, lowest } = given as unknown as Parameters<typeof formula.compute>[0];
  const on = pen(style);
  const show = (key: keyof typeof formula.outputs): string =>
    showResult(formula.outputs[key], results[key], style);
  const N = Number(results['N']);
  const needed = results['needed'] === undefined ? undefined : Number(results['needed']);

  const stopsShown = wanted === undefined ? [N] : [N, wanted];
  const { at } = stopScale(on, LENS, stopsShown);
  on.text(4, 12, 'lens');
  for (const [one, role] of [
    [N, 'emphasis'],
    [wanted, 'object'],
  ] as const)
    if (one !== undefined)
      on.line(role, [
        [at(one), LENS - 12],
        [at(one), LENS],
      ]);
  words(on, LENS - 34, [
    [at(N), `asked for ${show('N')}`, 'emphasis'],
    ...(wanted === undefined ? [] : [[at(wanted), `wanted ${stop(wanted, style)}`] as const]),
  ]);

  // Full power to the right; a mark at each halving, the unit's own range drawn heavier.
  const all = [P, lowest, needed].filter((one) => one !== undefined);
  const last = Math.min(-3, Math.floor(Math.min(...all.map(Math.log2))) - 1);
  const first = Math.max(0, Math.ceil(Math.max(...all.map(Math.log2))));
  const step = (WIDTH - 48) / (first - last);
  const x = (power: number): number => 24 + (Math.log2(power) - last) * step;
  on.text(4, DIAL - 52, 'power dial');
  on.line('dimension', [
    [8, DIAL],
    [WIDTH - 8, DIAL],
  ]);
  on.line('object', [
    [lowest === undefined ? 8 : x(lowest), DIAL],
    [x(1), DIAL],
  ]);
  let end = WIDTH;
  for (let n = 0; n >= last; n -= 1) {
    const place = x(2 ** n);
    const inside = lowest === undefined || 2 ** n >= lowest * (1 - 1e-9);
    on.line(inside ? 'object' : 'dimension', [
      [place, DIAL],
      [place, DIAL + (inside ? 8 : 5)],
    ]);
    // A dial’s marks are whole, 1/1024 too.
    const text = `1/${2 ** -n}`;
    const half = widthOf(text) / 2;
    if (place + half > end) continue;
    end = place - half - 5;
    on.text(place, DIAL + 22, text, 'middle', inside ? undefined : 'dimension');
  }
  on.line('emphasis', [
    [x(P), DIAL - 12],
    [x(P), DIAL],
  ]);
  if (needed !== undefined)
    on.line('object', [
      [x(needed), DIAL - 12],
      [x(needed), DIAL],
    ]);
  words(on, DIAL - 34, [
    [x(P), `set ${part(P, style)}`, 'emphasis'],
    ...(needed === undefined
      ? []
      : [
          [
            x(needed),
            `needed ${needed > 1 ? `${show('needed')} × full` : show('needed')}`,
          ] as const,
        ]),
  ]);
  return {
    width: WIDTH,
    height: DIAL + 34,
    marks: on.marks,
    says: `On a scale of f-numbers the flash asks for ${show('N')}${wanted === undefined ? '' : `, ${stop(wanted, style)} is wanted`}. On the power dial under it ${part(P, style)} is set${needed === undefined ? '' : ` and ${show('needed')} is needed`}${lowest === undefined ? '' : `; the dial ends at ${part(lowest, style)}`}.`,
    table: {
      head: ['', 'f-number', 'power'],
      rows: [
        ['as set', show('N'), part(P, style)],
        ...(wanted === undefined ? [] : [['wanted', stop(wanted, style), show('needed')]]),
      ],
    },
  };
};
