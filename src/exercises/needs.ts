import type { Template } from './template.ts';

/** Ids of every formula a template works with, each once: what has to be loaded before a variant is drawn. */
export const formulasNeeded = (template: Template): readonly string[] => {
  const ids = [template.formula, ...Object.values(template.also).map(({ formula }) => formula)];
  if ('turns' in template)
    ids.push(...template.turns.flatMap(({ worked }) => worked?.formula ?? []));
  if (template.kind === 'design')
    ids.push(...[...template.settings, ...template.requirements].map(({ formula }) => formula));
  if (template.kind === 'reading') ids.push(template.figure.formula);
  return [...new Set(ids)];
};
