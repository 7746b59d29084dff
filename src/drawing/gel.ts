import type { Given, Results } from '../formula/record.ts';
import { showResult, type Style } from '../formula/show.ts';
import { writeQuantity } from '../formula/notation/write.ts';
import formula from '../optics/light/gel.ts';
import { arrow } from './arrow.ts';
import { across } from './dimension.ts';
import { corners, pen, WIDTH } from './pen.ts';
import type { Sheet } from './sheet.ts';
import { words } from './words.ts';

/** Where a camera's white balance is usually set, for comparison: names of the trade on round temperatures. */
const USUAL = [
  [3200, 'tungsten'],
  [5500, 'flash'],
] as const;
const [LEFT, RIGHT, LINE] = [22, 338, 92];

const kelvin = (temperature: number, style: Style): string =>
  writeQuantity(temperature, 'K', { significant: 3 }, style);

/** A ruler in mired: the bare light, the gel's step, and the light behind it; under it the same places in kelvin. */
export const draw = (given: Given, results: Results, style: Style = {}): Sheet => {
  const { source, tau } = given as unknown as Parameters<typeof formula.compute>[0];
  const on = pen(style);
  const show = (key: keyof typeof formula.outputs): string =>
    showResult(formula.outputs[key], results[key], style);
  const behind = Number(results['temperature']);
  const mired = (temperature: number): number => 1e6 / temperature;
  const [from, to] = [mired(source), mired(behind)];
  const [least, most] = [Math.min(from, to), Math.max(from, to)];
  // The usual lights are on the ruler unless the step dwarfs them.
  const wide = most - least > 1500 ? 0 : 1;
  const low = wide ? Math.min(100, least) : least;
  const high = Math.max(wide ? 380 : 0, most, low + 50);
  const span = high - low;
  const x = (value: number): number => LEFT + ((value - low) / span) * (RIGHT - LEFT);

  on.line('object', [[LEFT, LINE], [RIGHT, LINE]]); // prettier-ignore
  const step = [10, 20, 50, 100, 200, 500, 1000, 2000].find((one) => span / one <= 8) ?? 5000;
  const first = Math.ceil(low / step) * step;
  for (let value = first; value <= high + 1e-9; value += step) {
    on.line('dimension', [[x(value), LINE], [x(value), LINE + 6]]); // prettier-ignore
    on.text(x(value), LINE + 20, String(value), 'middle');
  }
  on.text(RIGHT, LINE + 38, 'mired: bluer to the left, warmer to the right', 'end');

  for (const [temperature, at] of [
    [source, from],
    [behind, to],
  ] as const) {
    const warm = temperature === behind;
    on.line(warm ? 'emphasis' : 'light', [[x(at), 46], [x(at), LINE]]); // prettier-ignore
  }
  words(on, 16, [
    [x(from), `source ${kelvin(source, style)}`],
    [x(to), `with gel ${kelvin(behind, style)}`, 'emphasis'],
  ]);
  if (Math.abs(x(to) - x(from)) > 1) arrow(on, 'light', x(from), 62, x(to), 62);
  on.text((x(from) + x(to)) / 2, 78, show('shift'), 'middle');

  // The camera's own settings, and what the two lights are against them.
  const seen = USUAL.filter(([t]) => mired(t) >= low && mired(t) <= high);
  for (const [t] of seen)
    on.line('hidden', [[x(mired(t)), LINE + 46], [x(mired(t)), LINE + 62]]); // prettier-ignore
  words(
    on,
    LINE + 76,
    seen.map(([t, name]) => [x(mired(t)), `${name} ${t} K`] as const),
  );
  on.text(LEFT - 18, LINE + 104, 'white balance, where cameras have it marked');

  // What gets through.
  const top = LINE + 122;
  const through = LEFT + tau * (RIGHT - LEFT);
  on.area('light', corners([LEFT, top, through, top + 16]));
  on.ring('object', corners([LEFT, top, RIGHT, top + 16]));
  on.line('light', [[through, top], [through, top + 16]]); // prettier-ignore
  across(
    on,
    top + 36,
    LEFT,
    Math.max(through, LEFT + 1),
    `${writeQuantity(tau, '%', { significant: 3 }, { ...style, exact: true })} gets through`,
  );
  on.text(RIGHT, top + 54, `loss ${show('loss')}`, 'end', 'emphasis');
  return {
    width: WIDTH,
    height: top + 60,
    marks: on.marks,
    says: `A ruler in mired: the bare light at ${kelvin(source, style)}, ${writeQuantity(from / 1e6, 'mired', { decimals: 0 }, style)}; the gel’s step of ${show('shift')}; behind it ${kelvin(behind, style)}. The gel lets ${writeQuantity(tau, '%', { significant: 3 }, style)} through and takes ${show('loss')}.`,
    table: {
      head: ['light', 'kelvin', 'mired'],
      rows: [
        ['bare', kelvin(source, style), writeQuantity(from / 1e6, 'mired', { decimals: 0 }, style)],
        [
          'behind the gel',
          kelvin(behind, style),
          writeQuantity(to / 1e6, 'mired', { decimals: 0 }, style),
        ],
      ],
    },
  };
};
