import { idOfAssignment, SEEDS, type Assignment, type Question } from './assignment.ts';
import { shuffled, stream } from './random.ts';
import type { Template } from './template.ts';
import { variantOf, type Formulas } from './variant.ts';

/** Variants to draw from, and the templates that had fewer than asked for. */
export interface Pool {
  readonly questions: readonly Question[];
  readonly short: readonly { readonly template: Template; readonly found: number }[];
}

/**
 * So many variants of each template of an assignment, no two with the same numbers: for a system that draws one for each
 * student itself.
 *
 * Model: drawn from the assignment alone, so that the same one gives the same variants again.
 * @param count how many of each; a template that draws fewer sets of numbers gives what it has
 */
export const poolOf = (
  assignment: Assignment,
  templates: readonly Template[],
  formulas: Formulas,
  count: number,
): Pool => {
  const short: { template: Template; found: number }[] = [];
  const questions = templates.flatMap((template): readonly Question[] => {
    const next = stream(`${idOfAssignment(assignment)}/pool/${template.id}`);
    const seeds = shuffled(
      Array.from({ length: SEEDS }, (_none, seed) => seed),
      next,
    );
    const seen = new Set<string>();
    const taken: Question[] = [];
    for (const seed of seeds) {
      if (taken.length === count) break;
      const numbers = JSON.stringify(variantOf(template, formulas, seed).drawn);
      if (seen.has(numbers)) continue;
      seen.add(numbers);
      taken.push({ template: template.id, version: template.version, seed });
    }
    if (taken.length < count) short.push({ template, found: taken.length });
    return taken;
  });
  return { questions, short };
};
