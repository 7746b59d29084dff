import { compute } from '../formula/compute.ts';
import { evaluateText, print, type Printed } from '../formula/evaluate.ts';
import { parseQuantity } from '../formula/notation/quantity.ts';
import type { Style } from '../formula/notation/write.ts';
import { idOf, isChoice, type Digits, type Formula } from '../formula/record.ts';
import { sayInput } from '../formula/show.ts';
import { dimensionOf, factorOf, type Unit } from '../formula/units.ts';
import { drawAll } from './draw.ts';
import { fill } from './fill.ts';
import { inReadersStyle } from './literal.ts';
import { formulasNeeded } from './needs.ts';
import { inputsOf, numberOf, readOnce, valuesOf } from './number-of.ts';
import { shuffled, stream } from './random.ts';
import { holds, spanOf, usualTolerance, type Span, type Tolerance } from './span.ts';
import type { Asking, Givens, Template, Turn, Worked } from './template.ts';

/** Formulas by id, loaded before anything is asked of them. */
export type Formulas = (id: string) => Formula;

/** What an answer is a number of. */
export interface Asked {
  readonly name: string;
  readonly unit: Unit;
  /** What imperial readers see instead, where that is not the usual one. */
  readonly imperial?: Unit | undefined;
  readonly digits: Digits | undefined;
}

/** A wrong turn with the number it leads to. */
export interface TurnTaken {
  readonly turn: Turn;
  readonly value: number;
  readonly span: Span;
}

/** What is right, and what is known to be wrong. Values are SI. */
export interface Key {
  readonly asked: Asked;
  readonly value: number;
  readonly span: Span;
  readonly tolerance: Tolerance;
  /** Other readings of an open question, with what sets each apart. */
  readonly others: readonly { readonly span: Span; readonly because: string }[];
  readonly turns: readonly TurnTaken[];
}

/** One seed’s numbers of one template. */
export interface Variant<T extends Template = Template> {
  readonly template: T;
  readonly seed: number;
  /** What was drawn, as it is shown: the key is worked from these very texts. */
  readonly drawn: Givens;
  /** All that is given to the formula. */
  readonly given: Givens;
  /** A text of the template with this variant’s numbers. */
  readonly say: (text: string, style?: Style) => string;
  /** The places of options or lines, as they are shown. */
  readonly order: readonly number[];
}

/** Fills {names} of a set of givens with what was drawn. */
export const withNames = (given: Givens, names: Givens): Givens =>
  Object.fromEntries(
    Object.entries(given).map(([id, text]) => [id, fill(text, (name) => names[name])]),
  );

/** Works one number out; a result in words or none at all has no place in an answer, and stays text. */
export const workOut = (
  formulas: Formulas,
  { formula, given, result }: Worked,
  style: Style = {},
): Printed => {
  const record = formulas(formula);
  const output = Object.entries(record.outputs).find(([, one]) => idOf(one) === result);
  // One result of many is worked out and written alone, but for sums: those first agree on a currency.
  if (output && !('currency' in record.inputs) && !(result in given)) {
    const [key, one] = output;
    return print(one, compute(record, valuesOf(record, given))[key], style);
  }
  const asksInput = Object.values(record.inputs).some((input) => idOf(input) === result);
  const pairs = Object.entries(given).filter(([id]) => id !== result);
  const { results } = evaluateText(record, asksInput ? [...pairs, [result, '?']] : pairs, style);
  const printed = results[result];
  if (printed === undefined) throw new Error(`${formula} has no result “${result}”.`);
  return printed;
};

/**
 * The variant of a template that a seed stands for. The same seed gives the same numbers for ever.
 *
 * Throws: Error to the author for a name nobody knows; InputError where the drawn values do not go together.
 * @param seed a whole number from 0
 */
