import { InputError } from './errors.ts';
import { canonical } from './notation/write.ts';
import { parseQuantity } from './notation/quantity.ts';
import { plain } from './notation/plain.ts';
import { idOf, isChoice, type Formula, type Given, type Input, type Value } from './record.ts';
import { factorOf, type Unit } from './units.ts';

export interface Reading {
  /** True for links, files and commands: a single point is the decimal mark and a unit must be written. */
  readonly stored?: boolean;
  /** The unit a bare number takes in a field. */
  readonly unit?: Unit;
}

/**
 * Reads the text of one input.
 * Throws: InputError (or AmbiguousError) carrying the input's id, with what is allowed and what to try.
 * @returns a quantity in SI, a list of them, or what the choice stands for
 */
export const readInput = (input: Input, text: string, how: Reading = {}): Value => {
  const id = idOf(input);
  if (isChoice(input)) {
    const word = plain(text);
    if (Object.hasOwn(input.choices, word)) return input.choices[word];
    const custom = input.custom?.read(word);
    if (custom !== undefined) return custom;
    const allowed = Object.keys(input.choices).concat(input.custom?.form ?? []);
    const name = input.name.charAt(0).toUpperCase() + input.name.slice(1);
    throw new InputError(
      `${name} must be one of ${allowed.join(', ')}; you typed ${word.slice(0, 40) || 'nothing'}.`,
      id,
    );
  }
  const { name, unit, range, start } = input;
  const bare = how.stored ? 'none' : (how.unit ?? unit);
  const one = (part: string): number =>
    input.read?.(part) ??
    parseQuantity(part, {
      name,
      unit,
      range,
      id,
      bare,
      stored: how.stored === true,
      example: start,
    });
  if (!input.list) return one(text);
  const parts = text.split(';');
  const values = parts.map(one);
  const { min, max } = input.list;
  if (parts.length < min || parts.length > max)
    throw new InputError(
      `Give ${min === max ? '' : `${min} to `}${max} values of ${name}, parted by semicolons; you gave ${parts.length}.`,
      id,
    );
  return values;
};

/** The canonical text of a value, which readInput reads back to the same value. */
export const writeInput = (input: Input, value: Value): string => {
  if (isChoice(input)) {
    const id = Object.keys(input.choices).find((key) => input.choices[key] === value);
    return id ?? input.custom?.write(value) ?? '';
  }
  return Array.isArray(value)
    ? value.map((part: number) => canonical(part, input.unit)).join('; ')
    : canonical(value as number, input.unit);
};

/** What an input holds when nothing is given, or undefined where it has no default. */
const defaultOf = (input: Input, given: Given): Value => {
  if (isChoice(input))
    return input.default === undefined ? undefined : readInput(input, input.default);
  const { default: value } = input;
  return typeof value === 'function'
    ? value(given)
    : value === undefined
      ? undefined
      : value * factorOf(input.unit);
};

/**
 * Fills in the defaults, and insists on what has none. Defaults that are worked out see everything given and the plain
 * defaults, in the record's order.
 * Throws: InputError naming the missing input, or a group of which exactly one is wanted.
 * @returns a new record with a value for every input but the optional ones left out
 */
export const complete = (formula: Formula, given: Given): Record<string, Value> => {
  const values: Record<string, Value> = { ...given };
  const entries = Object.entries(formula.inputs);
  const settle = (late: boolean): void => {
    for (const [key, input] of entries) {
      const worked = 'default' in input && typeof input.default === 'function';
      if (values[key] === undefined && worked === late) values[key] = defaultOf(input, values);
      if (values[key] === undefined && worked === late && !input.optional)
        throw new InputError(`${formula.id} needs ${idOf(input)}: ${input.means}`, idOf(input));
    }
  };
  settle(false);
  settle(true);
  const has = (id: string): boolean =>
    entries.some(([key, input]) => idOf(input) === id && values[key] !== undefined);
  for (const { groups, optional } of formula.ways ?? []) {
    const whole = groups.filter((group) => group.every(has)).length;
    const touched = groups.filter((group) => group.some(has)).length;
    if (touched > 1 || whole !== touched || (touched === 0 && !optional))
      throw new InputError(
        `${formula.id} needs ${optional ? 'at most' : 'exactly'} one of: ${groups.map((group) => group.join(' with ')).join(', or ')}.`,
        groups[0]?.[0],
      );
  }
  return values;
};
