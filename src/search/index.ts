import MiniSearch from 'minisearch';
import { conceptsOf, type Concepts } from './concepts.ts';
import { KINDS, type Entry, type Kind, type Source } from './entry.ts';
import { pack, unpack, type Packed, type Shown } from './packed.ts';
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

/** Fields by their place in the options. */
const [TITLE, ABOUT, TEXT] = [1, 3, 4];

/** What an entry shows of itself is found by, and is not sent twice: its title, a definition, a question. */
const shownOf = ({ kind, title, says }: Pick<Entry, 'kind' | 'title' | 'says'>): Shown => {
  const terms = (text: string): string[] => [...new Set(termsOf(text))];
  const said = kind === 'Word' || kind === 'Symbol' ? TEXT : kind === 'Lesson' || kind === 'Table' ? ABOUT : undefined;
  return [[TITLE, terms(title)], ...(said === undefined ? [] : ([[said, terms(says)]] as const))];
}; // prettier-ignore

/** A text's words that tell it from others: what stands everywhere finds nothing. */
const [COMMON, MOST_WORDS] = [30, 26];
/** A page that stands alone is found by all of them. */
const ALONE: readonly Kind[] = ['Checklist', 'Page'];

/** For each source the rarest of its text's words. */
const telling = (sources: readonly Source[]): readonly (readonly string[])[] => {
  const texts = sources.map(({ text = '' }) => [...new Set(termsOf(text))].filter((term) => term.length > 2 && !/\d/.test(term)));
  const places = new Map<string, number>();
  for (const term of texts.flat()) places.set(term, (places.get(term) ?? 0) + 1);
  const rarity = (term: string): number => places.get(term) ?? 0;
  return texts.map((terms, id) =>
    terms
      .filter((term) => rarity(term) <= COMMON)
      .sort((a, b) => rarity(a) - rarity(b))
      .slice(0, ALONE.includes(sources[id]?.kind ?? 'Word') ? Infinity : MOST_WORDS),
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
  const shown = sources.map(shownOf);
  sources.forEach(({ kind, title, names = [], symbols = [], about = '' }, id) => {
    const also = (field: number): readonly string[] =>
      shown[id]?.find(([one]) => one === field)?.[1] ?? [];
    // Whoever is known by one name of a group is known by all of them, misspelt ones too.
    const alike = [title, ...names].flatMap((name) => concepts.of(name));
    const others = [...new Set(alike)].flatMap((group) => groups[group] ?? []);
    words.add({
      id,
      symbol: [...new Set(symbols)].map(symbolTerm).join(' '),
      title: termsIn(title, concepts, kind === 'Word' || kind === 'Plate').join(' '),
      names: [...new Set([...names.flatMap((name) => termsIn(name, concepts, true)), ...others.flatMap((name) => termsIn(name, concepts, false))])].join(' '),
      about: [...new Set([...termsIn(about, concepts, false), ...also(ABOUT)])].join(' '),
      text: [...new Set([...(kind === 'Word' ? [] : (texts[id] ?? [])), ...also(TEXT)])].join(' '),
    }); // prettier-ignore
  });
  return {
    entries: sources.map(({ kind, number = '', title, symbol = '', address, says }) => [KINDS.indexOf(kind), number, title, symbol, address, says]),
    groups,
    words: pack(words.toJSON(), shown),
  }; // prettier-ignore
};

/** Makes a fetched file searchable. */
export const openIndex = ({ entries: rows, groups, words: packed }: IndexFile): Index => {
  const entries = rows.map(([kind, number, title, symbol, address, says]): Entry => ({
    kind: KINDS[kind] ?? 'Page',
    title,
    address,
    says,
    ...(number && { number }),
    ...(symbol && { symbol }),
  }));
  const { words, terms } = unpack(packed, entries.map(shownOf), options.fields);
  return {
    entries,
    concepts: conceptsOf(groups),
    words: MiniSearch.loadJS(words, options),
    knows: (term) => terms.has(term),
  };
};
