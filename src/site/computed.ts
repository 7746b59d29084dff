import { evaluateText, type Evaluation } from '../formula/evaluate.ts';
import { formulas } from '../formulas.ts';

/** “format=36x24 focal-length=85 mm” as pairs; a value may have spaces in it. */
export const pairsOf = (given: string): readonly (readonly [string, string])[] =>
  given
    .trim()
    .split(/\s+(?=[\w-]+=)/)
    .filter(Boolean)
    .map((pair) => {
      const cut = pair.indexOf('=');
      if (cut < 1) throw new Error(`“${pair}” is not of the form name=value.`);
      return [pair.slice(0, cut), pair.slice(cut + 1)] as const;
    });

interface Asked {
  readonly formula: string;
  readonly given: readonly (readonly [string, string])[];
  readonly result: string;
  readonly system?: 'metric' | 'imperial' | undefined;
}

/**
 * The text of one result, for prose: worked out when the site is built, by the same function that
 * answers the reader's own numbers.
 *
 * Throws: Error naming the formula and the input an author got wrong.
 */
export const computedText = async ({
  formula,
  given,
  result,
  system = 'metric',
}: Asked): Promise<string> => {
  const load = formulas[formula];
  if (!load) {
    throw new Error(`No formula “${formula}”. There are: ${Object.keys(formulas).join(', ')}.`);
  }
  let evaluation: Evaluation;
  try {
    evaluation = evaluateText((await load()).default, given, { system });
  } catch (cause) {
    const said = cause instanceof Error ? cause.message : String(cause);
    const pairs = given.map(([name, value]) => `${name}=${value}`).join(' ');
    throw new Error(`${formula} with ${pairs}: ${said}`, { cause });
  }
  const printed = evaluation.results[result];
  if (!printed) {
    throw new Error(
      `${formula} has no result “${result}”. It gives ${Object.keys(evaluation.results).join(', ')}.`,
    );
  }
  return unbroken(printed.text);
};

/** A number and its unit stay on one line. */
export const unbroken = (text: string): string => text.replaceAll(' ', '\u00a0');
