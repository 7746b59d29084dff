import type { Drawn } from './draw.ts';

/** Inputs by evaluate's ids, in its grammar; a text may hold {names} of what was drawn. */
export type Givens = Readonly<Record<string, string>>;

/** One number worked out by a formula. */
export interface Worked {
  readonly formula: string;
  readonly given: Givens;
  readonly result: string;
}

/**
 * A known wrong turn: how it is come by, what to say to someone who took it, and the part of the mark it still earns.
 * Exactly one way is given.
 */
export interface Turn {
  readonly say: string;
  /** From 0 up to, and without, 1. */
  readonly credit: number;
  /** A slip of the formula’s record. */
  readonly slip?: string;
  /** The key times this: 2 for a diameter in place of a radius, 0.001 for millimetres written as metres. */
  readonly factor?: number;
  /** The key and so much more, a text in the answer’s unit: one stop the wrong way. */
  readonly plus?: string;
  /** One over the key, or the key with the other sign. */
  readonly turned?: 'over' | 'round';
  /** Another result of the same formula. */
  readonly instead?: string;
  /** The same question with other inputs, or worked by another formula. */
  readonly worked?: Partial<Worked>;
}

interface Common {
  /** Permanent, like the version of every text and number of it that was ever handed out. */
  readonly id: string;
  readonly version: number;
  readonly title: string;
  readonly skill: string;
  readonly difficulty: 1 | 2 | 3;
  /** The formula it belongs to; what is given to it, and which of that is drawn. */
  readonly formula: string;
  readonly given: Givens;
  readonly vary: Readonly<Record<string, Drawn>>;
  /** Further numbers its texts need, by name. */
  readonly also: Readonly<Record<string, Worked>>;
  readonly text: string;
  /** In steps, each telling a little more. */
  readonly hints: readonly string[];
  readonly solution: string;
}

/** What is asked for as a number. */
export interface Asking {
  /** A result’s id, or an input’s: then the result it follows from stands in `given`. */
  readonly ask: string;
  readonly turns: readonly Turn[];
  readonly tolerance?:
    { readonly relative: number } | { readonly absolute: string } | { readonly stops: string };
  /** Results that are right as well, where the text leaves open which is meant: from the sensor as from the lens. */
  readonly alsoRight: readonly string[];
}

export interface Option {
  readonly text: string;
  readonly right: boolean;
  readonly feedback: string;
}

export type Template =
  | (Common & Asking & { readonly kind: 'numeric' })
  | (Common & Asking & { readonly kind: 'reading'; readonly figure: Figure })
  | (Common & {
      readonly kind: 'choice';
      readonly options: readonly Option[];
      readonly keepOrder: boolean;
    })
  /** Lines of a worked answer of which one is wrong: which, and what should have come out? */
  | (Common & Asking & { readonly kind: 'mistake'; readonly lines: readonly Line[] })
  | (Common & {
      readonly kind: 'design';
      readonly settings: readonly Setting[];
      readonly requirements: readonly Requirement[];
      /** Settings that keep everything, and some that miss by little; for every seed one of each must do so. */
      readonly accepted: readonly Givens[];
      readonly nearMiss: readonly Givens[];
    })
  | (Common & {
      readonly kind: 'practical';
      readonly measured: readonly string[];
      readonly compare: string;
      readonly gap: string;
      readonly rubric: readonly { readonly text: string; readonly points: number }[];
    });

export interface Line {
  readonly text: string;
  readonly wrong: boolean;
  readonly feedback: string;
}

/** What is read: a drawing or a table of a formula at the values given. */
export interface Figure {
  readonly show: 'drawing' | 'table';
  readonly formula: string;
  readonly given: Givens;
  /** Of a drawing: what can be read from it, for those who listen. Like the drawing it does not say what is asked. */
  readonly says?: string;
  /** Of a table: what goes down and across, as input and texts. */
  readonly down?: { readonly input: string; readonly values: readonly string[] };
  readonly across?: { readonly input: string; readonly values: readonly string[] };
}

/** A setting left to the student: an input of a formula, under a name of its own. */
export interface Setting {
  readonly name: string;
  readonly formula: string;
  readonly input: string;
}

/** What a design must keep: one result of one formula against a limit, with {names} for settings and what was drawn. */
export interface Requirement {
  readonly say: string;
  readonly formula: string;
  readonly given: Givens;
  readonly result: string;
  readonly atLeast?: string;
  readonly atMost?: string;
  readonly is?: string;
}
