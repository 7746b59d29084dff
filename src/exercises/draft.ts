import { readAssignment, type Assignment, type Item, type Read } from './assignment.ts';

/** An assignment while it is being put together: it may hold no questions yet. */
export const blankDraft = (draw: number): Assignment => ({
  title: 'Exercises',
  due: '',
  seeds: 'alias',
  hints: 'free',
  draw,
  items: [],
});

/**
 * Reads a draft from the address of the page it is put together on, by the same careful hand as a link.
 * @param draw what to draw with where the address says nothing
 */
export const readDraft = (query: string, draw: number): Read<Assignment> => {
  const given = new URLSearchParams(query);
  if (!['title', 'due', 'seeds', 'hints', 'draw', 'ask'].some((name) => given.has(name)))
    return { ok: true, value: blankDraft(draw) };
  if (given.getAll('ask').join('') !== '') return readAssignment(query);
  given.set('ask', 'none.1.1');
  const read = readAssignment(given.toString());
  return read.ok ? { ok: true, value: { ...read.value, items: [] } } : read;
};

/** What of a draft can be set today, and a sentence for each part that cannot. */
export const withBank = (
  items: readonly Item[],
  versionOf: (template: string) => number | undefined,
): { readonly items: readonly Item[]; readonly dropped: readonly string[] } => {
  const dropped: string[] = [];
  const kept = items.filter(({ template, version }) => {
    const now = versionOf(template);
    if (now === version) return true;
    dropped.push(
      now === undefined
        ? `“${template}” is not an exercise of this edition, and was left out.`
        : `“${template}” has changed since this address was made (version ${version}, now ${now}), and was left out. Choose it again.`,
    );
    return false;
  });
  return { items: kept, dropped };
};
