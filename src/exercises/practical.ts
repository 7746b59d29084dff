import { InputError } from '../formula/errors.ts';
import { readInput, writeInput } from '../formula/read.ts';
import type { Formula } from '../formula/record.ts';
import { dimensionOf } from '../formula/units.ts';
import { readAnswer } from './mark.ts';
import { inputsOf, readOnce, resultOf } from './number-of.ts';
import type { Givens, Template } from './template.ts';
import { askedOf, type Asked } from './variant.ts';

type Practical = Extract<Template, { kind: 'practical' }>;

/** The student’s own readings held against the formula. It earns no mark by itself: the rubric is a person’s to judge. */
export type Gap =
  | {
      readonly kind: 'compared';
      readonly asked: Asked;
      readonly computed: number;
      readonly measured: number;
      /** Measured less computed, in stops for what counts in stops and as a share of the computed otherwise. */
      readonly gap: number;
      readonly inStops: boolean;
    }
  | { readonly kind: 'unreadable'; readonly troubles: Readonly<Record<string, string>> };

/**
 * Compares what was measured with what the formula makes of the other readings.
 * @param typed every reading by the id of its input, and the compared one by the id of its result
 */
export const gapOf = (
  typed: Givens,
  template: Practical,
  formula: Formula,
  stored = false,
): Gap => {
  const troubles: Record<string, string> = {};
  const given: [string, string][] = Object.entries(template.given);
  for (const id of template.measured) {
    const [, , input] = inputsOf(formula).find(([, one]) => one === id) ?? [];
    if (!input) throw new Error(`${template.id}: ${formula.id} has no input “${id}”.`);
    try {
      const text = typed[id] ?? '';
      const value =
        stored || !('unit' in input)
          ? readOnce(input, text)
          : readInput(input, text, { unit: input.unit });
      given.push([id, writeInput(input, value)]);
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      troubles[id] = error.message;
    }
  }
  const asked = askedOf(formula, template.compare);
  let measured = NaN;
  try {
    measured = readAnswer(typed[template.compare] ?? '', asked, stored);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    troubles[template.compare] = error.message;
  }
  if (Object.keys(troubles).length > 0) return { kind: 'unreadable', troubles };
  let computed: unknown;
  try {
    computed = resultOf(formula, Object.fromEntries(given), template.compare);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return { kind: 'unreadable', troubles: { [error.input ?? template.compare]: error.message } };
  }
  if (typeof computed !== 'number' || !Number.isFinite(computed))
    return {
      kind: 'unreadable',
      troubles: { [template.compare]: 'These readings give no finite number to compare with.' },
    };
  const dimension = dimensionOf(asked.unit);
  const inStops = ['stops', 'ev', 'f-number'].includes(dimension);
  const gap =
    dimension === 'f-number'
      ? 2 * Math.log2(measured / computed)
      : inStops
        ? measured - computed
        : measured / computed - 1;
  return { kind: 'compared', asked, computed, measured, gap, inStops };
};
