import { fitting, unitFor, writeQuantity, type Style } from './notation/write.ts';
import type { Output, Results, Shown } from './record.ts';

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
