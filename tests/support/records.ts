import fc from 'fast-check';
import { formulas } from '../../src/formulas.ts';
import { complete } from '../../src/formula/read.ts';
import { startsOf as pageStarts } from '../../src/formula/starts.ts';
import { idOf, isChoice, type Formula, type Given, type Input } from '../../src/formula/record.ts';
import { factorOf } from '../../src/formula/units.ts';

/** Every record on the site, in the order of src/formulas.ts. */
export const records: readonly Formula[] = await Promise.all(
  Object.values(formulas).map(async (load) => (await load()).default),
);

export const recordOf = (id: string): Formula => {
  const found = records.find((record) => record.id === id);
  if (!found) throw new Error(`no record ${id}`);
  return found;
};

/** The values a page shows first, completed. */
export const startsOf = (formula: Formula): Given => complete(formula, pageStarts(formula));

/** Any legal value of an input: over its slider's span mostly, over its whole range sometimes, its ends always. */
const valueOf = (input: Input, wide: boolean): fc.Arbitrary<unknown> => {
  if (isChoice(input)) return fc.constantFrom(...Object.values(input.choices));
  const factor = factorOf(input.unit);
  const [low, high] = wide ? input.range : (input.span ?? input.range);
  const top = Number.isFinite(high) ? high : 1e7;
  const between = fc
    .double({ min: 0, max: 1, noNaN: true })
    .map((t) => (low > 0 ? low * (top / low) ** t : low + (top - low) * t) * factor);
  const ends = [low, high].map((end) => end * factor);
  const one = wide
    ? fc.oneof(
        { weight: 8, arbitrary: between },
        { weight: 1, arbitrary: fc.constantFrom(...ends) },
      )
    : between;
  if (!input.list) return one;
  return fc.array(one, { minLength: input.list.min, maxLength: input.list.max });
};

/**
 * Inputs for a formula, before defaults: those with a worked-out default are left to it.
 * @param wide over the whole legal range, its ends and infinity included
 */
export const givenFor = (formula: Formula, wide = false): fc.Arbitrary<Record<string, unknown>> =>
  fc.tuple(everyInput(formula, wide), fc.nat(5)).map(([given, way]) => oneWay(formula, given, way));

/** Of inputs that stand in for one another one group is kept. */
export const oneWay = (
  formula: Formula,
  given: Record<string, unknown>,
  way: number,
): Record<string, unknown> => {
  const dropped = (formula.ways ?? []).flatMap(({ groups }) =>
    groups.filter((_group, at) => at !== way % groups.length).flat(),
  );
  return Object.fromEntries(
    Object.entries(given).filter(([key]) => {
      const input = formula.inputs[key];
      return input !== undefined && !dropped.includes(idOf(input));
    }),
  );
};

const everyInput = (formula: Formula, wide: boolean): fc.Arbitrary<Record<string, unknown>> =>
  fc.record(
    Object.fromEntries(
      Object.entries(formula.inputs).flatMap(([key, input]) =>
        !isChoice(input) && typeof input.default === 'function' && !input.optional
          ? []
          : [[key, valueOf(input, wide)]],
      ),
    ),
  );

/** The same values but one. */
export const without = (given: Given, key: string): Record<string, unknown> =>
  Object.fromEntries(Object.entries(given).filter(([name]) => name !== key));
