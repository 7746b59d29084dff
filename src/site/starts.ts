import { readInput } from '../formula/read.ts';
import { isChoice, type Formula, type Given } from '../formula/record.ts';
import { factorOf } from '../formula/units.ts';

/** What a page shows before anyone has typed: every input at its start, in SI. */
export const startsOf = (formula: Formula): Given =>
  Object.fromEntries(
    Object.entries(formula.inputs).map(([key, input]) => [
      key,
      isChoice(input) ? readInput(input, input.start) : input.start * factorOf(input.unit),
    ]),
  );
