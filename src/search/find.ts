import type { SearchResult } from 'minisearch';
import type { Entry, Kind } from './entry.ts';
import { conceptTerm, symbolTerm, type Index } from './index.ts';
import { partQuery } from './quantities.ts';
import { fold, isStop, termsOf, tidy, whole, wordsOf } from './text.ts';

export interface Hit {
  readonly entry: Entry;
  readonly score: number;
}

/** A thing's own page before the places that speak of it. */
const WEIGHT: Readonly<Record<Kind, number>> = {
  Symbol: 1,
  Word: 1.25,
  Plate: 1.2,
  Table: 1.15,
  Lesson: 1,
  Checklist: 1,
  Page: 0.9,
  'Part of a lesson': 0.6,
};

const MOST = 24;
/** Of a question; nobody asks for more, and each costs its time. */
const [MOST_WORDS, LONGEST_WORD] = [12, 24];
const GREEK =
  'alpha α beta β gamma γ delta δ epsilon ε eta η theta θ lambda λ mu μ nu ν rho ρ sigma σ tau τ phi φ psi ψ omega Ω'.split(
    ' ',
  );

/** One thing asked for, and the terms that would answer it, each with its weight. */
interface Asked {
  readonly terms: Readonly<Record<string, number>>;
  /** How much of the question it is. */
  readonly share: number;
}

const toggled = (letters: string): string =>
  letters === letters.toLowerCase() ? letters.toUpperCase() : letters.toLowerCase();

/** A word as the symbol it may be: its own case first, the other case after. */
const asSymbol = (word: string): Record<string, number> => {
  const greek = GREEK[GREEK.indexOf(word.toLowerCase()) + 1];
  if (greek && word.length > 1 && GREEK.includes(word.toLowerCase()))
    return { [symbolTerm(greek)]: 3 };
  return word.length > 4 ? {} : { [symbolTerm(word)]: 3, [symbolTerm(toggled(word))]: 1.2 };
};

/** A word nobody uses here, with two of its letters changed about, if that makes one that is used: depht, feild. */
const righted = (word: string, { knows }: Index): string => {
  if (word.length < 4 || knows(fold(word))) return word;
  for (let i = 1; i < word.length; i += 1) {
    const turned = word.slice(0, i - 1) + word.charAt(i) + word.charAt(i - 1) + word.slice(i + 1);
    if (knows(fold(turned))) return turned;
  }
  return word;
};

/** The words of a question as they are looked for. */
const askedWords = (text: string, index: Index): string[] =>
  wordsOf(text.replace(/(\p{L})_(?=[\p{L}\p{N}])/gu, '$1'))
    .slice(0, MOST_WORDS)
    .flatMap((typed) => {
      const word = righted(typed.slice(0, LONGEST_WORD), index);
      // A word nobody uses may be a name misspelt, or written as one: shuterspeed.
      const name =
        word.length < 5 || index.knows(fold(word)) ? undefined : index.concepts.near(word);
      return name === undefined ? [word] : wordsOf(name);
    });

/** Reads a question into what it asks for. */
const askedIn = (words: readonly string[], { concepts }: Index): Asked[] => {
  const found = concepts.in(words);
  const plain = words.every(isStop);
  const asked = found.map(({ at, words: count, groups }): Asked => {
    const own = words.slice(at, at + count);
    const terms: Record<string, number> = {};
    for (const group of groups) terms[conceptTerm(group)] = 2;
    for (const word of own) if (!isStop(word)) terms[fold(word)] = 0.35;
    if (count > 1) terms[own.map(fold).join('')] = 0.6;
    return { terms: { ...terms, ...(count === 1 && asSymbol(own[0] ?? '')) }, share: count > 1 ? 1.5 : 1 };
  }); // prettier-ignore
  const taken = new Set(found.flatMap(({ at, words: n }) => Array.from({ length: n }, (_, i) => at + i))); // prettier-ignore
  words.forEach((word, at) => {
    if (taken.has(at)) return;
    // A letter is a symbol, and “a” is one only where nothing else was asked.
    const symbol = words.length < 4 || word.length > 1 ? asSymbol(word) : {};
    if (word.length === 1 && !/\p{N}/u.test(word)) {
      if (plain || !isStop(word)) asked.push({ terms: symbol, share: 1 });
      return;
    }
    if (isStop(word) && !plain) return;
    const next = words[at + 1];
    const pair = next === undefined ? {} : { [fold(word) + fold(next)]: 1.2 };
    const number = /^\p{N}/u.test(word);
    asked.push({ terms: { ...symbol, ...pair, [fold(word)]: 1 }, share: number ? 0.4 : 1 });
  });
  return asked;
};

/** A phrase without the words that say nothing: “The inverse square law” is “inverse square law”. */
const plainly = (text: string): string => termsOf(text).join(' ');

