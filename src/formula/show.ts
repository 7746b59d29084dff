import { fitting, unitFor, writeQuantity, type Style } from './notation/write.ts';
import { writeInput } from './read.ts';
import { isChoice, type Input, type Output, type Results, type Shown } from './record.ts';

export type { Style };

/** A number of the worked line; an ellipsis where there is none. */
export const showWorked = ({ value, unit, digits }: Shown, style: Style = {}): string =>
  value === undefined ? '…' : writeQuantity(value, unitFor(unit, undefined, style), digits, style);

/** A result as a reader sees it: a quantity with its unit, a word, yes or no; "not given" where an input is missing. */
export const showResult = (output: Output, value: Results[string], style: Style = {}): string => {
  if (value === undefined) return 'not given';
  if (typeof value === 'boolean') {
    const word = value ? 'yes' : 'no';
    return output.labels?.[word] ?? word;
  }
  if (typeof value === 'string') return output.labels?.[value] ?? value;
  const unit = unitFor(output.unit ?? '1', output.imperial, style);
  return writeQuantity(
    value,
    style.system === 'imperial' ? unit : fitting(value, unit),
    output.digits ?? 3,
    style,
  );
};

/** An input's value as a reader would say it; lengths in metres keep their centimetres. */
export const sayInput = (input: Input, value: unknown, style: Style): string => {
  if (isChoice(input)) {
    const id = writeInput(input, value);
    return input.labels?.[id] ?? id.replace(/(?<=\d) ?x(?=\d)/, ' × ').replace(/(?<=\d)mm$/, ' mm');
  }
  if (Array.isArray(value)) return value.map((one) => sayInput(input, one, style)).join(', ');
  if (typeof value !== 'number') return 'not given';
  if (value === Infinity) return 'infinity';
  const unit = unitFor(input.unit, input.imperial, style);
  if (unit === 's') return writeQuantity(value, unit, { fraction: true }, style);
  const centimetres = unit === 'm' && Math.abs(value * 100 - Math.round(value * 100)) < 1e-9;
  return centimetres
    ? writeQuantity(value, unit, { decimals: 2 }, style)
    : writeQuantity(
        value,
        unit,
        { significant: 4 },
        unit === 'ft' ? style : { ...style, exact: true },
      );
};
