import { InputError } from '../../formula/errors.ts';
import { complete, readInput, writeInput } from '../../formula/read.ts';
import { compute } from '../../formula/evaluate.ts';
import {
  idOf,
  isChoice,
  type Formula,
  type Given,
  type Input,
  type Value,
} from '../../formula/record.ts';
import { factorOf } from '../../formula/units.ts';

/** Longer than any link of ours; what is longer was not made here. */
const LONGEST = 2000;

/** What an input holds when a page opens, or undefined where its field starts empty. */
export const startOf = (input: Input): Value => {
  if (isChoice(input)) return readInput(input, input.start);
  // A value that is worked out from the others stays so until the reader says otherwise.
  return typeof input.default === 'function' ? undefined : input.start * factorOf(input.unit);
};

export const startsOf = (formula: Formula): Record<string, Value> =>
  Object.fromEntries(
    Object.entries(formula.inputs).flatMap(([key, input]) => {
      const value = startOf(input);
      return value === undefined ? [] : [[key, value]];
    }),
  );

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

export interface Loaded {
  /** By record key; optional inputs the link leaves out are missing. */
  readonly values: Readonly<Record<string, Value>>;
  /** Sentences for the reader: what could not be used, and what stands there instead. */
  readonly notices: readonly string[];
}

const quote = (text: string): string => `“${text.slice(0, 40)}${text.length > 40 ? '…' : ''}”`;

/**
 * Reads a plate's state from an address, whoever wrote it.
 *
 * Model: keys are evaluate's ids and values its text. What a link leaves out takes evaluate's default where there is one
 * and stays empty where the input may be left out. What cannot be used (repeated, out of range, no number at all) gives
 * way to the start value, and so does the whole set where its values do not go together; each is named in a notice.
 * @param query with or without its question mark
 * @returns undefined where the address holds nothing for this formula
 */
export const readQuery = (formula: Formula, query: string): Loaded | undefined => {
  const starts = startsOf(formula);
  const inputs = Object.entries(formula.inputs);
  const pairs = query.length > LONGEST ? [] : [...new URLSearchParams(query)];
  if (query.length > LONGEST)
    return {
      values: starts,
      notices: ['The link is too long to be one of these; the plate shows its start.'],
    };
  if (!pairs.some(([id]) => inputs.some(([, input]) => idOf(input) === id))) return undefined;

  const values: Record<string, Value> = {};
  const notices: string[] = [];
  const giveWay = (key: string, why: string): void => {
    if (starts[key] !== undefined) values[key] = starts[key];
    notices.push(`${why} The start value stands there instead.`);
  };
  for (const [key, input] of inputs) {
    const found = pairs.filter(([id]) => id === idOf(input)).map(([, text]) => text);
    const text = found[0] ?? '';
    if (found.length > 1) giveWay(key, `The link gives ${input.name} ${found.length} times.`);
    else if (text.trim() !== '') {
      try {
        values[key] = readInput(input, text, { stored: true });
      } catch (error) {
        if (!(error instanceof InputError)) throw error;
        giveWay(key, `The link’s ${input.name} could not be used: ${error.message}`);
      }
    } else if (input.default === undefined && !input.optional)
      giveWay(key, `The link gives no ${input.name}.`);
    else if (input.default !== undefined && typeof input.default !== 'function')
      values[key] = isChoice(input)
        ? readInput(input, input.default as string)
        : (input.default as number) * factorOf(input.unit);
  }
  const strange = pairs
    .map(([id]) => id)
    .filter((id) => !inputs.some(([, input]) => idOf(input) === id));
  if (strange.length > 0)
    notices.push(
      `The link also holds ${[...new Set(strange)].slice(0, 3).map(quote).join(', ')}, which this plate does not know.`,
    );

  try {
    compute(formula, complete(formula, onlyInPlay(formula, values)));
    return { values, notices };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return {
      values: starts,
      notices: [
        `The link’s values do not go together: ${error.message} The plate shows its start.`,
      ],
    };
  }
};

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

/**
 * Writes a plate's state for an address: every input that has a value, by evaluate's id, without needless spaces.
 * @example writeQuery(framingDistance, given) // 'format=36x24&orientation=portrait&…&focal-length=85mm'
 */
export const writeQuery = (formula: Formula, given: Given): string =>
  Object.entries(formula.inputs)
    .filter(([key]) => given[key] !== undefined)
    .map(([key, input]) => `${idOf(input)}=${spare(writeInput(input, given[key]))}`)
    .join('&');

/** Percent-encodes what must be, and leaves `f/4` and `4:5` readable. */
const spare = (text: string): string =>
  encodeURIComponent(text.replaceAll(' ', ''))
    .replaceAll('%3A', ':')
    .replaceAll('%2F', '/')
    .replaceAll('%3B', ';');
