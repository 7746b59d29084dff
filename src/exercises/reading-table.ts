import { evaluateText } from '../formula/evaluate.ts';
import type { Style } from '../formula/notation/write.ts';
import { readInput } from '../formula/read.ts';
import { idOf, type Formula, type Input } from '../formula/record.ts';
import { sayInput } from '../formula/show.ts';
import type { Template } from './template.ts';
import { askedOf, withNames, type Variant } from './variant.ts';

/** A table to read from. The first of each row, and of the head, names it. */
export interface ReadingTable {
  readonly caption: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

const inputOf = (formula: Formula, id: string): Input => {
  const input = Object.values(formula.inputs).find((one) => idOf(one) === id);
  if (!input) throw new Error(`${formula.id} has no input “${id}”.`);
  return input;
};

/**
 * The table a reading exercise is read from, worked out with this variant's numbers: for the page, for paper and for
 * course systems alike.
 * Throws: Error to the author where the figure is no table, or names an input the formula does not have.
 */
export const readingTable = (
  { template, drawn }: Variant<Extract<Template, { kind: 'reading' }>>,
  formula: Formula,
  style: Style,
): ReadingTable => {
  const { figure, ask } = template;
  const { down, across } = figure;
  if (!down || !across) throw new Error('A table needs what goes down and across.');
  const given = withNames(figure.given, drawn);
  const [rows, columns] = [inputOf(formula, down.input), inputOf(formula, across.input)];
  const say = (input: Input, text: string): string =>
    sayInput(input, readInput(input, text, { stored: true }), style);
  const at = (row: string, column: string): string => {
    const here = { ...given, [down.input]: row, [across.input]: column };
    return evaluateText(formula, Object.entries(here), style).results[ask]?.text ?? '';
  };
  const { name } = askedOf(formula, ask);
  return {
    caption: `${name.charAt(0).toUpperCase()}${name.slice(1)}. Down: ${rows.label ?? rows.name}. Across: ${columns.label ?? columns.name}.`,
    head: ['', ...across.values.map((text) => say(columns, text))],
    rows: down.values.map((row) => [
      say(rows, row),
      ...across.values.map((column) => at(row, column)),
    ]),
  };
};
