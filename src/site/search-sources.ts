import { getCollection, render, type CollectionEntry } from 'astro:content';
import { spelt } from '../formula/notation/spelt.ts';
import type { Formula } from '../formula/record.ts';
import type { Source } from '../search/entry.ts';
import { groups as usual } from '../search/groups.ts';
import { whole } from '../search/text.ts';
import { checklists } from './checklists.ts';
import { glossary } from './glossary.ts';
import { curriculum } from './lessons.ts';
import { plates } from './plates.ts';
import { proseOf, sectionsOf } from './prose-of.ts';

/** What only a plate's own parts can say: its sentence at its start, and a symbol as letters. */
export interface Says {
  sentence(formula: Formula): string;
  /** The letters of a symbol, its index after a low line; several where there are several. */
  letters(tex: string): readonly string[];
}

const cut = (text: string, most: number): string =>
  text.length <= most ? text : `${text.slice(0, text.lastIndexOf(' ', most))} …`;

/** A description's first part that can stand by itself, where all of it is too long. */
const clause = (text: string, most: number): string => {
  if (text.length <= most) return text;
  const end = text.slice(0, most).search(/[;:](?=[^;:]*$)/);
  return end > 15 ? text.slice(0, end) : cut(text, most);
};

/** A description as a sentence. */
const sentence = (text: string): string =>
  text && text.charAt(0).toUpperCase() + text.slice(1) + (/[.…]$/.test(text) ? '' : '.');

/** What a part of a lesson sets right, where it does. */
const claimIn = (part: string): string => /<Misconception claim="([^"]*)"/.exec(part)?.[1] ?? '';

const lessonSources = async (): Promise<Source[]> => {
  const sources: Source[] = [];
  for (const unit of await curriculum()) {
    const { title, question, blurb } = unit.entry.data;
    sources.push({ kind: 'Page', title, address: unit.address, says: question, text: blurb });
    for (const { entry, number, address } of unit.lessons) {
      const { data, body = '' } = entry;
      sources.push({ kind: 'Lesson', number, title: data.title, address, says: data.question, about: data.question, text: data.outcomes.join(' ') });
      const { headings } = await render(entry);
      const slugs = headings.filter(({ depth }) => depth === 2);
      for (const { heading, text, part } of sectionsOf(body)) {
        const slug = slugs.find((one) => one.text === heading)?.slug;
        // Links to other lessons name what they are about, and would be found for all of it.
        if (slug === undefined || heading === 'Links on') continue;
        sources.push({ kind: 'Part of a lesson', number, title: heading, address: `${address}#${slug}`, says: claimIn(part), about: data.title, text });
      }
    }
  }
  return sources;
}; // prettier-ignore

/** Every input and result of a formula that has a symbol, and what is nameless in it. */
const symbolsIn = ({ inputs, outputs, symbols = [] }: Formula) => [
  ...Object.values(outputs).map((one) => ({ ...one, name: spelt(one), means: one.means ?? '' })),
  ...Object.values(inputs).map((one) => ({ ...one, name: spelt(one) })),
  ...symbols.map(({ tex, means }) => ({ tex, name: '', means })),
];

const plateSources = async (says: Says): Promise<Source[]> => {
  const all = await plates();
  const symbols = new Map<string, Source & { plates: string[] }>();
  const sources = all.map(({ formula, number, address, lesson }): Source => {
    const about = symbolsIn(formula).map(({ name }) => name);
    for (const { tex, name, means } of symbolsIn(formula)) {
      if (!tex) continue;
      const letters = says.letters(tex);
      const title = name || means.replace(/[.:;,].*$/, '');
      const key = `${letters.join()} ${title}`;
      const known = symbols.get(key);
      if (known) known.plates.push(number);
      else if (letters[0] !== undefined)
        symbols.set(key, { kind: 'Symbol', title, symbol: letters[0], symbols: letters, address, says: name ? means : '', plates: [number] });
    }
    return { kind: 'Plate', number, title: formula.title, address, says: says.sentence(formula), names: [formula.id.replaceAll('-', ' ')], about: [...about, lesson.entry.data.question].join('. '), text: `${formula.spoken} ${formula.model}` };
  });
  return [
    ...sources,
    ...[...symbols.values()].map(({ plates: numbers, ...source }) => {
      const shown = [...new Set(numbers)].slice(0, 4);
      const where = `In plate${shown.length > 1 ? 's' : ''} ${shown.join(', ')}${numbers.length > 4 ? ' and more' : ''}.`;
      return { ...source, says: `${sentence(clause(source.says, 72))} ${where}`.trim() };
    }),
  ];
}; // prettier-ignore

