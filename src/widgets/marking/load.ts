import type { Assignment } from '../../exercises/assignment.ts';
import type { Tools } from '../../exercises/desk.ts';
import { formulasNeeded } from '../../exercises/needs.ts';
import type { Formula } from '../../formula/record.ts';
import { formulas as all } from '../../formulas.ts';
import type { Entry } from '../question/bank.ts';

export type { Tools } from '../../exercises/desk.ts';

/** Fetches the formulas of an assignment’s templates all at once, and no others. */
export const toolsFor = async ({ items }: Assignment, bank: readonly Entry[]): Promise<Tools> => {
  const templates = new Map(
    items.flatMap((item) => {
      const entry = bank.find(({ template }) => template.id === item.template);
      return entry ? [[item.template, entry.template] as const] : [];
    }),
  );
  const ids = [...new Set([...templates.values()].flatMap(formulasNeeded))];
  const loaded = new Map<string, Formula>();
  await Promise.all(
    ids.map(async (id) => {
      const fetched = await all[id]?.();
      if (fetched) loaded.set(id, fetched.default);
    }),
  );
  return {
    templates,
    formulas: (id) => {
      const formula = loaded.get(id);
      if (!formula) throw new Error(`The formula ${id} was not loaded.`);
      return formula;
    },
  };
};
