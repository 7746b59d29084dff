import { compute } from '../formula/compute.ts';
import { InputError } from '../formula/errors.ts';
import { inWords, onlyInPlay } from '../formula/in-play.ts';
import { writeQuery } from '../formula/query.ts';
import { complete } from '../formula/read.ts';
import { idOf, type Formula, type Given, type Results, type Value } from '../formula/record.ts';
import { rivalsOf, startsOf } from '../formula/starts.ts';

/**
 * One line or column: what it sets, by record key, in SI (choices as what they stand for); a label where the value
 * alone would not do. A value of undefined leaves an input out.
 */
export interface Step {
  readonly label?: string;
  readonly given: Given;
}

/** A table: a formula, what stays the same in it, and what each line and each column sets. */
export interface Spec {
  readonly formula: Formula;
  readonly fixed: Given;
  readonly down: readonly Step[];
  readonly across: readonly Step[];
}

/** One place of a table. */
export interface Cell {
  /** Complete values, defaults included; where the formula refuses them, what was asked of it. */
  readonly given: Given;
  readonly results: Results | undefined;
  /** A sentence for the reader, where the formula refuses these values. */
  readonly refusal: string | undefined;
}

/** Sets values one after the other; whatever is set empties the inputs it stands in for. */
const setting = (formula: Formula, values: Given, given: Given): Record<string, Value> => {
  const set: Record<string, Value> = { ...values };
  const entries = Object.entries(formula.inputs);
  for (const [key, value] of Object.entries(given)) {
    const input = formula.inputs[key];
    if (!input) throw new Error(`${formula.id} has no input ${key}.`);
    if (value !== undefined) {
      const rivals = rivalsOf(formula, idOf(input));
      for (const [other, rival] of entries)
        if (rivals.includes(idOf(rival))) Reflect.deleteProperty(set, other);
    }
    set[key] = value;
  }
  return set;
};

/** What stands under every cell of a table; worked out once for each. */
const grounds = new WeakMap<Spec, Given>();
const groundOf = (spec: Spec): Given => {
  const known = grounds.get(spec);
  if (known) return known;
  const ground = setting(spec.formula, startsOf(spec.formula), spec.fixed);
  grounds.set(spec, ground);
  return ground;
};

/** What a cell asks of the formula, before any default: the starts, what is fixed, then its column, then its line. */
const askedOf = (spec: Spec, down: Step, across: Step): Record<string, Value> => {
  const { formula } = spec;
  return onlyInPlay(
    formula,
    setting(formula, setting(formula, groundOf(spec), across.given), down.given),
  );
};

/**
 * Works out one cell.
 *
 * Model: the formula's start values, then what is fixed, then what the column sets, then the line; of inputs that stand
 * in for one another the last one set counts. What belongs to a choice not made is left out, as on the plate, and
 * defaults fill what is still open.
 * Throws: Error where a step names no input of the formula; whatever the formula refuses becomes the cell's `refusal`.
 * @example cellOf(spec, { given: { f: 0.085 } }, { given: { s: 2 } }).results
 */
export const cellOf = (spec: Spec, down: Step, across: Step): Cell => {
  const { formula } = spec;
  const asked = askedOf(spec, down, across);
  try {
    const given = complete(formula, asked);
    return { given, results: compute(formula, given), refusal: undefined };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    const refusal = inWords(formula, error).replace('This plate needs', 'This formula needs');
    return { given: asked, results: undefined, refusal };
  }
};

/**
 * What the address of a cell's plate must hold, after `/plates/<formula>/?`: every input in play but those that are
 * worked out from the others.
 * @example queryOf(spec, down, across) // 'format=36x24&orientation=portrait&focal-length=85mm&…'
 */
export const queryOf = (spec: Spec, down: Step, across: Step): string =>
  writeQuery(spec.formula, askedOf(spec, down, across));

/** Works a table out line by line, so that whoever asks may stop, or rest in between. */
export function* rowsOf(spec: Spec): Generator<readonly Cell[]> {
  for (const down of spec.down) yield spec.across.map((across) => cellOf(spec, down, across));
}