/** How well a result's words fit a term that was asked: 1 the word itself, less where it only begins so or is like it. */
const fit = (asked: string, terms: readonly string[], known: ReadonlySet<string>): number =>
  terms.includes(asked)
    ? 1
    : known.has(asked)
      ? 0.25
      : terms.some((term) => term.startsWith(asked))
        ? 0.8
        : 0.6;

/**
 * The entries that answer a question, best first.
 *
 * Model: every word may be met as it is, by its beginning or nearly; names of one thing are one term. A result counts
 * for its words' rarity and field, for how much of the question it meets, for its kind, and more where its whole title
 * is what was asked. Quantities are read elsewhere and only lead here where nothing else was typed.
 * @example find(index, 'f stop')[0]?.entry.title // 'f-number'
 */
export const find = (index: Index, typed: string): Hit[] => {
  const parts = partQuery(tidy(typed));
  const words = askedWords(parts.words === '' ? parts.names : parts.words, index);
  const text = words.join(' ');
  const asked = askedIn(words, index);
  const boosts: Record<string, number> = Object.create(null) as Record<string, number>;
  for (const { terms } of asked)
    for (const [term, boost] of Object.entries(terms))
      boosts[term] = Math.max(boosts[term] ?? 0, boost);
  const all = Object.keys(boosts);
  if (all.length === 0) return [];
  const marked = (term: string): boolean => /^[#=]/.test(term);
  const last = fold(words.at(-1) ?? '');
  const results = index.words.search(all.join(' '), {
    combineWith: 'OR',
    prefix: (term) => !marked(term) && (term === last ? term.length > 1 : term.length > 3),
    fuzzy: (term) => (marked(term) || term.length < 4 || /\d/.test(term) ? 0 : term.length < 7 ? 1 : 2), // prettier-ignore
    maxFuzzy: 2,
    weights: { prefix: 0.4, fuzzy: 0.25 },
    boost: { symbol: 4, title: 5, names: 3, about: 0.9, text: 0.5 },
    boostTerm: (term) => boosts[term] ?? 1,
  });
  const known = new Set(results.flatMap(({ terms }) => terms));
  const sum = asked.reduce((total, { share }) => total + share, 0);
  const wanted = whole(text);
  const asking = plainly(text);
  const concepts = index.concepts.of(text);

  const covered = ({ terms, queryTerms }: SearchResult): number =>
    asked.reduce((total, one) => {
      const fits = queryTerms
        .filter((term) => one.terms[term] !== undefined)
        .map((term) => fit(term, terms, known));
      return total + one.share * Math.max(0, ...fits);
    }, 0) / sum;

  const hits = results.flatMap((result): Hit[] => {
    const entry = index.entries[result.id as number];
    if (!entry) return [];
    const share = covered(result);
    const exact =
      whole(entry.title) === wanted || (asking !== '' && plainly(entry.title) === asking) || (entry.symbol !== undefined && symbolTerm(entry.symbol) === symbolTerm(text))
        ? 3
        : index.concepts.of(entry.title).some((group) => concepts.includes(group))
          ? 2.2
          : 1; // prettier-ignore
    return [{ entry, score: result.score * (0.1 + share * share) * WEIGHT[entry.kind] * exact }];
  });
  hits.sort((a, b) => b.score - a.score);
  const best = hits[0]?.score ?? 0;
  const parted = new Map<string, number>();
  return hits
    .filter(({ score }) => score > best * 0.06)
    .filter(({ entry: { kind, address } }) => {
      if (kind !== 'Part of a lesson') return true;
      // Two parts of one lesson are enough.
      const lesson = address.replace(/#.*/, '');
      parted.set(lesson, (parted.get(lesson) ?? 0) + 1);
      return (parted.get(lesson) ?? 0) <= 2;
    })
    .slice(0, MOST);
};

/** Titles that are nearest to a question nothing answers. */
export const nearest = (index: Index, typed: string): string[] => {
  const asked = askedWords(partQuery(tidy(typed)).words, index).filter((word) => word.length > 2 && !isStop(word));
  const titles = index.entries.filter(({ kind }) => kind === 'Word' || kind === 'Plate');
  const like = (term: string, fuzzy: number): string[] =>
    index.words
      .search(term, { fields: ['title', 'names'], prefix: true, fuzzy, maxFuzzy: 4 })
      .slice(0, 3)
      .flatMap(({ id }) => titles.find((entry) => entry === index.entries[id as number])?.title ?? []);
  const near = asked.map(fold).flatMap((term) => {
    const found = like(term, 0.4);
    return found.length > 0 ? found : like(term.slice(0, 4), 0);
  });
  return [...new Set(near)].slice(0, 4);
}; // prettier-ignore
