import { readInput } from './read.ts';
import { idOf, isChoice, type Formula, type Value } from './record.ts';
import { factorOf } from './units.ts';

/** Ids of the inputs that stand in for one another, all but those of the way a page shows first. */
const laterWays = (formula: Formula): readonly string[] =>
  (formula.ways ?? []).flatMap(({ groups }) => groups.slice(1).flat());

/**
 * What a page shows before anyone has typed, in SI: every input at its start, but for those that are worked out from
 * the others until the reader says otherwise, and those that would only stand in for one already there.
 */
export const startsOf = (formula: Formula): Record<string, Value> => {
  const later = laterWays(formula);
  return Object.fromEntries(
    Object.entries(formula.inputs).flatMap(([key, input]) => {
      if (later.includes(idOf(input))) return [];
      if (isChoice(input)) return [[key, readInput(input, input.start)]];
      if (typeof input.default === 'function' || input.empty) return [];
      const start = input.start * factorOf(input.unit);
      return [[key, input.list ? [start] : start]];
    }),
  );
};

/** Ids of the inputs that give way when this one is given: the other groups of its ways. */
export const rivalsOf = (formula: Formula, id: string): readonly string[] =>
  (formula.ways ?? [])
    .filter(({ groups }) => groups.flat().includes(id))
    .flatMap(({ groups }) => groups.filter((group) => !group.includes(id)).flat());
