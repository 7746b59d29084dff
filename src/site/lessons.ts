import { getCollection, type CollectionEntry } from 'astro:content';

export interface Lesson {
  readonly entry: CollectionEntry<'lessons'>;
  /** “1.2”: the unit's number and the lesson's own, from the folders' names. */
  readonly number: string;
  readonly address: `/${string}`;
}

export interface Unit {
  readonly entry: CollectionEntry<'units'>;
  readonly number: string;
  readonly address: `/${string}`;
  readonly lessons: readonly Lesson[];
}

/** The leading number of a folder: 01-angle-of-view is 1. */
const order = (folder: string | undefined, path: string): number => {
  const digits = /^(\d+)-/.exec(folder ?? '')?.[1];
  if (digits === undefined) {
    throw new Error(`${path}: a lesson's folder begins with its number, such as 01-angle-of-view.`);
  }
  return Number(digits);
};

/** content/lessons/1-focal-length/01-angle-of-view/index.mdx → [1, 1]; a unit has no second number. */
const place = (path = ''): readonly [number, number] => {
  const [unit, lesson] = path.replace(/^.*content\/lessons\//, '').split('/');
  return [order(unit, path), lesson?.startsWith('index.') ? 0 : order(lesson, path)];
};

/** The curriculum, in the order of the folders. */
export const curriculum = async (): Promise<readonly Unit[]> => {
  const lessons = await getCollection('lessons');
  const units = await getCollection('units');
  const known = new Set(lessons.map(({ data }) => data.id));
  for (const { data, filePath } of lessons) {
    const missing = data.needs.find((need) => !known.has(need));
    if (missing !== undefined) {
      throw new Error(
        `${filePath ?? data.id}: it needs the lesson “${missing}”, which does not exist.`,
      );
    }
  }
  return units
    .map((entry) => ({ entry, at: place(entry.filePath) }))
    .toSorted((a, b) => a.at[0] - b.at[0])
    .map(({ entry, at: [unit] }) => ({
      entry,
      number: String(unit),
      address: `/${entry.id}/` as const,
      lessons: lessons
        .filter((lesson) => lesson.id.startsWith(`${entry.id}/`))
        .map((lesson) => ({ lesson, at: place(lesson.filePath)[1] }))
        .toSorted((a, b) => a.at - b.at)
        .map(({ lesson, at }) => ({
          entry: lesson,
          number: `${String(unit)}.${String(at)}`,
          address: `/${lesson.id}/` as const,
        })),
    }));
};
