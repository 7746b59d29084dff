import type { Style } from '../../formula/notation/write.ts';
import { readingTable, type ReadingTable } from '../reading-table.ts';
import type { Givens, Template } from '../template.ts';
import { withNames, type Formulas, type Variant } from '../variant.ts';

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
  | { readonly show: 'table'; readonly table: ReadingTable }
  | { readonly show: 'drawing'; readonly drawing: Drawing };

/** The figure of a variant, its numbers put in. */
export const figureOf = (
  variant: Variant<Extract<Template, { kind: 'reading' }>>,
  formulas: Formulas,
  picture: Picture,
  style: Style,
): Shown => {
  const { figure } = variant.template;
  const formula = formulas(figure.formula);
  if (figure.show === 'table')
    return { show: 'table', table: readingTable(variant, formula, style) };
  const says = variant.say(figure.says ?? formula.title, style);
  const given = withNames(figure.given, variant.drawn);
  return { show: 'drawing', drawing: picture(figure.formula, given, says) };
};
