import type { Formula, Results, Value } from './record.ts';

/**
 * Computes from complete values, and refuses to hand on a number that is none.
 * Throws: InputError from the formula where the values do not go together; Error if the formula yields NaN.
 */
export const compute = (formula: Formula, values: Readonly<Record<string, Value>>): Results => {
  const results = formula.compute(values);
  for (const key in results)
    if (Number.isNaN(results[key]))
      throw new Error(`${formula.id} gave no number for ${key} from ${JSON.stringify(values)}`);
  return results;
};
