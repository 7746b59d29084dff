import { InputError } from '../../formula/errors.ts';
import { readInput } from '../../formula/read.ts';
import { isChoice } from '../../formula/record.ts';
import { solveFor } from '../../formula/solve.ts';
import { sayInput } from '../../formula/show.ts';
import { shownUnit } from './calculator.ts';
import { button } from './dom.ts';
import type { LivePlate } from './live.ts';
import type { PlateState } from './plate-state.ts';

/** What was asked: which input, from which result (record keys), and that result's value as typed. */
export interface Question {
  readonly input: string;
  readonly result: string;
  readonly value: string;
}

/**
 * Every value of an input that gives the wanted result, the others being as they are on the plate.
 * Throws: InputError for a value that cannot be read or reached, with what can be.
 * @returns the values in SI, ascending
 */
export const solutions = (
  { calculator: { formula }, given, style }: PlateState,
  { input, result, value }: Question,
): number[] => {
  const output = formula.outputs[result];
  if (!output?.unit) throw new InputError('Choose a result that is a quantity.');
  const unit = shownUnit(output.unit, output.imperial, style);
  const { name } = output;
  const target = {
    name,
    tex: '',
    unit: output.unit,
    range: [-Infinity, Infinity],
    start: 1,
    means: '',
  } as const;
  const wanted = readInput(target, value, { unit }) as number;
  if (!Number.isFinite(wanted))
    throw new InputError(`To ask with ${name} it must be finite. Try another value.`);
  return solveFor(formula, given, input, { key: result, value: wanted });
};

/** Answers under the form: one value is set at once, of several the reader takes one. */
export const answer = ({ state, changed }: LivePlate, form: HTMLFormElement): void => {
  const asked = Object.fromEntries(new FormData(form)) as unknown as Question;
  const input = state.calculator.formula.inputs[asked.input];
  const place = form.nextElementSibling;
  if (!place || !input || isChoice(input)) return;
  const show = (words: readonly (string | Node)[], failed = false): void => {
    place.className = failed ? 'field-error' : 'field-echo';
    place.replaceChildren(...words);
  };
  try {
    const found = solutions(state, asked);
    const said = found.map((si) => sayInput(input, si, state.style));
    const [only] = found;
    if (found.length === 1 && only !== undefined) {
      state.put(asked.input, only);
      show([`The ${input.name} is set to ${said.join('')}.`]);
      changed();
    } else
      show([
        `${found.length} values fit. Take one: `,
        ...found.map((si, i) =>
          button(said[i] ?? '', { 'data-key': asked.input, 'data-put': String(si) }),
        ),
      ]);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    show([error.message], true);
  }
};
