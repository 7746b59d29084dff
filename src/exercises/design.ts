import { AmbiguousError, InputError } from '../formula/errors.ts';
import type { Style } from '../formula/notation/write.ts';
import { readInput, writeInput } from '../formula/read.ts';
import { idOf, isChoice, type Input, type Output } from '../formula/record.ts';
import { sayInput } from '../formula/show.ts';
import { showResult } from '../formula/show.ts';
import { parseQuantity } from '../formula/notation/quantity.ts';
import { dimensionOf, type Unit } from '../formula/units.ts';
import { inputsOf, readOnce, resultOf } from './number-of.ts';
import type { Givens, Requirement, Setting, Template } from './template.ts';
import { withNames, workOut, type Formulas, type Variant } from './variant.ts';

type Design = Extract<Template, { kind: 'design' }>;

/** One requirement held against the settings. */
export interface Held {
  readonly say: string;
  readonly kept: boolean;
  /** What came out, and by how much it is kept or missed: “4.6 stops, 0.6 to spare”. */
  readonly came: string;
  /** From the limit to what came out, in SI (stops for exposures); positive where it is kept. Undefined for words. */
  readonly margin: number | undefined;
  /** The formula’s own refusal, where it made one. */
  readonly refusal?: string;
}

export type DesignVerdict =
  | { readonly kind: 'marked'; readonly held: readonly Held[]; readonly credit: number }
  | {
      readonly kind: 'unreadable';
      readonly troubles: Readonly<Record<string, string>>;
      readonly readings: Readonly<Record<string, readonly string[]>>;
    };

/** The input a setting is. */
export const inputOf = ({ formula, input, name }: Setting, formulas: Formulas): Input => {
  const [, , found] = inputsOf(formulas(formula)).find(([, id]) => id === input) ?? [];
  if (!found) throw new Error(`The setting ${name} is no input of ${formula}: “${input}”.`);
  return found;
};

const outputOf = (formulas: Formulas, { formula, result }: Requirement) => {
  const found = Object.values(formulas(formula).outputs).find((one) => idOf(one) === result);
  if (!found) throw new Error(`${formula} has no result “${result}”.`);
  return found;
};

const limits = new Map<string, number>();
/** A limit from its text; a class is held against few of them. */
const limitOf = (text: string, name: string, unit: Unit): number => {
  const key = `${unit} ${text}`;
  const known = limits.get(key);
  if (known !== undefined) return known;
  const range = [-Infinity, Infinity] as const;
  const limit = parseQuantity(text, { name, unit, range, bare: 'none', stored: true, example: 1 });
  limits.set(key, limit);
  return limit;
};

/** A requirement held, its words written only once somebody reads them: a class has thousands, and looks at few. */
const told = (
  say: () => string,
  came: () => string,
  rest: Pick<Held, 'kept' | 'margin' | 'refusal'>,
): Held => ({
  get say() {
    return say();
  },
  get came() {
    return came();
  },
  ...rest,
});

/** A margin is the difference of two numbers that were measured: two figures of it say enough. */
const fewer = ({ digits }: Output): Pick<Output, 'digits'> =>
  typeof digits === 'number' || (digits && 'significant' in digits)
    ? { digits: { significant: 2 } }
    : {};

/** Stops for a doubling of what photographers count in stops: apertures, times and powers written as parts, film speeds. */
const stopsADoubling = ({ unit, digits }: Output): number | undefined => {
  if (unit && dimensionOf(unit) === 'f-number') return 2;
  return digits && typeof digits === 'object' && 'fraction' in digits ? 1 : undefined;
};

const hold = (
  requirement: Requirement,
  names: Givens,
  formulas: Formulas,
  say: () => string,
  style: Style,
): Held => {
  const { formula, result, given: open, atLeast, atMost, is } = requirement;
  const output = outputOf(formulas, requirement);
  const given = withNames(open, names);
  const text = (): string => workOut(formulas, { formula, given, result }, style).text;
  try {
    const value = resultOf(formulas(formula), given, result);
    if (is !== undefined) {
      const word = typeof value === 'boolean' ? (value ? 'yes' : 'no') : value;
      return told(say, text, { kept: word === is, margin: undefined });
    }
    if (typeof value !== 'number') return told(say, text, { kept: false, margin: undefined });
    const { unit, name } = output;
    if (!unit)
      throw new Error(`${formula} gives ${result} in words: a requirement of it says \`is\`.`);
    const limit = limitOf(
      withNames({ it: atLeast ?? atMost ?? '' }, names)['it'] ?? '',
      name,
      unit,
    );
    const perDoubling = stopsADoubling(output);
    const inStops = perDoubling !== undefined && value > 0 && limit > 0;
    const off = inStops ? perDoubling * Math.log2(value / limit) : value - limit;
    const margin = atLeast === undefined ? -off : off;
    // A hair of room: what is exactly at the limit keeps it.
    const kept = margin >= -1e-9 * Math.max(Math.abs(value), Math.abs(limit));
    const came = (): string => {
      const by = showResult(
        inStops ? { name, unit: 'stop', digits: { decimals: 1 } } : { ...output, ...fewer(output) },
        Math.abs(margin),
        style,
      );
      const spare = `${by} ${kept ? 'to spare' : 'missing'}`;
      // Where nothing is the limit, what came out is the margin.
      return limit === 0 ? spare : `${text()}: ${spare}`;
    };
    return told(say, came, { kept, margin });
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return told(say, () => 'cannot be worked out', {
      kept: false,
      margin: undefined,
      refusal: error.message,
    });
  }
};

/**
 * Holds settings against everything a brief asks for. Any set of settings that keeps it all is right: no one answer is.
 * @param typed what stands in the field of each setting, by its name
 */
export const markDesign = (
  typed: Givens,
  { template, drawn, say }: Variant<Design>,
  formulas: Formulas,
  style: Style = {},
  stored = false,
): DesignVerdict => {
  const names: Record<string, string> = { ...drawn };
  const troubles: Record<string, string> = {};
  const readings: Record<string, readonly string[]> = {};
  for (const setting of template.settings) {
    const input = inputOf(setting, formulas);
    try {
      const text = typed[setting.name] ?? '';
      const value =
        isChoice(input) || stored
          ? readOnce(input, text)
          : readInput(input, text, { unit: input.unit });
      names[setting.name] = writeInput(input, value);
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      troubles[setting.name] = error.message;
      if (error instanceof AmbiguousError) readings[setting.name] = error.readings;
    }
  }
  if (Object.keys(troubles).length > 0) return { kind: 'unreadable', troubles, readings };
  const held = template.requirements.map((requirement) =>
    hold(requirement, names, formulas, () => say(requirement.say, style), style),
  );
  return { kind: 'marked', held, credit: held.filter(({ kept }) => kept).length / held.length };
};

/** The settings of a variant in words, for a solution: “85 mm”, “f/4”. */
export const saySettings = (
  settings: readonly Setting[],
  given: Givens,
  formulas: Formulas,
  style: Style = {},
): Givens =>
  Object.fromEntries(
    settings.map((setting) => {
      const input = inputOf(setting, formulas);
      return [
        setting.name,
        sayInput(input, readInput(input, given[setting.name] ?? '', { stored: true }), style),
      ];
    }),
  );
