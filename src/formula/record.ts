import type { Measured, Quantity } from './quantities.ts';
import type { Dimension, Unit } from './units.ts';

/**
 * How a result is rounded for the reader: significant figures (a bare number), decimals, thirds of a stop, or the
 * fraction of a second that shutters are marked in.
 */
export type Digits =
  | number
  | { readonly significant: number }
  | { readonly decimals: number }
  | { readonly thirds: true }
  | { readonly fraction: true };

/** A quantity the reader sets. `range`, `span`, `start`, `series` and a numeric `default` are in `unit`. */
export interface QuantityInput {
  /** The field's standard term; in kebab-case and small letters it is the id used by links, files and commands. */
  readonly name: string;
  /** What readers see instead, where a name kept for its id reads oddly. */
  readonly label?: string;
  /** The field's symbol. */
  readonly tex: string;
  readonly unit: Unit;
  /** Imperial readers see this unit; the trade keeps focal lengths and sensors in millimetres. */
  readonly imperial?: Unit;
  /** Other ways to write it, in SI; undefined where the text is none of them. */
  readonly read?: (text: string) => number | undefined;
  /** What is legal, ends included. Infinity is legal where it stands here. */
  readonly range: readonly [number, number];
  /** What a slider runs over, where that is narrower than what is legal. */
  readonly span?: readonly [number, number];
  /** What a page shows first. */
  readonly start: number;
  /** What evaluate assumes when nothing is given: a number in `unit`, or worked out (in SI) from the other inputs. */
  readonly default?: number | ((given: Given) => number);
  /** May be left out; the results that need it are then not given. */
  readonly optional?: true;
  /** A page begins with this optional input left out; `start` is then only what to suggest. */
  readonly empty?: true;
  /** Written as parts of one where it is less than one, as times are: 1/16 of full power. */
  readonly fraction?: true;
  /** Several values of the same kind, written `a; b; c`. */
  readonly list?: { readonly min: number; readonly max: number };
  /** Values a table or a row of presets runs through. */
  readonly series?: readonly number[];
  /** One sentence for the list of symbols. */
  readonly means: string;
  /** Shown only while another input has this choice. */
  readonly when?: Readonly<Record<string, string>>;
}

/** A choice the reader makes, by id; `choices` says what each id stands for in the computation. */
export interface ChoiceInput<T = unknown> {
  readonly name: string;
  readonly label?: string;
  readonly tex?: string;
  readonly choices: Readonly<Record<string, T>>;
  /** What the reader sees instead of the id. */
  readonly labels?: Readonly<Record<string, string>>;
  /** Values beyond the listed ones, written out: a sensor's size, a print's shape. */
  readonly custom?: Custom<T>;
  readonly start: string;
  readonly default?: string;
  readonly optional?: true;
  readonly means: string;
  readonly when?: Readonly<Record<string, string>>;
}

/** Reads and writes a choice that is not in the list. `read` throws an InputError, or returns undefined if not its kind. */
export interface Custom<T> {
  read(text: string): T | undefined;
  write(value: T): string;
  /** How to write one, for the error sentence and the field: "a size such as 30x20mm". */
  readonly form: string;
}

export type Input = QuantityInput | ChoiceInput;

export interface Output {
  readonly name: string;
  readonly label?: string;
  readonly tex?: string;
  /** A quantity's unit; words and yes-or-no have none. */
  readonly unit?: Unit;
  readonly imperial?: Unit;
  readonly digits?: Digits;
  readonly kind?: 'quantity' | 'yes-no' | 'choice';
  /** What the reader sees for a word; for yes-or-no the keys are `yes` and `no`. */
  readonly labels?: Readonly<Record<string, string>>;
  /** One sentence for the list of symbols. */
  readonly means?: string;
}

/** Anything an input can hold once read. Quantities are SI numbers. */
export type Value = unknown;
/** Inputs by record key. */
export type Given = Readonly<Record<string, Value>>;
/** Results by record key; undefined means an input it needs was not given. */
export type Results = Readonly<Record<string, number | boolean | string | undefined>>;

/** A number in the worked line: its SI value, the unit and digits to show it in. */
export interface Shown {
  /** Undefined where an input it needs was left out: an ellipsis then stands in its place. */
  readonly value: number | undefined;
  readonly unit: Unit;
  readonly digits: Digits;
}

/** The formula once more with the reader's numbers; `\val{key}` in the TeX marks where each goes. */
export interface Worked {
  readonly tex: string;
  readonly values: (given: Given, results: Results) => Readonly<Record<string, Shown>>;
}