const wordSources = async (says: Says): Promise<Source[]> =>
  (await glossary()).map(({ id, data, body = '' }) => ({
    kind: 'Word',
    title: data.term,
    address: `/glossary/#${id}`,
    says: proseOf(body),
    names: data.also,
    symbols: data.symbol ? says.letters(data.symbol) : [],
    text: proseOf(body),
  }));

const listSources = async (): Promise<Source[]> =>
  (await checklists()).map(({ entry: { data }, address }) => ({
    kind: 'Checklist',
    title: data.title,
    address,
    says: `For ${data.for}.`,
    names: ['checklist'],
    text: data.items.map(({ text }) => text).join(' '),
  }));

/** A table of the quick tables, as far as a search needs it. */
interface TableEntry {
  readonly id: string;
  readonly data: { readonly title: string; readonly question: string };
}

/** The quick tables by their titles. */
export const tables = async (): Promise<
  readonly { readonly title: string; readonly question: string; readonly address: `/${string}` }[]
> => {
  const entries = (await getCollection('tables' as 'pages')) as unknown as
    readonly TableEntry[] | undefined;
  return (entries ?? []).map(({ id, data: { title, question } }) => ({
    title,
    question,
    address: `/tables/${id}/`,
  }));
};

const tableSources = async (): Promise<Source[]> =>
  (await tables()).map(({ title, question, address }) => ({
    kind: 'Table',
    title,
    address,
    says: question,
    about: question,
  }));

/** Pages that no collection holds. */
const OTHERS: readonly Source[] = [
  { kind: 'Page', title: 'All plates', address: '/plates/', says: 'Every calculator of the lessons, to look up by itself.', names: ['calculators', 'formulas'] },
  { kind: 'Page', title: 'Glossary', address: '/glossary/', says: 'The words and symbols of this site, in our own words.', names: ['words', 'symbols', 'definitions'] },
  { kind: 'Page', title: 'Check values', address: '/check-values/', says: 'Published values beside ours, with their sources.', names: ['published values', 'sources'] },
  { kind: 'Page', title: 'The day’s timetable', address: '/day-plan/', says: 'Slots, naps and changes of the set, laid out for a day of sittings.', names: ['day plan', 'timetable', 'schedule', 'nap'] },
  { kind: 'Page', title: 'Practise', address: '/practise/', says: 'Exercises with numbers of your own, marked at once.', names: ['exercises', 'practice', 'drill', 'quiz'] },
  { kind: 'Page', title: 'For instructors', address: '/assign/', says: 'Exercises for a class by link, on paper or for a course system.', names: ['assign', 'teachers', 'exercises', 'homework', 'worksheets'] },
  { kind: 'Page', title: 'Set a plate by link', address: '/assign/plates/', says: 'An address that carries a plate’s numbers, and the names in it.', names: ['teachers', 'names in a link'] },
  { kind: 'Page', title: 'Quick questions with answers', address: '/assign/questions/', says: 'All quick questions of the lessons with their answers, for instructors.', names: ['teachers', 'answers'] },
  { kind: 'Page', title: 'Your work', address: '/work/', says: 'Exercises an instructor has set: work on them, save the file, go on from it.', names: ['assignment', 'homework', 'hand in'] },
  { kind: 'Page', title: 'Marking desk', address: '/marking/', says: 'Marks a class’s files again from their answers.', names: ['marks', 'grades', 'grading', 'results'] },
  { kind: 'Page', title: 'All checklists', address: '/checklists/', says: 'Lists to tick on a phone or on paper.', names: ['checklists'] },
]; // prettier-ignore

const pageSources = async (): Promise<Source[]> =>
  (await getCollection('pages')).flatMap((entry: CollectionEntry<'pages'>): Source[] => {
    const { id, data, body = '' } = entry;
    const sections = sectionsOf(body);
    return [
      { kind: 'Page', title: data.title, address: `/${id}/`, says: data.description, text: sections.map(({ heading, text }) => `${heading} ${text}`).join(' ') },
    ];
  }); // prettier-ignore

/** Everything a reader can look for. */
export const searchSources = async (says: Says): Promise<Source[]> => [
  ...(await wordSources(says)),
  ...(await plateSources(says)),
  ...(await tableSources()),
  ...(await lessonSources()),
  ...(await listSources()),
  ...(await pageSources()),
  ...OTHERS,
];

/** The trade's words for one thing, with the glossary's other names and symbols among them. */
export const searchGroups = async (says: Says): Promise<string[][]> => {
  const groups = usual.map((names) => [...names]);
  for (const { data } of await glossary()) {
    const names = [data.term, ...data.also, ...(data.symbol ? says.letters(data.symbol) : [])];
    if (names.length < 2) continue;
    const there = groups.filter((group) => group.some((name) => whole(name) === whole(data.term)));
    if (there.length === 0) groups.push(names);
    else there.forEach((group) => group.push(...names));
  }
  return groups.map((group) => [...new Set(group)]);
};
