/** Arithmetic mean; undefined of nothing. */
export const mean = (all: readonly number[]): number | undefined =>
  all.length === 0 ? undefined : all.reduce((sum, x) => sum + x, 0) / all.length;

/**
 * Pearson’s correlation of two rows of the same length; undefined where one of them does not vary.
 * Source: any textbook of statistics.
 */
export const correlation = (a: readonly number[], b: readonly number[]): number | undefined => {
  const [ma, mb] = [mean(a), mean(b)];
  if (ma === undefined || mb === undefined || a.length !== b.length) return undefined;
  let [ab, aa, bb] = [0, 0, 0];
  a.forEach((x, i) => {
    const [da, db] = [x - ma, (b[i] ?? 0) - mb];
    ab += da * db;
    aa += da * da;
    bb += db * db;
  });
  return aa === 0 || bb === 0 ? undefined : ab / Math.sqrt(aa * bb);
};

/**
 * How well one item goes with the rest of the work: its marks against the sum of all the others’, not its own among them.
 * @param marks a row a student, a column an item
 */
export const itemRest = (marks: readonly (readonly number[])[], item: number): number | undefined =>
  correlation(
    marks.map((row) => row[item] ?? 0),
    marks.map((row) => row.reduce((sum, x) => sum + x, 0) - (row[item] ?? 0)),
  );

/** The thing that comes most often, and how often; the first of several. */
export const commonest = <T>(all: readonly T[]): readonly [T, number] | undefined => {
  const counts = new Map<T, number>();
  for (const one of all) counts.set(one, (counts.get(one) ?? 0) + 1);
  return [...counts].reduce<readonly [T, number] | undefined>(
    (best, entry) => (best === undefined || entry[1] > best[1] ? entry : best),
    undefined,
  );
};