/** Groups of input ids of which exactly one is given; the first is what a page shows. */
export interface Ways {
  readonly groups: readonly (readonly string[])[];
  /** None of them may be given either; what needs them is then not given. */
  readonly optional?: true;
}

/** A known wrong turn: what it computes, and what to say to someone who took it. */
export interface Slip {
  readonly compute: (given: Given) => Results;
  readonly say: string;
}

/** A formula with everything the site says about it. What pages, tables, exercises and tests read. */
export interface Formula {
  readonly id: string;
  readonly title: string;
  readonly tex: string;
  /** The formula in words, for those who listen. */
  readonly spoken: string;
  readonly inputs: Readonly<Record<string, Input>>;
  readonly outputs: Readonly<Record<string, Output>>;
  /** Symbols in the TeX that are neither inputs nor outputs. */
  readonly symbols?: readonly { readonly tex: string; readonly means: string }[];
  /** Inputs that stand in for one another. */
  readonly ways?: readonly Ways[];
  // Written as methods: a typed record is then a Formula too, since method parameters compare both ways.
  compute(given: Given): Results;
  /** Closed inverses, by input key and then output key; they receive the given and the wanted result, in SI. */
  readonly solve?: Readonly<
    Record<string, Readonly<Record<string, (given: Given, wanted: number) => number>>>
  >;
  readonly slips?: Readonly<Record<string, Slip>>;
  readonly worked: Worked;
  readonly model: string;
  readonly breaks: string;
  /** Ids in the bibliography. */
  readonly sources: readonly string[];
}

type ValueOf<I> = I extends { choices: Readonly<Record<string, infer T>> }
  ? T
  : I extends { list: object; unit: infer U extends Unit }
    ? readonly Measured<U>[]
    : I extends { unit: infer U extends Unit }
      ? Measured<U>
      : never;

/** What `compute` receives: every input by its key, a quantity of the right dimension, undefined only where optional. */
export type GivenFor<I> = {
  readonly [K in keyof I]: I[K] extends { optional: true }
    ? ValueOf<I[K]> | undefined
    : ValueOf<I[K]>;
};

type ResultOf<O> = O extends { kind: 'yes-no' }
  ? boolean
  : O extends { kind: 'choice' }
    ? string
    : O extends { unit: infer U extends Unit }
      ? Measured<U>
      : never;

/** What `compute` returns: exactly the outputs' keys. */
export type ResultsFor<O> = { readonly [K in keyof O]: ResultOf<O[K]> | undefined };

interface Spec<I, O> extends Omit<
  Formula,
  'inputs' | 'outputs' | 'compute' | 'worked' | 'solve' | 'slips'
> {
  readonly inputs: I;
  readonly outputs: O;
  compute(given: GivenFor<I>): ResultsFor<O>;
  readonly solve?: {
    readonly [K in keyof I]?: {
      readonly [L in keyof O]?: (given: GivenFor<I>, wanted: number) => Quantity<Dimension>;
    };
  };
  readonly slips?: Readonly<
    Record<string, { compute: (given: GivenFor<I>) => Partial<ResultsFor<O>>; say: string }>
  >;
  readonly worked: {
    readonly tex: string;
    readonly values: (
      given: GivenFor<I>,
      results: ResultsFor<O>,
    ) => Readonly<Record<string, Shown>>;
  };
}

/** A formula that still knows its own inputs and outputs; it serves wherever any formula does. */
type Typed<I, O> = Omit<Formula, 'inputs' | 'outputs' | 'compute'> &
  Pick<Spec<I, O>, 'inputs' | 'outputs' | 'compute'>;

/**
 * Checks a record at compile time: `compute` gets the inputs' dimensions, and must return the outputs' own.
 * @example export default defineFormula({ id: 'angle-of-view', … })
 */
export const defineFormula = <
  const I extends Readonly<Record<string, Input>>,
  const O extends Readonly<Record<string, Output>>,
>(
  spec: Spec<I, O>,
): Typed<I, O> =>
  // The public face forgets the exact types: whoever takes any formula handles text and numbers by key.
  spec as unknown as Typed<I, O>;

/** The id of an input or output: its name in kebab-case and small letters. */
export const idOf = (named: { readonly name: string }): string =>
  named.name.toLowerCase().replaceAll(/[ ’]+/g, '-');

export const isChoice = (input: Input): input is ChoiceInput => 'choices' in input;
