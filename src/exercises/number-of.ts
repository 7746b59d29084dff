import { compute } from '../formula/compute.ts';
import { evaluateText } from '../formula/evaluate.ts';
import { complete, readInput } from '../formula/read.ts';
import { idOf, type Formula, type Input, type Results, type Value } from '../formula/record.ts';
import type { Givens } from './template.ts';

// A class shares its texts: of thousands of answers most are worked from the same few dozen.
const read = new WeakMap<Input, Map<string, Value>>();

/** Reads a stored text of an input. Throws: InputError, as readInput does. */
export const readOnce = (input: Input, text: string): Value => {
  const known = read.get(input) ?? new Map<string, Value>();
  read.set(input, known);
  if (!known.has(text)) known.set(text, readInput(input, text, { stored: true }));
  return known.get(text);
};

const named = new WeakMap<Formula, readonly (readonly [key: string, id: string, input: Input])[]>();

/** A formula’s inputs with their keys and ids. */
export const inputsOf = (
  formula: Formula,
): readonly (readonly [key: string, id: string, input: Input])[] => {
  const known =
    named.get(formula) ??
    Object.entries(formula.inputs).map(([key, input]) => [key, idOf(input), input] as const);
  named.set(formula, known);
  return known;
};

const keyed = new WeakMap<Formula, ReadonlyMap<string, string>>();

/** The record’s key of a result, by its id. */
const keyOfResult = (formula: Formula, result: string): string | undefined => {
  const known =
    keyed.get(formula) ??
    new Map(Object.entries(formula.outputs).map(([key, output]) => [idOf(output), key]));
  keyed.set(formula, known);
  return known.get(result);
};

/** Texts as a formula’s values, by record key; what the formula does not know is the author’s mistake. */
export const valuesOf = (formula: Formula, given: Givens): Record<string, Value> => {
  const values: Record<string, Value> = {};
  let found = 0;
  for (const [key, id, input] of inputsOf(formula)) {
    const text = given[id];
    if (text === undefined) continue;
    values[key] = readOnce(input, text);
    found += 1;
  }
  if (found !== Object.keys(given).length)
    throw new Error(`${formula.id} does not know all of ${Object.keys(given).join(', ')}.`);
  return complete(formula, values);
};

/**
 * One result of a formula as it comes out, without writing any of it out. Undefined where it is not given.
 * Throws: InputError as evaluate does; Error to the author where the formula has no such result.
 */
export const resultOf = (formula: Formula, given: Givens, result: string): Results[string] => {
  const key = keyOfResult(formula, result);
  if (key === undefined) throw new Error(`${formula.id} has no result “${result}”.`);
  return compute(formula, valuesOf(formula, given))[key];
};

/**
 * One number a formula gives, in SI, as evaluate would; without writing any of it out.
 * Throws: InputError as evaluate does; Error to the author where it is no finite number.
 */
export const numberOf = (formula: Formula, given: Givens, result: string): number => {
  const value =
    keyOfResult(formula, result) === undefined
      ? // An input is asked for: solved for as evaluate does.
        evaluateText(formula, [
          ...Object.entries(given).filter(([id]) => id !== result),
          [result, '?'],
        ]).results[result]?.value
      : resultOf(formula, given, result);
  if (typeof value !== 'number' || !Number.isFinite(value))
    throw new Error(`${result} of ${formula.id} is no finite number.`);
  return value;
};
