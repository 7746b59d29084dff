import { getCollection } from 'astro:content';
import { plateOf, type PlateEntry } from './plates.ts';
import { quickTable, type QuickTable } from './quick-table.ts';

export interface QuickTableEntry {
  readonly table: QuickTable;
  readonly plate: PlateEntry;
  readonly address: `/${string}`;
}

/** What a photographer asks, in the order in which it is asked in a studio. */
export const GROUPS = {
  camera: 'Where does the camera stand, and what is in the frame?',
  focus: 'What is sharp, and how soft is the rest?',
  exposure: 'Which f-number, which shutter, how much room light?',
  lights: 'Where do the lights stand, and at what power?',
  set: 'What stands safely, and how large does it print?',
} as const;

const load = async (): Promise<readonly QuickTableEntry[]> => {
  const groups = Object.keys(GROUPS);
  const entries = (await getCollection('tables')).toSorted(
    (a, b) =>
      groups.indexOf(a.data.group) - groups.indexOf(b.data.group) || a.data.order - b.data.order,
  );
  return Promise.all(
    entries.map(async ({ id, data }) => {
      const plate = await plateOf(data.formula);
      return {
        table: quickTable(id, data, plate.formula),
        plate,
        address: `/tables/${id}/` as const,
      };
    }),
  );
};

let loaded: Promise<readonly QuickTableEntry[]> | undefined;

/** Every quick table, by studio question and then in its order; worked out once for the whole build. */
export const quickTables = (): Promise<readonly QuickTableEntry[]> => (loaded ??= load());
