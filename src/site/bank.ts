import { getCollection } from 'astro:content';
import { formulasNeeded } from '../exercises/needs.ts';
import type { Template } from '../exercises/template.ts';
import { complaintsOf } from '../exercises/trial.ts';
import { keyOf, variantOf, type Formulas, type Variant } from '../exercises/variant.ts';
import { SEEDS } from '../exercises/assignment.ts';
import { formulas as all } from '../formulas.ts';
import type { Formula } from '../formula/record.ts';
import { curriculum, type Lesson, type Unit } from './lessons.ts';

/** An exercise with the place it belongs to. */
export interface Banked {
  readonly template: Template;
  /** Undefined where it crosses units. */
  readonly unit: Unit | undefined;
  readonly lesson: Lesson | undefined;
}

const gather = async (): Promise<readonly Banked[]> => {
  const units = await curriculum();
  const entries = await getCollection('bank');
  const ids = new Set<string>();
  return entries
    .map(({ id, data, filePath }) => {
      if (ids.has(data.id))
        throw new Error(`${filePath ?? id}: another exercise has the id “${data.id}” already.`);
      ids.add(data.id);
      const unit = units.find(({ entry }) => id.startsWith(`lessons/${entry.id}/`));
      const lesson = unit?.lessons.find(({ entry }) => id.startsWith(`lessons/${entry.id}/`));
      return { template: data as Template, unit, lesson };
    })
    .toSorted(
      (a, b) =>
        (a.lesson?.number ?? '9').localeCompare(b.lesson?.number ?? '9', 'en', { numeric: true }) ||
        a.template.difficulty - b.template.difficulty ||
        a.template.id.localeCompare(b.template.id, 'en'),
    );
};

let gathered: Promise<readonly Banked[]> | undefined;
/** Every exercise, in the order of the lessons, easiest first. */
export const bank = (): Promise<readonly Banked[]> => (gathered ??= gather());

/** The formulas of some templates, loaded. */
export const loadFormulas = async (templates: readonly Template[]): Promise<Formulas> => {
  const loaded = new Map<string, Formula>();
  for (const id of new Set(templates.flatMap(formulasNeeded))) {
    const fetched = await all[id]?.();
    if (!fetched)
      throw new Error(`An exercise works with “${id}”, which is not in src/formulas.ts.`);
    loaded.set(id, fetched.default);
  }
  return (id) => {
    const formula = loaded.get(id);
    if (!formula) throw new Error(`The formula “${id}” was not loaded.`);
    return formula;
  };
};

/**
 * Tries every seed that is ever handed out, of every exercise.
 * Throws: Error with the first complaint of each template that has one, so that the build stops.
 */
export const tryAll = async (): Promise<void> => {
  const templates = (await bank()).map(({ template }) => template);
  const formulas = await loadFormulas(templates);
  const complaints = templates.flatMap((template) => {
    // Seeds that draw the same numbers need to be tried once.
    const seen = new Set<string>();
    for (let seed = 0; seed < SEEDS; seed++) {
      const drawn = JSON.stringify(variantOf(template, formulas, seed).drawn);
      if (seen.has(drawn)) continue;
      seen.add(drawn);
      const found = complaintsOf(template, formulas, seed);
      if (found.length > 0) return found.slice(0, 3);
    }
    return [];
  });
  if (complaints.length > 0) throw new Error(complaints.join('\n'));
};

/** The number that answers a variant, in words; undefined for the kinds that ask for none. */
export const answerText = (variant: Variant, formulas: Formulas): string | undefined => {
  if (!('ask' in variant.template)) return undefined;
  keyOf(variant as Parameters<typeof keyOf>[0], formulas);
  return variant.say(`{${variant.template.ask}}`);
};