export const variantOf = <T extends Template>(
  template: T,
  formulas: Formulas,
  seed: number,
): Variant<T> => {
  const stem = `${template.id}/${template.version}/${seed}`;
  const drawn = drawAll(template.vary, stem);
  const inputs = inputsOf(formulas(template.formula));
  const own = (name: string): boolean => inputs.some(([, id]) => id === name);
  const given = {
    ...withNames(template.given, drawn),
    ...Object.fromEntries(Object.entries(drawn).filter(([name]) => own(name))),
  };
  const ask = 'ask' in template ? template.ask : undefined;

  const inputText = (id: string, text: string, style: Style): string => {
    const [, , input] = inputs.find(([, one]) => one === id) ?? [];
    return input ? sayInput(input, readOnce(input, text), style) : text;
  };
  /** What is drawn for another formula is written as that one writes it; what is drawn for none, much as it stands. */
  const drawnText = (name: string, text: string, style: Style): string => {
    const input = formulasNeeded(template)
      .flatMap((id) => Object.values(formulas(id).inputs))
      .find((one) => idOf(one) === name);
    if (input) return sayInput(input, readOnce(input, text), style);
    return inReadersStyle(text, style);
  };
  const textOf = (name: string, style: Style): string | undefined => {
    const also = template.also[name];
    if (also)
      return workOut(formulas, { ...also, given: withNames(also.given, drawn) }, style).text;
    if (name !== ask && given[name] !== undefined) return inputText(name, given[name], style);
    if (drawn[name] !== undefined) return drawnText(name, drawn[name], style);
    const worked = { formula: template.formula, given, result: ask ?? name };
    const { results } = evaluateText(
      formulas(template.formula),
      [
        ...Object.entries(given).filter(([id]) => id !== ask),
        ...(ask !== undefined && own(ask) ? [[ask, '?'] as const] : []),
      ],
      style,
    );
    return (
      results[name]?.text ?? (name === ask ? workOut(formulas, worked, style).text : undefined)
    );
  };

  const things =
    'options' in template ? template.options : 'lines' in template ? template.lines : [];
  const places = things.map((_thing, place) => place);
  const still = !('options' in template) || template.keepOrder;
  return {
    template,
    seed,
    drawn,
    given,
    say: (text, style = {}) => fill(inReadersStyle(text, style), (name) => textOf(name, style)),
    order: still ? places : shuffled(places, stream(`${stem}/order`)),
  };
};

/** What the answer to a template is a number of: the result’s, or the input’s that is solved for. */
export const askedOf = (formula: Formula, ask: string): Asked => {
  const output = Object.values(formula.outputs).find((one) => idOf(one) === ask);
  if (output?.unit)
    return {
      name: output.label ?? output.name,
      unit: output.unit,
      imperial: output.imperial,
      digits: output.digits,
    };
  const input = Object.values(formula.inputs).find((one) => idOf(one) === ask);
  if (input && !isChoice(input))
    return {
      name: input.label ?? input.name,
      unit: input.unit,
      imperial: input.imperial,
      digits: input.fraction || dimensionOf(input.unit) === 'iso' ? { fraction: true } : undefined,
    };
  throw new Error(`${formula.id} has no quantity “${ask}” to ask for.`);
};

const quantity = (text: string, { name, unit }: Asked): number =>
  parseQuantity(text, {
    name,
    unit,
    range: [-Infinity, Infinity],
    bare: 'none',
    stored: true,
    example: 1,
  });

const toleranceOf = ({ tolerance }: Asking, asked: Asked): Tolerance => {
  if (!tolerance) return usualTolerance(asked.unit, asked.digits);
  if ('relative' in tolerance) return { relative: tolerance.relative, absolute: 0 };
  if ('absolute' in tolerance)
    return { relative: 0, absolute: quantity(tolerance.absolute, asked) };
  return {
    stops: parseQuantity(tolerance.stops, {
      name: 'tolerance',
      unit: 'stop',
      range: [0, 10],
      example: 1,
    }),
    perDoubling: dimensionOf(asked.unit) === 'f-number' ? 2 : 1,
  };
};

/** Inputs whose choice an open question leaves to the student, with the other choice and what to call it. */
const OPEN: Readonly<Record<string, readonly [choice: string, because: string]>> = {
  marks: ['exact', 'with the exact f-numbers behind the marks'],
  'measured-from': ['sensor', 'with distances from the sensor'],
};

// A class has few numbers: of hundreds of students most share theirs with another, and so their keys.
const keys = new WeakMap<Formula, WeakMap<Template, Map<string, Key>>>();

/**
 * The key of a variant that asks for a number: its value, what else is right, and where the known wrong turns lead.
 *
 * Model: worked from the texts that are shown, so that nobody is marked by digits they never saw. Where the formula knows
 * marked and exact f-numbers, or distances from lens and sensor, and the text does not say which, both are right.
 * Throws: Error to the author where the key is no finite number, is nought, or cannot be told from a wrong turn’s.
 */
