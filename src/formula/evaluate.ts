import { compute } from './compute.ts';
import { InputError } from './errors.ts';
import { currencyOf } from './notation/money.ts';
import { complete, readInput, writeInput } from './read.ts';
import { idOf, type Formula, type Results, type Value } from './record.ts';
import { showResult, type Style } from './show.ts';
import { solveFor } from './solve.ts';
import { dimensionOf, siUnit } from './units.ts';

/** One result as evaluate prints it: unrounded SI value, its unit, and the text a reader sees. */
export interface Printed {
  readonly value: number | boolean | string | null;
  readonly unit: string | null;
  readonly text: string;
  readonly infinite?: true;
}

export interface Evaluation {
  readonly formula: string;
  readonly given: Readonly<Record<string, string>>;
  readonly results: Readonly<Record<string, Printed>>;
  /** Every value that fits, where an input was asked for and more than one does. */
  readonly roots?: readonly Printed[];
}

/** An input or output found by the id or the symbol a command used. */
const find = <T extends { readonly name: string; readonly tex?: string }>(
  all: Readonly<Record<string, T>>,
  word: string,
): [string, T] | undefined =>
  Object.entries(all).find(([key, one]) => idOf(one) === word || key === word);

/**
 * Works a formula from text to text: what the command line, published values, links and exercises share.
 *
 * Model: see the formula. `name=?` with exactly one result given asks for that input.
 * Throws: InputError for anything a person could have typed wrongly; any other error is our fault.
 * @param pairs input ids or symbols with their text, in any order
 * @example evaluateText(angleOfView, [['format', '36x24'], ['focal-length', '100mm']])
 */
export const evaluateText = (
  formula: Formula,
  pairs: readonly (readonly [string, string])[],
  style: Style = {},
): Evaluation => {
  const inputIds = Object.values(formula.inputs).map(idOf);
  const values: Record<string, Value> = {};
  const given: Record<string, string> = {};
  const seen = new Set<string>();
  let asked: string | undefined;
  let wanted: { key: string; value: number } | undefined;

  const sums: string[] = [];
  for (const [word, text] of pairs) {
    const input = find(formula.inputs, word);
    if (input && 'unit' in input[1] && input[1].unit === 'EUR') sums.push(text);
    const output = input ? undefined : find(formula.outputs, word);
    const named = input ?? output;
    if (!named)
      throw new InputError(
        `${formula.id} has no input “${word.slice(0, 40)}”. It takes ${inputIds.join(', ')}.`,
      );
    const [key, one] = named;
    const id = idOf(one);
    if (seen.has(id)) throw new InputError(`${id} is given twice. Give it once.`, id);
    seen.add(id);
    if (input && text.trim() === '?') {
      if (asked !== undefined)
        throw new InputError(`Only one input can be asked for; ${id} is the second.`, id);
      if (!('unit' in input[1]))
        throw new InputError(`${id} is a choice and cannot be solved for.`, id);
      asked = key;
    } else if (input) {
      values[key] = readInput(input[1], text, { stored: true });
    } else if (output) {
      if (wanted) throw new InputError(`Give one result only; ${id} is the second.`, id);
      const { unit } = output[1];
      if (!unit)
        throw new InputError(
          `${id} is a word, not a quantity: an input cannot be solved from it.`,
          id,
        );
      const target = {
        name: output[1].name,
        tex: '',
        unit,
        range: [-Infinity, Infinity],
        start: 1,
        means: '',
      } as const;
      const value = readInput(target, text, { stored: true }) as number;
      if (!Number.isFinite(value))
        throw new InputError(`${id} must be finite to solve for an input.`, id);
      wanted = { key, value };
      given[id] = writeInput(target, value);
    }
  }
  if ((asked === undefined) !== (wanted === undefined))
    throw new InputError(
      asked === undefined
        ? `${Object.keys(given).join()} is a result. To solve for an input, also write it as name=?, for example ${inputIds[0] ?? ''}=?.`
        : `To solve for an input give exactly one result: ${Object.values(formula.outputs).map(idOf).join(', ')}.`,
    );

  // A sum may name its currency; then all are in it.
  const named = currencyOf(sums);
  if (named !== undefined) {
    const { currency } = values;
    if (typeof currency === 'string' && currency !== named)
      throw new InputError(
        `A sum is in ${named}, but the currency given is ${currency}. Write one of them.`,
        'currency',
      );
    values['currency'] = named;
  }

  const roots =
    asked !== undefined && wanted ? solveFor(formula, values, asked, wanted) : undefined;
  if (asked !== undefined && roots) values[asked] = roots[0];
  const all = complete(formula, values);
  for (const [key, input] of Object.entries(formula.inputs))
    if (key !== asked && all[key] !== undefined) given[idOf(input)] = writeInput(input, all[key]);

  const printed: Record<string, Printed> = {};
  const inCurrency =
    typeof all['currency'] === 'string' ? { ...style, currency: all['currency'] } : style;
  const solved: Printed[] = [];
  const input = asked === undefined ? undefined : formula.inputs[asked];
  if (input && 'unit' in input && roots) {
    const output = {
      name: input.name,
      unit: input.unit,
      digits: dimensionOf(input.unit) === 'iso' ? 3 : { significant: 4 },
      ...(input.imperial && { imperial: input.imperial }),
    };
    solved.push(...roots.map((root) => print(output, root, inCurrency)));
    printed[idOf(input)] = print(output, roots[0], inCurrency);
  }
  const results = compute(formula, all);
  for (const [key, output] of Object.entries(formula.outputs))
    printed[idOf(output)] = print(output, results[key], inCurrency);
  return {
    formula: formula.id,
    given,
    results: printed,
    ...(solved.length > 1 && { roots: solved }),
  };
};

/** One result as evaluate prints it. */
export const print = (
  output: Formula['outputs'][string],
  value: Results[string],
  style: Style,
): Printed => {
  const text = showResult(output, value, style);
  const unit = !output.unit
    ? null
    : output.unit === 'EUR'
      ? (style.currency ?? 'EUR')
      : siUnit(dimensionOf(output.unit));
  if (value === undefined) return { value: null, unit, text };
  if (typeof value === 'number' && !Number.isFinite(value))
    return { value: null, unit, text, infinite: true };
  return { value, unit, text };
};
