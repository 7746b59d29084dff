import MiniSearch from 'minisearch';
import { conceptsOf, type Concepts } from './concepts.ts';
import { KINDS, type Entry, type Source } from './entry.ts';
import { pack, unpack, type Packed } from './packed.ts';
import { fold, isStop, termsOf, wordsOf } from './text.ts';

/** The file a page fetches: entries as short rows, groups of equal names, and the words with where they stand. */
export interface IndexFile {
  readonly entries: readonly Row[];
  readonly groups: readonly (readonly string[])[];
  readonly words: Packed;
}
type Row = readonly [kind: number, number: string, title: string, symbol: string, address: string, says: string]; // prettier-ignore

/** What a page searches in. */
export interface Index {
  readonly entries: readonly Entry[];
  readonly concepts: Concepts;
  readonly words: MiniSearch;
  /** Whether anything here has this word. */
  readonly knows: (term: string) => boolean;
}

/** Names are terms of their own, and so are symbols: no ending, no misspelling leads to them. */
export const conceptTerm = (group: number): string => `#${group}`;
export const symbolTerm = (symbol: string): string => `=${symbol.replaceAll('_', '')}`;

const options = {
  fields: ['symbol', 'title', 'names', 'about', 'text'],
  // What is handed over is terms already, one space between.
  tokenize: (text: string): string[] => (text === '' ? [] : text.split(' ')),
  processTerm: (term: string): string => term,
};

/** The terms of a text: its words, two neighbours as one (catch light, catchlight), and the names it speaks of. */
const termsIn = (text: string, concepts: Concepts, pairs: boolean): string[] => {
  const words = wordsOf(text);
  const kept = words.filter((word) => !isStop(word)).map(fold);
  const folded = words.map(fold);
  const joined = pairs ? folded.slice(1).map((word, i) => (folded[i] ?? '') + word) : [];
  const groups = concepts.in(words).flatMap((found) => found.groups);
  return [...new Set([...kept, ...joined, ...groups.map(conceptTerm)])];
};

/** A text's words that tell it from others: what stands everywhere finds nothing. */
const [COMMON, MOST_WORDS] = [30, 20];

/** For each source the rarest of its text's words. */
const telling = (sources: readonly Source[]): readonly (readonly string[])[] => {
  const texts = sources.map(({ text = '' }) => [...new Set(termsOf(text))].filter((term) => term.length > 2 && !/\d/.test(term)));
  const places = new Map<string, number>();
  for (const term of texts.flat()) places.set(term, (places.get(term) ?? 0) + 1);
  const rarity = (term: string): number => places.get(term) ?? 0;
  return texts.map((terms) =>
    terms
      .filter((term) => rarity(term) <= COMMON)
      .sort((a, b) => rarity(a) - rarity(b))
      .slice(0, MOST_WORDS),
  );
}; // prettier-ignore

/** Builds the file from everything there is to find. Build time and tests only. */
export const buildIndex = (
  sources: readonly Source[],
  groups: readonly (readonly string[])[],
): IndexFile => {
  const concepts = conceptsOf(groups);
  const words = new MiniSearch(options);
  const texts = telling(sources);
  sources.forEach(({ kind, title, names = [], symbols = [], about = '' }, id) => {
    // Whoever is known by one name of a group is known by all of them, misspelt ones too.
    const alike = [title, ...names].flatMap((name) => concepts.of(name));
    const others = [...new Set(alike)].flatMap((group) => groups[group] ?? []);
    words.add({
      id,
      symbol: [...new Set(symbols)].map(symbolTerm).join(' '),
      title: termsIn(title, concepts, kind === 'Word' || kind === 'Plate').join(' '),
      names: [...new Set([...names.flatMap((name) => termsIn(name, concepts, true)), ...others.flatMap((name) => termsIn(name, concepts, false))])].join(' '),
      about: termsIn(about, concepts, false).join(' '),
      text: (texts[id] ?? []).join(' '),
    }); // prettier-ignore
  });
  return {
    entries: sources.map(({ kind, number = '', title, symbol = '', address, says }) => [KINDS.indexOf(kind), number, title, symbol, address, says]),
    groups,
    words: pack(words.toJSON()),
  }; // prettier-ignore
};

/** Makes a fetched file searchable. */
export const openIndex = ({ entries, groups, words }: IndexFile): Index => {
  const terms = new Set(words.split('\n').map((line) => line.slice(0, line.indexOf(' '))));
  return {
    entries: entries.map(([kind, number, title, symbol, address, says]) => ({
      kind: KINDS[kind] ?? 'Page',
      title,
      address,
      says,
      ...(number && { number }),
      ...(symbol && { symbol }),
    })),
    concepts: conceptsOf(groups),
    words: MiniSearch.loadJS(unpack(words, entries.length, options.fields), options),
    knows: (term) => terms.has(term),
  };
};
