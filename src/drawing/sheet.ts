/** What a line is for; its weight and colour follow from this alone (styles/drawing.css, class `d-<role>`). */
export type Role =
  | 'object'
  | 'figure'
  | 'light'
  | 'shade'
  | 'construction'
  | 'dimension'
  | 'frame'
  | 'ground'
  | 'hidden'
  | 'emphasis';

/** One thing on a sheet. Coordinates are in the sheet's own units, x to the right and y down. */
export type Mark =
  | { readonly kind: 'path'; readonly d: string; readonly role: Role; readonly filled?: boolean }
  | {
      readonly kind: 'text';
      readonly x: number;
      readonly y: number;
      readonly text: string;
      readonly anchor?: 'start' | 'middle' | 'end';
      readonly role?: Role;
      /** Degrees, about the text's own point. */
      readonly turn?: number;
    };

/** A drawing to scale, ready to be set down as lines: the same marks make the page's picture and the printed one. */
export interface Sheet {
  readonly width: number;
  readonly height: number;
  readonly marks: readonly Mark[];
  /** What it shows, in words, with the numbers in it. */
  readonly says: string;
  /** The numbers drawn, for those who would rather read a table. */
  readonly table: {
    readonly head: readonly string[];
    readonly rows: readonly (readonly string[])[];
  };
}
