import type { Assignment } from '../../exercises/assignment.ts';
import { formulasNeeded } from '../../exercises/needs.ts';
import type { Template } from '../../exercises/template.ts';
import type { Formulas } from '../../exercises/variant.ts';
import type { Formula } from '../../formula/record.ts';
import { formulas as all } from '../../formulas.ts';
import type { Entry } from '../question/bank.ts';

/** What an assignment is marked with. */
export interface Tools {
  readonly templates: ReadonlyMap<string, Template>;
  readonly formulas: Formulas;
}

/** Fetches the formulas of an assignment’s templates, and no others. */
export const toolsFor = async ({ items }: Assignment, bank: readonly Entry[]): Promise<Tools> => {
  const templates = new Map(
    items.flatMap((item) => {
      const entry = bank.find(({ template }) => template.id === item.template);
      return entry ? [[item.template, entry.template] as const] : [];
    }),
  );
  const loaded = new Map<string, Formula>();
  for (const id of new Set([...templates.values()].flatMap(formulasNeeded))) {
    const fetched = await all[id]?.();
    if (fetched) loaded.set(id, fetched.default);
  }
  return {
    templates,
    formulas: (id) => {
      const formula = loaded.get(id);
      if (!formula) throw new Error(`The formula ${id} was not loaded.`);
      return formula;
    },
  };
};
