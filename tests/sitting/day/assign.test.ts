import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assign } from '../../../src/sitting/day/assign.ts';

/** Every way to give rows columns of their own, the earliest columns of the first row first. */
function* ways(
  rows: number,
  columns: number,
  taken: readonly number[] = [],
): Generator<readonly number[]> {
  if (taken.length === rows) yield taken;
  else
    for (let column = 0; column < columns; column += 1)
      if (!taken.includes(column)) yield* ways(rows, columns, [...taken, column]);
}

/** The cheapest of all ways; of several the one met first, which is the earliest in order. */
const tried = (costs: readonly (readonly number[])[]): readonly number[] => {
  let best: readonly number[] = [];
  let least = Infinity;
  for (const way of ways(costs.length, costs[0]?.length ?? 0)) {
    const sum = way.reduce((all, column, row) => all + (costs[row]?.[column] ?? 0), 0);
    if (sum < least) [best, least] = [way, sum];
  }
  return best;
};

describe('an assignment', () => {
  it('is the cheapest of all and of equals the first, for every square of three with costs 0 to 2', () => {
    for (let code = 0; code < 3 ** 9; code += 1) {
      const digits = Array.from({ length: 9 }, (_, i) => Math.floor(code / 3 ** i) % 3);
      const costs = [digits.slice(0, 3), digits.slice(3, 6), digits.slice(6, 9)];
      const found = assign(costs);
      const wanted = tried(costs);
      if (found.join() !== wanted.join())
        throw new Error(`${JSON.stringify(costs)}: ${found.join()} instead of ${wanted.join()}`);
    }
  });

  it('is the same with columns to spare, for every two rows of four with costs 0 to 2', () => {
    for (let code = 0; code < 3 ** 8; code += 1) {
      const digits = Array.from({ length: 8 }, (_, i) => Math.floor(code / 3 ** i) % 3);
      const costs = [digits.slice(0, 4), digits.slice(4)];
      if (assign(costs).join() !== tried(costs).join())
        throw new Error(`${JSON.stringify(costs)}: ${assign(costs).join()}`);
    }
  });

  it('agrees with trying every way, up to six rows and seven columns', () => {
    const table = fc
      .tuple(
        fc.integer({ min: 1, max: 6 }),
        fc.integer({ min: 0, max: 1 }),
        fc.constantFrom(1, 3, 200_000),
      )
      .chain(([rows, spare, most]) =>
        fc.array(fc.array(fc.nat(most), { minLength: rows + spare, maxLength: rows + spare }), {
          minLength: rows,
          maxLength: rows,
        }),
      );
    fc.assert(
      fc.property(table, (costs) => {
        expect(assign(costs)).toEqual(tried(costs));
      }),
    );
  });

  it('gives each of forty rows a column of its own among many', () => {
    const costs = Array.from({ length: 40 }, (_row, i) =>
      Array.from(
        { length: 144 },
        (_column, k) => ((i * 7919 + k * 104_729) % 5) * 100_000 + ((i * k) % 7),
      ),
    );
    const found = assign(costs);
    expect(new Set(found).size).toBe(40);
    expect(found.every((column) => column >= 0 && column < 144)).toBe(true);
  });

  it('of nobody is empty', () => {
    expect(assign([])).toEqual([]);
  });
});
