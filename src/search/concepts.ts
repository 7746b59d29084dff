import { whole, wordsOf } from './text.ts';

/** Finds which groups of equal names a text speaks of. */
export interface Concepts {
  /** The groups a whole text is a name of. */
  of(text: string): readonly number[];
  /** Where in a row of words a name stands: from which word, how many words, which groups. Longest first, none inside another. */
  in(words: readonly string[]): readonly Found[];
  /** The name a misspelt word is nearest to, written as one word or not; nothing where none is near. */
  near(word: string): string | undefined;
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
  const spelt = new Map(groups.flat().map((name) => [nameKey(name), name]));
  const of = (text: string): readonly number[] => known.get(nameKey(text)) ?? [];
  return {
    of,
    near(word) {
      const most = word.length < 8 ? 1 : 2;
      let best: { name: string; off: number } | undefined;
      for (const [key, name] of spelt) {
        if (Math.abs(key.length - word.length) > most || !key.startsWith(word.charAt(0))) continue;
        const off = apart(key, word);
        if (off <= most && off < (best?.off ?? Infinity)) best = { name, off };
      }
      return best?.name;
    },
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

/** How many letters must be added, left out, put in place of another, or changed about with the next. */
const apart = (a: string, b: string): number => {
  let [before, row]: [number[], number[]] = [[], Array.from({ length: b.length + 1 }, (_, j) => j)];
  for (let i = 1; i <= a.length; i += 1) {
    const next = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      const turned = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      next.push(
        Math.min(
          (row[j] ?? 0) + 1,
          (next[j - 1] ?? 0) + 1,
          (row[j - 1] ?? 0) + same,
          turned ? (before[j - 2] ?? 0) + 1 : Infinity,
        ),
      );
    }
    [before, row] = [row, next];
  }
  return row[b.length] ?? 0;
};

/** A single letter is a symbol and keeps its case. */
const nameKey = (name: string): string => {
  const [only = '', more] = wordsOf(name);
  return more === undefined && only.length === 1 ? `=${only}` : whole(name);
};
