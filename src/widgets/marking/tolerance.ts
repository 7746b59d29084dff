import { InputError } from '../../formula/errors.ts';
import { parseQuantity } from '../../formula/notation/quantity.ts';
import { dimensionOf } from '../../formula/units.ts';
import type { Tolerance } from '../../exercises/span.ts';
import type { Asking, Template } from '../../exercises/template.ts';
import { askedOf, type Formulas } from '../../exercises/variant.ts';

/**
 * Reads a tolerance as an instructor types it: “5 %”, “1/3 stop”, “2 cm”.
 * @returns undefined where the field is empty; a sentence where it cannot be read
 */
export const readTolerance = (
  text: string,
  template: Template & Asking,
  formulas: Formulas,
): Tolerance | string | undefined => {
  if (text.trim() === '') return undefined;
  const asked = askedOf(formulas(template.formula), template.ask);
  const read = (unit: typeof asked.unit): number =>
    parseQuantity(text, {
      name: 'tolerance',
      unit,
      range: [0, Infinity],
      bare: 'none',
      example: 1,
    });
  try {
    if (text.includes('%')) return { relative: read('%'), absolute: 0 };
    if (/stops?/i.test(text) && !['stops', 'ev'].includes(dimensionOf(asked.unit)))
      return { stops: read('stop'), perDoubling: dimensionOf(asked.unit) === 'f-number' ? 2 : 1 };
    return { relative: 0, absolute: read(asked.unit) };
  } catch (error) {
    if (error instanceof InputError) return error.message;
    throw error;
  }
};
