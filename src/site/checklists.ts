import { getCollection, type CollectionEntry } from 'astro:content';
import { curriculum, type Lesson } from './lessons.ts';

export interface Checklist {
  readonly entry: CollectionEntry<'checklists'>;
  readonly address: `/${string}`;
  readonly lesson: Lesson;
}

/**
 * The checklists, in their order.
 *
 * Throws: Error for a list whose lesson does not exist.
 */
export const checklists = async (): Promise<readonly Checklist[]> => {
  const lessons = (await curriculum()).flatMap((unit) => unit.lessons);
  return (await getCollection('checklists'))
    .toSorted((a, b) => a.data.order - b.data.order)
    .map((entry) => {
      const lesson = lessons.find((one) => one.entry.data.id === entry.data.lesson);
      if (!lesson) {
        throw new Error(
          `content/checklists/${entry.id}.yaml: “lesson” names “${entry.data.lesson}”, and no lesson has that id.`,
        );
      }
      return { entry, address: `/checklists/${entry.id}/` as const, lesson };
    });
};

/**
 * One checklist.
 *
 * Throws: Error for an id without a file, so that a lesson with an unknown list is never built.
 */
export const checklistOf = async (id: string): Promise<Checklist> => {
  const found = (await checklists()).find(({ entry }) => entry.id === id);
  if (!found) {
    throw new Error(
      `<Checklist id="${id}" /> has no list. Expected content/checklists/${id}.yaml; a neighbouring file shows its form.`,
    );
  }
  return found;
};
