import { InputError } from '../../formula/errors.ts';
import { readInput } from '../../formula/read.ts';
import { isChoice } from '../../formula/record.ts';
import { solveFor } from '../../formula/solve.ts';
import { sayInput, shownUnit } from './calculator.ts';
import type { PlateState } from './plate-state.ts';

export interface Answer {
  readonly text: string;
  readonly failed: boolean;
  /** The values that fit, in SI, for the reader to take. */
  readonly choices: readonly { readonly text: string; readonly key: string; readonly si: number }[];
}

/**
 * Answers “which focal length gives a view width of 1.2 m?” from the plate's present values. Fetched at its first use.
 * @param form input (record key), result (record key) and value (as typed)
 */
export const ask = (state: PlateState, form: FormData): Answer => {
  const { formula } = state.calculator;
  const text = (name: string): string => {
    const value = form.get(name);
    return typeof value === 'string' ? value : '';
  };
  const key = text('input');
  const input = formula.inputs[key];
  const output = formula.outputs[text('result')];
  if (!input || isChoice(input) || !output?.unit)
    return { text: 'Choose an input and a result.', failed: true, choices: [] };
  try {
    const unit = shownUnit(output.unit, output.imperial, state.style);
    const target = {
      name: output.name,
      tex: '',
      unit: output.unit,
      range: [-Infinity, Infinity],
      start: 1,
      means: '',
    } as const;
    const value = readInput(target, text('value'), { unit }) as number;
    if (!Number.isFinite(value))
      throw new InputError(`${output.name} must be finite to ask with. Try 1 ${unit}.`);
    const roots = solveFor(formula, state.given, key, { key: text('result'), value });
    const choices = roots.map((si) => ({ text: sayInput(input, si, state.style), key, si }));
    return {
      text:
        choices.length > 1
          ? `${choices.length} values fit. Take one:`
          : `The ${input.name} is set to`,
      failed: false,
      choices,
    };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return { text: error.message, failed: true, choices: [] };
  }
};
