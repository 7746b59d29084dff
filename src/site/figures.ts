import type { Sheet } from '../drawing/sheet.ts';
import { SEEDS } from '../exercises/assignment.ts';
import { valuesOf } from '../exercises/number-of.ts';
import type { Template } from '../exercises/template.ts';
import { variantOf, withNames, workOut, type Formulas } from '../exercises/variant.ts';
import { compute } from '../formula/compute.ts';
import type { Style } from '../formula/notation/write.ts';
import type { Given, Results } from '../formula/record.ts';

export type Reading = Extract<Template, { kind: 'reading' }>;

/** A drawing to read from. What it says in words comes from the exercise: the plate’s own would say the answer. */
export type Picture = Omit<Sheet, 'says' | 'table'>;

const drawings = import.meta.glob<{
  readonly draw: (given: Given, results: Results, style: Style) => Sheet;
}>('../drawing/*.ts', { eager: true });

/** A hundredth of a unit is finer than any screen, and a third of the bytes. */
const coarser = (d: string): string =>
  d.replaceAll(/-?\d+\.\d{3,}/g, (number) => String(Number(Number(number).toFixed(2))));

/**
 * The drawings an exercise is read from, by the numbers it can draw, as a plate would show them; but without any text in
 * which what is asked stands.
 */
export const picturesOf = (
  template: Reading,
  formulas: Formulas,
  style: Style = {},
): Readonly<Record<string, Picture>> => {
  const { formula: id, given } = template.figure;
  const draw = drawings[`../drawing/${id}.ts`]?.draw;
  if (!draw) throw new Error(`${template.id}: there is no drawing of ${id}.`);
  const pictures: Record<string, Picture> = {};
  for (let seed = 0; seed < SEEDS; seed++) {
    const variant = variantOf(template, formulas, seed);
    const name = Object.values(variant.drawn).join('/');
    if (pictures[name]) continue;
    const formula = formulas(id);
    const values = valuesOf(formula, withNames(given, variant.drawn));
    const { width, height, marks } = draw(values, compute(formula, values), style);
    const asked = workOut(
      formulas,
      { formula: template.formula, given: variant.given, result: template.ask },
      style,
    ).text;
    pictures[name] = {
      width,
      height,
      marks: marks
        .filter((mark) => mark.kind !== 'text' || !mark.text.includes(asked))
        .map((mark) => (mark.kind === 'path' ? { ...mark, d: coarser(mark.d) } : mark)),
    };
  }
  return pictures;
};
