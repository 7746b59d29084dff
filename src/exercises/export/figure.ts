import { evaluateText } from '../../formula/evaluate.ts';
import type { Style } from '../../formula/notation/write.ts';
import { readInput } from '../../formula/read.ts';
import { idOf, type Formula, type Input } from '../../formula/record.ts';
import { sayInput } from '../../formula/show.ts';
import type { Figure, Givens, Template } from '../template.ts';
import { withNames, type Formulas, type Variant } from '../variant.ts';

/** A table to read from. The first of each row, and of the head, names it. */
export interface Grid {
  readonly caption: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** A drawing as text, with what it shows in words. */
export interface Drawing {
  readonly svg: string;
  readonly says: string;
  readonly width: number;
  readonly height: number;
}

/** Draws a formula at what is given to it, with words for those who listen; handed in, since drawing is another room’s work. */
export type Picture = (formula: string, given: Givens, says: string) => Drawing;

/** What a reading exercise is read from, ready to be set down. */
export type Shown =
  | { readonly show: 'table'; readonly table: Grid }
  | { readonly show: 'drawing'; readonly drawing: Drawing };

const inputOf = (formula: Formula, id: string): Input => {
  const input = Object.values(formula.inputs).find((one) => idOf(one) === id);
  if (!input) throw new Error(`${formula.id} has no input “${id}”.`);
  return input;
};

const grid = (
  formula: Formula,
  given: Givens,
  { down, across }: Figure,
  result: string,
  style: Style,
): Grid => {
  if (!down || !across) throw new Error('A table needs what goes down and across.');
  const [rows, columns] = [inputOf(formula, down.input), inputOf(formula, across.input)];
  const say = (input: Input, text: string): string =>
    sayInput(input, readInput(input, text, { stored: true }), style);
  const at = (row: string, column: string): string => {
    const here = { ...given, [down.input]: row, [across.input]: column };
    return evaluateText(formula, Object.entries(here), style).results[result]?.text ?? '';
  };
  return {
    caption: `Down: ${rows.label ?? rows.name}. Across: ${columns.label ?? columns.name}.`,
    head: ['', ...across.values.map((text) => say(columns, text))],
    rows: down.values.map((row) => [
      say(rows, row),
      ...across.values.map((column) => at(row, column)),
    ]),
  };
};

/** The figure of a variant, its numbers put in. */
export const figureOf = (
  { template, drawn, say }: Variant<Extract<Template, { kind: 'reading' }>>,
  formulas: Formulas,
  picture: Picture,
  style: Style,
): Shown => {
  const { figure, ask } = template;
  const given = withNames(figure.given, drawn);
  const formula = formulas(figure.formula);
  if (figure.show === 'table')
    return { show: 'table', table: grid(formula, given, figure, ask, style) };
  const says = say(figure.says ?? formula.title, style);
  return { show: 'drawing', drawing: picture(figure.formula, given, says) };
};
