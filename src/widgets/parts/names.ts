import { spelt } from '../../formula/notation/spelt.ts';
import { idOf, isChoice, type Input, type QuantityInput } from '../../formula/record.ts';
import { factorOf } from '../../formula/units.ts';
import { sayInput } from '../../formula/show.ts';

/** What the page before any script needs besides the state: ids, titles, presets. None of it is sent to the reader. */
export const fieldId = (plate: string, input: Input): string => `field-${plate}-${idOf(input)}`;

/** A name as a label: its first letter large. */
export const titleOf = (named: {
  readonly name: string;
  readonly label?: string | undefined;
}): string => {
  const name = spelt(named);
  return name.charAt(0).toUpperCase() + name.slice(1);
};

export interface Preset {
  readonly si: number;
  readonly text: string;
  readonly spoken: string;
}

/** The usual values of an input; infinity among them where leaving the field out means it. */
export const presetsOf = (input: QuantityInput): Preset[] => {
  const usual = (input.series ?? []).map((x) => x * factorOf(input.unit));
  const all = input.default === Infinity ? [...usual, Infinity] : usual;
  return all.map((si) => ({
    si,
    text: si === Infinity ? '∞' : String(Number((si / factorOf(input.unit)).toPrecision(6))),
    spoken: sayInput(input, si, {}),
  }));
};

/** How a written-out choice is put together, from its record's own example: `30x20mm` is two numbers, an x and mm. */
export const customParts = (
  form: string,
): { readonly join: string; readonly unit: string; readonly example: string } => {
  const [, example = '', join = '', unit = ''] = /([\d.]+([^\d.]+)[\d.]+(\D*))$/.exec(form) ?? [];
  if (join === '')
    throw new Error(`“${form}” must end in an example of two numbers, such as 30x20mm.`);
  return { join, unit, example };
};

export const isQuantity = (input: Input): input is QuantityInput => !isChoice(input);