export const keyOf = (variant: Variant<Extract<Template, Asking>>, formulas: Formulas): Key => {
  const { template, drawn } = variant;
  const formula = formulas(template.formula);
  const ofFormula = keys.get(formula) ?? new WeakMap<Template, Map<string, Key>>();
  const known = ofFormula.get(template) ?? new Map<string, Key>();
  keys.set(formula, ofFormula.set(template, known));
  const numbers = Object.values(drawn).join('\n');
  const key = known.get(numbers) ?? workOutKey(variant, formulas);
  known.set(numbers, key);
  return key;
};

const workOutKey = (variant: Variant<Extract<Template, Asking>>, formulas: Formulas): Key => {
  const { template, given } = variant;
  const { formula: id, ask } = template;
  const formula = formulas(id);
  const asked = askedOf(formula, ask);
  const tolerance = toleranceOf(template, asked);
  const at = (worked: Partial<Worked>): number =>
    numberOf(formulas(worked.formula ?? id), worked.given ?? given, worked.result ?? ask);

  const value = at({});
  if (value === 0) throw new Error(`${template.id}, seed ${variant.seed}: the key is nought.`);
  const span = spanOf(value, tolerance);
  const findOthers = (): Key['others'] =>
    [
      ...template.alsoRight.map((result) => ({
        result,
        because: `as ${result.replaceAll('-', ' ')}`,
      })),
      ...Object.values(formula.inputs).flatMap((input) => {
        const open = OPEN[idOf(input)];
        return open && isChoice(input) && given[idOf(input)] === undefined
          ? [{ given: { ...given, [idOf(input)]: open[0] }, because: open[1] }]
          : [];
      }),
    ].flatMap(({ because, ...worked }) => {
      const other = spanOf(at(worked), tolerance);
      return other[0] === span[0] ? [] : [{ span: other, because }];
    });

  const slipped = (slip: string): number => {
    const found = formula.slips?.[slip];
    const key = Object.keys(formula.outputs).find(
      (one) => idOf(formula.outputs[one] as { name: string }) === ask,
    );
    if (!found || key === undefined) throw new Error(`${id} has no slip “${slip}” for ${ask}.`);
    const result = found.compute(valuesOf(formula, given))[key];
    if (typeof result !== 'number') throw new Error(`The slip “${slip}” of ${id} gives no ${ask}.`);
    return result;
  };
  const leadsTo = (turn: Turn): number => {
    if (turn.slip !== undefined) return slipped(turn.slip);
    if (turn.factor !== undefined) return value * turn.factor;
    if (turn.plus !== undefined) return value + quantity(turn.plus, asked);
    if (turn.turned !== undefined) return turn.turned === 'over' ? 1 / value : -value;
    if (turn.instead !== undefined) return at({ result: turn.instead });
    if (turn.worked !== undefined)
      return at({
        ...turn.worked,
        ...(turn.worked.given && {
          given: {
            ...(turn.worked.formula === undefined && given),
            ...withNames(turn.worked.given, variant.drawn),
          },
        }),
      });
    throw new Error(`${template.id}: a turn says no way it is come by.`);
  };
  const findTurns = (): Key['turns'] =>
    template.turns.map((turn): TurnTaken => {
      const wrong = leadsTo(turn);
      if (
        !Number.isFinite(wrong) ||
        holds(span, wrong) ||
        key.others.some((other) => holds(other.span, wrong))
      )
        throw new Error(
          `${template.id}, seed ${variant.seed}: the wrong turn “${turn.say.slice(0, 40)}” leads to the key.`,
        );
      return { turn, value: wrong, span: spanOf(wrong, tolerance) };
    });
  let others: Key['others'] | undefined;
  let turns: Key['turns'] | undefined;
  // Most answers are right, and a class has thousands: the rest is worked out only for those that are not.
  const key: Key = {
    asked,
    value,
    span,
    tolerance,
    get others() {
      return (others ??= findOthers());
    },
    get turns() {
      return (turns ??= findTurns());
    },
  };
  return key;
};

/** The factor from the answer’s own unit to SI, for texts about it. */
export const inUnit = ({ unit }: Asked, si: number): number => si / factorOf(unit);
