import { writeInput } from './read.ts';
import { idOf, isChoice, type Formula, type Given, type Input, type Value } from './record.ts';

/** Whether an input is shown and counts: some belong to one choice of another. */
export const inPlay = (
  formula: Formula,
  input: Input,
  idIn: (key: string) => string | undefined,
): boolean =>
  Object.entries(input.when ?? {}).every(([id, choice]) => {
    const key = Object.keys(formula.inputs).find(
      (one) => idOf(formula.inputs[one] as Input) === id,
    );
    return key !== undefined && idIn(key) === choice;
  });

/** Drops what belongs to a choice that was not made. */
export const onlyInPlay = (formula: Formula, values: Given): Record<string, Value> => {
  const idIn = (key: string): string | undefined => {
    const input = formula.inputs[key];
    return input && isChoice(input) && values[key] !== undefined
      ? writeInput(input, values[key])
      : undefined;
  };
  return Object.fromEntries(
    Object.entries(values).filter(([key]) => {
      const input = formula.inputs[key];
      return input !== undefined && inPlay(formula, input, idIn);
    }),
  );
};

/** An error's sentence as a page says it: fields by their names, where commands and links have ids. */
export const inWords = ({ id, inputs }: Formula, { message }: Error): string =>
  Object.values(inputs).reduce(
    (text, input) => text.replaceAll(idOf(input), input.name),
    message.replace(`${id} needs`, 'This plate needs'),
  );
