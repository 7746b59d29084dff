import { formulas } from '../formulas.ts';
import type { Formula } from '../formula/record.ts';
import { curriculum, type Lesson } from './lessons.ts';

export interface PlateEntry {
  readonly formula: Formula;
  /** “1.3”: the third formula the first unit shows. */
  readonly number: string;
  /** The lesson that shows it first. */
  readonly lesson: Lesson;
  readonly address: `/${string}`;
}

/**
 * Every plate, numbered by unit in the order in which the lessons first show it, so that a teacher
 * can say “set plate 2.3 to f/4”. Computed, never written down.
 *
 * Throws: Error for a formula that no lesson shows, or that a lesson names and the list has not.
 */
const number = async (): Promise<readonly PlateEntry[]> => {
  const plates: PlateEntry[] = [];
  for (const unit of await curriculum()) {
    let count = 0;
    for (const lesson of unit.lessons) {
      for (const id of lesson.entry.data.formulas) {
        if (plates.some((plate) => plate.formula.id === id)) continue;
        const load = formulas[id];
        if (!load) {
          throw new Error(
            `${lesson.entry.filePath ?? lesson.entry.id} shows the formula “${id}”, which is not in src/formulas.ts.`,
          );
        }
        count += 1;
        plates.push({
          formula: (await load()).default,
          number: `${unit.number}.${String(count)}`,
          lesson,
          address: `/plates/${id}/`,
        });
      }
    }
  }
  return plates;
};

let numbered: Promise<readonly PlateEntry[]> | undefined;
export const plates = (): Promise<readonly PlateEntry[]> => (numbered ??= number());

/** One plate by its formula's id. */
export const plateOf = async (id: string): Promise<PlateEntry> => {
  const plate = (await plates()).find(({ formula }) => formula.id === id);
  if (!plate) {
    throw new Error(`No lesson shows the formula “${id}”: name it under \`formulas\` in one.`);
  }
  return plate;
};
