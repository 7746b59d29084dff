import { AmbiguousError, InputError } from '../formula/errors.ts';
import { readInput } from '../formula/read.ts';
import {
  idOf,
  isChoice,
  type Formula,
  type Input,
  type QuantityInput,
  type Value,
} from '../formula/record.ts';
import { rivalsOf, startsOf } from '../formula/starts.ts';
import { dimensionOf, factorOf, type Unit } from '../formula/units.ts';
import type { Measure, Typed } from './quantities.ts';

/** What a question’s quantities and choices are for one formula. */
export interface Assigned {
  /** By record key, in the order typed. */
  readonly values: readonly (readonly [key: string, value: Value])[];
  /** What was typed and belongs to nothing here, or to more than one thing. */
  readonly left: readonly string[];
  /** Why a value cannot be taken, in a sentence. */
  readonly refusal: string | undefined;
}

const DIMENSION: Partial<Record<Measure, string>> = { force: 'force', time: 'time' };
/** Millimetres that can only be meant as a lens. */
const LENS = [0.008, 0.8] as const;

/** The unit in a typed length, or undefined. */
const unitIn = (text: string): Unit | undefined => {
  const [, unit = ''] =
    /(mm|cm|km|ft|feet|foot|in(?:ch(?:es)?)?|['′"″]|m)(?:etres?|eters?)?$/i.exec(text) ?? [];
  const short = unit.toLowerCase();
  return short === 'mm' || short === 'cm' || short === 'km'
    ? short
    : /^(f|['′])/.test(short)
      ? 'ft'
      : /^(i|["″])/.test(short)
        ? 'in'
        : short === 'm'
          ? 'm'
          : undefined;
};

type Entry = readonly [string, QuantityInput];

/** Quantities of a formula, those a page starts with and must have before those that may be left out. */
const quantitiesOf = (formula: Formula): Entry[] => {
  const starts = startsOf(formula);
  const rank = ([key, input]: Entry): number =>
    (starts[key] === undefined ? 2 : 0) +
    (input.optional ? 1 : 0) +
    (input.default === undefined ? 0 : 4);
  return Object.entries(formula.inputs)
    .filter((entry): entry is [string, QuantityInput] => !isChoice(entry[1]) && !entry[1].when)
    .sort((a, b) => rank(a) - rank(b));
};

/**
 * The input whose name stands right before a quantity, “backdrop distance 1.5 m”, or whose first word does: “room 4.2 m”
 * is the first of a room’s sides.
 */
const namedBefore = (before: string, inputs: readonly Entry[]): Entry | undefined =>
  inputs.find(([, { name, label }]) =>
    [name, label ?? name].some((one) =>
      new RegExp(
        `(?:^|[^a-z])${one.toLowerCase().replace(/[^a-z0-9 -]/g, '.')}(?: (?:of|is|at|=))?$`,
      ).test(before.toLowerCase()),
    ),
  ) ??
  inputs.find(
    ([, { name }]) =>
      name.includes(' ') &&
      name.toLowerCase().split(' ')[0] === /[a-z]+$/.exec(before.toLowerCase())?.[0],
  );

/** Inputs a quantity could be the value of, the likelier first; several only where their order says which. */
const candidates = ({ text, measure }: Typed, inputs: readonly Entry[]): readonly Entry[] => {
  const of = (dimension: string): Entry[] =>
    inputs.filter(([, input]) => dimensionOf(input.unit) === dimension && !input.list);
  if (measure === 'length') {
    const lengths = of('length');
    const unit = unitIn(text);
    const number = Number(/^[\d.,]+/.exec(text)?.[0].replace(',', '.'));
    if (unit === 'mm') {
      const si = number * factorOf('mm');
      const lens = lengths.filter(([, { name }]) => name === 'focal length');
      if (lens.length > 0 && si >= LENS[0] && si <= LENS[1]) return lens;
      const small = lengths.filter(
        ([, input]) =>
          input.unit === 'mm' && input.name !== 'focal length' && input.default === undefined,
      );
      return small.length === 1 ? small : [];
    }
    const prints = lengths.filter(([, input]) => input.unit === 'cm');
    if (prints.length > 0 && (unit === 'cm' || unit === 'in')) return prints;
    return lengths.filter(([, input]) => input.unit === 'm' && input.default === undefined);
  }
  const same = of(DIMENSION[measure] ?? measure);
  if (measure === 'f-number') return same;
  const [own] = same.filter(([, { name }]) => name === 'shutter' || name === 'ISO');
  if (own) return [own];
  const [first, second] = same.filter(([, { default: assumed }]) => assumed === undefined);
  // One of its kind, or one beside others that are seldom given.
  return first && (!second || (first[1].optional !== true && second[1].optional === true))
    ? [first]
    : same.length === 1
      ? same
      : [];
};

/** Choices that say what they are by their form: 36x24, 4:5, upright. */
const CHOICE = /^(?:\d+(?:\.\d+)?x\d+(?:\.\d+)?(?:in)?|\d+:\d+|portrait|landscape|upright|lying)$/;
const choicesIn = (
  words: string,
  inputs: readonly (readonly [string, Input])[],
): (readonly [string, Value])[] =>
  words
    .toLowerCase()
    .replaceAll('×', 'x')
    .split(' ')
    .filter((word) => CHOICE.test(word))
    .flatMap((word) => {
      for (const [key, input] of inputs) {
        if (!isChoice(input)) continue;
        const id = Object.keys(input.choices).find(
          (one) => one === word || input.labels?.[one] === word,
        );
        if (id !== undefined) return [[key, input.choices[id]] as const];
      }
      return [];
    });

/**
 * Gives a question’s quantities to a formula’s inputs.
 *
 * Model: the name before a quantity decides; else its unit. Millimetres from 8 to 800 are a lens, f/… the first f-number,
 * another length the first distance not yet given, anything else only where there is one input of its kind.
 * @returns values in SI; what is out of range or has two readings is a refusal, in the words of the field
 */
export const assign = (formula: Formula, words: string, typed: readonly Typed[]): Assigned => {
  const inputs = quantitiesOf(formula);
  const values: (readonly [string, Value])[] = [
    ...choicesIn(words, Object.entries(formula.inputs)),
  ];
  const left: string[] = [];
  const taken = new Set<string>();
  let refusal: string | undefined;
  // Those with a name of their own first, or a nameless one would take their place.
  const isNamed = (one: Typed): boolean => namedBefore(one.before, inputs) !== undefined;
  for (const one of [...typed.filter(isNamed), ...typed.filter((other) => !isNamed(other))]) {
    const free = (entry: Entry): boolean => !taken.has(entry[0]);
    const named = namedBefore(one.before, inputs.filter(free));
    const found =
      named &&
      candidates({ ...one }, [named]).length + Number(dimensionOf(named[1].unit) === one.measure) >
        0
        ? named
        : candidates(one, inputs).find(free);
    if (!found) {
      left.push(one.text);
      continue;
    }
    const [key, input] = found;
    taken.add(key);
    // Those that stand in for it are then no longer asked for.
    for (const [other, { name }] of inputs)
      if (rivalsOf(formula, idOf(input)).includes(idOf({ name }))) taken.add(other);
    try {
      values.push([key, readInput(input, one.text, { unit: input.unit })]);
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      refusal ??=
        error instanceof AmbiguousError || /range|must be/.test(error.message)
          ? error.message
          : undefined;
      left.push(one.text);
    }
  }
  return { values, left, refusal };
};
