import { getCollection, type CollectionEntry } from 'astro:content';

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
