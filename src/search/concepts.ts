import { whole, wordsOf } from './text.ts';

/** Finds which groups of equal names a text speaks of. */
export interface Concepts {
  /** The groups a whole text is a name of. */
  of(text: string): readonly number[];
  /** Where in a row of words a name stands: from which word, how many words, which groups. Longest first, none inside another. */
  in(words: readonly string[]): readonly Found[];
}

export interface Found {
  readonly at: number;
  readonly words: number;
  readonly groups: readonly number[];
}

const MOST_WORDS = 5;

/** Reads groups of names; a symbol (a name of one or two signs) is known by its case. */
export const conceptsOf = (groups: readonly (readonly string[])[]): Concepts => {
  const known = new Map<string, number[]>();
  groups.forEach((names, group) => {
    for (const name of new Set(names.map(nameKey)))
      known.set(name, [...(known.get(name) ?? []), group]);
  });
  const of = (text: string): readonly number[] => known.get(nameKey(text)) ?? [];
  return {
    of,
    in(words) {
      const found: Found[] = [];
      for (let at = 0; at < words.length; at += 1)
        for (let count = Math.min(MOST_WORDS, words.length - at); count > 0; count -= 1) {
          const groups = of(words.slice(at, at + count).join(' '));
          if (groups.length === 0) continue;
          found.push({ at, words: count, groups });
          at += count - 1;
          break;
        }
      return found;
    },
  };
};

/** A single letter is a symbol and keeps its case. */
const nameKey = (name: string): string => {
  const [only = '', more] = wordsOf(name);
  return more === undefined && only.length === 1 ? `=${only}` : whole(name);
};
