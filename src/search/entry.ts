/** What a result is, in the word readers see. */
export const KINDS = ['Lesson', 'Part of a lesson', 'Plate', 'Table', 'Word', 'Symbol', 'Checklist', 'Page'] as const; // prettier-ignore
export type Kind = (typeof KINDS)[number];

/** A thing that can be found. */
export interface Entry {
  readonly kind: Kind;
  /** Its number, where readers know it by one: “2.3”. */
  readonly number?: string;
  readonly title: string;
  /** For a symbol: the letter with its index after a low line, “N_w”. */
  readonly symbol?: string;
  /** From the root of the site. */
  readonly address: string;
  /** The answer itself, or the question it answers. */
  readonly says: string;
}

/** An entry with all the words it is to be found by. */
export interface Source extends Entry {
  /** Other names: as good as the title. */
  readonly names?: readonly string[];
  /** Symbols it is known by, their case kept. */
  readonly symbols?: readonly string[];
  /** What it is about: inputs and results of a formula, the lesson a part belongs to. */
  readonly about?: string;
  readonly text?: string;
}
