import { compareCheck } from '../reference/compare.ts';
import { checks, sources } from '../reference/load.ts';
import { formulas } from '../formulas.ts';
import { plates, type PlateEntry } from './plates.ts';

/** Every plate with its published values beside ours. */
const compareAll = async () => {
  // The build stops here when a value falls outside its tolerance, or when a file of values belongs to no formula.
  const orphan = [...checks.keys()].find((id) => !(id in formulas));
  if (orphan !== undefined)
    throw new Error(`shared/checks/${orphan}.json belongs to no formula in src/formulas.ts.`);
  const all = (await plates()).map((plate) => ({
    ...plate,
    values: (checks.get(plate.formula.id)?.values ?? []).map((value) =>
      compareCheck(plate.formula, value),
    ),
  }));
  const complaints = all.flatMap(({ values }) =>
    values.flatMap(({ complaint }) => complaint ?? []),
  );
  if (complaints.length > 0) throw new Error(complaints.join('\n'));
  return all;
};

let done: ReturnType<typeof compareAll> | undefined;
/** The same for every page that asks. Throws: Error where a value does not hold. */
export const compared = (): ReturnType<typeof compareAll> => (done ??= compareAll());

type Compared = Awaited<ReturnType<typeof compareAll>>[number];

/** The unit a plate belongs to, by the first part of its number. */
export const ofUnit = <T extends Pick<PlateEntry, 'number'>>(
  all: readonly T[],
  unit: number | string,
): readonly T[] => all.filter(({ number }) => number.startsWith(`${String(unit)}.`));

/** The works that some plates' values or formulas rest on, in the bibliography's order. */
export const worksOf = (all: readonly Compared[]): readonly string[] =>
  [...sources.keys()].filter((id) =>
    all.some(
      ({ formula, values }) =>
        formula.sources.includes(id) || values.some(({ value }) => value.source === id),
    ),
  );
