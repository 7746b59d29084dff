import { InputError } from '../../formula/errors.ts';
import { compute } from '../../formula/compute.ts';
import { complete, readInput } from '../../formula/read.ts';
import { idOf, isChoice, type Formula, type Value } from '../../formula/record.ts';
import { factorOf } from '../../formula/units.ts';
import { startsOf } from '../../formula/starts.ts';
import { inWords, onlyInPlay } from './starts.ts';

/** Longer than any link of ours; what is longer was not made here. */
const LONGEST = 2000;

export interface Loaded {
  /** By record key; optional inputs the link leaves out are missing. */
  readonly values: Readonly<Record<string, Value>>;
  /** Sentences for the reader: what could not be used, and what stands there instead. */
  readonly notices: readonly string[];
}

const quote = (text: string): string => `“${text.slice(0, 40)}${text.length > 40 ? '…' : ''}”`;

/** A field's own sentence, said of a link: its name stands before it already, and nobody typed. */
const ofLink = (name: string, { message }: Error): string =>
  (message.toLowerCase().startsWith(name) ? `it${message.slice(name.length)}` : message).replace(
    'you typed',
    'the link says',
  );

/**
 * Reads a plate's state from an address, whoever wrote it.
 *
 * Model: keys are evaluate's ids and values its text. What a link leaves out takes evaluate's default where there is one
 * and stays empty where the input may be left out. What cannot be used (repeated, out of range, no number at all) gives
 * way to the start value, and so does the whole set where its values do not go together; each is named in a notice.
 * @param query with or without its question mark
 * @returns undefined where the query is empty; the start, with a notice, where nothing in it is the formula’s
 */
export const readQuery = (formula: Formula, query: string): Loaded | undefined => {
  const starts = startsOf(formula);
  const inputs = Object.entries(formula.inputs);
  if (query.length > LONGEST)
    return {
      values: starts,
      notices: ['The link is too long to be one of these; the plate shows its start.'],
    };
  const pairs = [...new URLSearchParams(query)];
  if (pairs.length === 0) return undefined;
  const known = (id: string): boolean => inputs.some(([, input]) => idOf(input) === id);
  const strange = [
    ...new Set(pairs.map(([id]) => id).filter((id) => id.trim() !== '' && !known(id))),
  ];
  const unknown = strange.slice(0, 3).map(quote).join(', ');
  if (!pairs.some(([id]) => known(id)))
    return {
      values: starts,
      notices: [
        `The link holds ${unknown || 'nothing'}, which this plate does not know; it shows its start.`,
      ],
    };

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
        giveWay(key, `The link’s ${input.name} could not be used: ${ofLink(input.name, error)}`);
      }
    } else if (input.default === undefined && !input.optional)
      giveWay(key, `The link gives no ${input.name}.`);
    else if (input.default !== undefined && typeof input.default !== 'function')
      values[key] = isChoice(input)
        ? readInput(input, input.default)
        : input.default * factorOf(input.unit);
  }
  if (unknown !== '')
    notices.push(`The link also holds ${unknown}, which this plate does not know.`);

  try {
    compute(formula, complete(formula, onlyInPlay(formula, values)));
    return { values, notices };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return {
      values: starts,
      notices: [
        `The link’s values do not go together: ${inWords(formula, error)} The plate shows its start.`,
      ],
    };
  }
};
