import { isChoice, type ChoiceInput } from '../../formula/record.ts';
import { all, one } from './dom.ts';
import type { LivePlate } from './live.ts';

const sides = (field: Element): HTMLInputElement[] =>
  all<HTMLInputElement>(field, '.field-custom input');

const textOf = (field: Element): string => {
  const { custom = '', unit = '' } = one(field, 'template')?.dataset ?? {};
  return (
    sides(field)
      .map(({ value }) => value.trim())
      .join(custom) + unit
  );
};

/** Brings out the two fields of a written-out choice, with its two numbers in them. */
const unfold = (field: Element, text: string): void => {
  const template = field.querySelector('template');
  if (template && !one(field, '.field-custom')) template.after(template.content.cloneNode(true));
  const numbers = text.match(/[\d.,]+/g) ?? [];
  sides(field).forEach((side, i) => {
    side.value = numbers[i] ?? '';
  });
};

/** Sets a choice that is, or just was, written out: both fields, or the list alone. */
export const setCustom = (
  field: Element,
  select: HTMLSelectElement,
  input: ChoiceInput,
  text: string,
): void => {
  // A size that is also a listed one stays in the two fields while a reader types there.
  if (one(field, '.field-custom') && textOf(field) === text) return;
  const listed = Object.hasOwn(input.choices, text);
  select.value = listed ? text : 'custom';
  if (listed) one(field, '.field-custom')?.remove();
  else unfold(field, text);
};

/** The reader chose “custom”, or typed in one of its two fields. */
export const readCustom = ({ state, changed }: LivePlate, key: string, target: Element): void => {
  const field = target.closest('[data-field]');
  const input = state.calculator.formula.inputs[key];
  if (!field || !input || !isChoice(input)) return;
  if (!target.closest('.field-custom')) {
    const before = state.given[key];
    // What was chosen before, written out; a record's own example where nothing can be.
    const text = before ? input.custom?.write(before) : undefined;
    unfold(field, text ?? one(field, 'template')?.dataset['example'] ?? '');
  }
  state.type(key, textOf(field));
  changed();
};
