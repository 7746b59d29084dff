import { unitFor, writeQuantity, type Style } from '../../formula/notation/write.ts';
import type { Formula, Given, Results } from '../../formula/record.ts';
import { sayInput, showResult } from '../../formula/show.ts';
import type { Unit } from '../../formula/units.ts';
import type { Handle } from '../../drawing/handle.ts';
import type { Sheet } from '../../drawing/sheet.ts';

/** A piece of the sentence a plate says; the one `main` piece is set large. */
export interface Part {
  readonly text: string;
  readonly main?: true;
}

/** A piece as it is set: the f of f/4 is a piece of its own, and italic. */
export interface SetPart {
  readonly text: string;
  readonly main: boolean;
  readonly italic: boolean;
}

/** Writes values in the reader's units and style, for sentences. */
export interface Show {
  /** An input as the reader would say it: “85 mm”, “upright”. */
  given(key: string): string;
  /** A result, rounded as its record says. */
  result(key: string): string;
  /** A result without its sign, where the words say which way: “5.9 mm short”. */
  size(key: string): string;
  /** Any length, to the centimetre unless told otherwise. */
  length(metres: number, decimals?: number): string;
}

export type Sentence = (given: Given, results: Results, show: Show) => readonly Part[];
export type Draw = (given: Given, results: Results, style: Style) => Sheet;

/** All a plate is made of: everything else about it is read from the formula's record. */
export interface Calculator {
  readonly formula: Formula;
  readonly draw: Draw;
  readonly sentence: Sentence;
  /** What can be taken hold of in the drawing; the plate’s script then calls `withHandles`, and its page has handles.css. */
  readonly handles?: (given: Given, results: Results, style: Style) => readonly Handle[];
  /** Record keys of the fields, in the order a studio asks for them. */
  readonly fields: readonly string[];
  /** Keys of those that are seldom changed; they stand under “More settings”. */
  readonly more: readonly string[];
}

/** The unit a field shows this reader. */
export const shownUnit = (unit: Unit, imperial: Unit | undefined, style: Style): Unit =>
  unitFor(unit, imperial, style);

/** The words of one state of a plate, for its sentence. */
export const showFor = (formula: Formula, given: Given, results: Results, style: Style): Show => ({
  given(key) {
    const input = formula.inputs[key];
    return input ? sayInput(input, given[key], style) : '';
  },
  result(key) {
    const output = formula.outputs[key];
    return output ? showResult(output, results[key], style) : '';
  },
  size(key) {
    const output = formula.outputs[key];
    const value = results[key];
    return output
      ? showResult(output, typeof value === 'number' ? Math.abs(value) : value, style)
      : '';
  },
  length: (metres, decimals = 2) =>
    writeQuantity(metres, unitFor('m', undefined, style), { decimals }, style),
});
