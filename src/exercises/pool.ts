import { idOfAssignment, SEEDS, type Assignment, type Question } from './assignment.ts';
import { shuffled, stream } from './random.ts';
import type { Template } from './template.ts';
import { variantOf, type Formulas } from './variant.ts';

/**
 * So many variants of one template of an assignment, no two with the same numbers: for a system that draws one for each
 * student itself. A template that draws fewer sets of numbers gives what it has.
 *
 * Model: drawn from the assignment alone, so that the same one gives the same variants again.
 * @example poolOf(assignment, template, formulas, 5).map(({ seed }) => seed) // [871, 12, 403, 96, 650]
 */
export const poolOf = (
  assignment: Assignment,
  template: Template,
  formulas: Formulas,
  count: number,
): readonly Question[] => {
  const next = stream(`${idOfAssignment(assignment)}/pool/${template.id}`);
  const all = Array.from({ length: SEEDS }, (_none, seed) => seed);
  const seen = new Set<string>();
  const taken: Question[] = [];
  for (const seed of shuffled(all, next)) {
    if (taken.length === count) break;
    const numbers = JSON.stringify(variantOf(template, formulas, seed).drawn);
    if (seen.has(numbers)) continue;
    seen.add(numbers);
    taken.push({ template: template.id, version: template.version, seed });
  }
  return taken;
};
