import { getCollection, type CollectionEntry } from 'astro:content';
import { curriculum, type Lesson } from './lessons.ts';
import { namesOf, termFor, type Names } from './named-terms.ts';

/** The glossary in alphabetical order, with its cross-references checked. */
const load = async (): Promise<readonly CollectionEntry<'glossary'>[]> => {
  const terms = await getCollection('glossary');
  const known = new Set(terms.map((term) => term.id));
  for (const term of terms) {
    const missing = term.data.see.find((other) => !known.has(other));
    if (missing !== undefined) {
      throw new Error(
        `content/glossary/${term.id}.md: “see” names “${missing}”, which has no file.`,
      );
    }
  }
  return terms.toSorted((a, b) => a.data.term.localeCompare(b.data.term, 'en'));
};

let loaded: Promise<readonly CollectionEntry<'glossary'>[]> | undefined;
export const glossary = (): Promise<readonly CollectionEntry<'glossary'>[]> => (loaded ??= load());

/**
 * One term.
 *
 * Throws: Error for an id without a file, so that a lesson with an unknown term is never built.
 */
export const termOf = async (id: string): Promise<CollectionEntry<'glossary'>> => {
  const found = (await glossary()).find((term) => term.id === id);
  if (!found) {
    throw new Error(
      `<Term id="${id}"> has no entry. Expected content/glossary/${id}.md; a neighbouring file shows its form.`,
    );
  }
  return found;
};

let named: Promise<Names> | undefined;
const names = async (): Promise<Names> =>
  namesOf((await glossary()).map(({ id, data }) => ({ id, names: [data.term, ...data.also] })));

/** The term that explains the name of an input or a result, if there is one. */
export const termNamed = async (
  formula: string,
  one: { readonly name: string; readonly label?: string | undefined },
): Promise<string | undefined> => termFor(await (named ??= names()), formula, one);

/** The first lesson that explains each term, by the term’s id. */
export const firstUses = async (): Promise<ReadonlyMap<string, Lesson>> => {
  const found = new Map<string, Lesson>();
  for (const lesson of (await curriculum()).flatMap(({ lessons }) => lessons)) {
    for (const [, id = ''] of (lesson.entry.body ?? '').matchAll(/<Term\s+id="([^"]+)"/g)) {
      if (!found.has(id)) found.set(id, lesson);
    }
  }
  return found;
};
