import { foldAlias } from './alias.ts';
import { stream } from './random.ts';

/** So many variants of one template, at the version it had when it was picked. */
export interface Item {
  readonly template: string;
  readonly version: number;
  readonly count: number;
}

/** What an instructor sets. All of it is in the link; nothing of it is kept anywhere else. */
export interface Assignment {
  readonly title: string;
  /** In the instructor’s own words: “Friday, before the set is built”. */
  readonly due: string;
  /** The same numbers for all, or each alias its own. */
  readonly seeds: 'same' | 'alias';
  /** Hints cost nothing, a tenth of the mark each, or are not there. */
  readonly hints: 'free' | 'tenth' | 'none';
  /** A number that makes two assignments of the same templates differ. */
  readonly draw: number;
  readonly items: readonly Item[];
}

/** One question of one student’s copy. */
export interface Question {
  readonly template: string;
  readonly version: number;
  readonly seed: number;
}

/** Every seed that is handed out was tried when the site was built. */
export const SEEDS = 1000;
const MOST_ITEMS = 60;
const MOST_OF_ONE = 20;
const LONGEST_TEXT = 120;
const LONGEST_LINK = 6000;

/**
 * The assignment as the query of a link, always in the same order, so that it can stand for the assignment itself.
 * @example writeAssignment(…) // 'title=Light&due=Friday&seeds=alias&hints=none&draw=7&ask=walk-back.1.2,how-soft.1.1'
 */
export const writeAssignment = ({ title, due, seeds, hints, draw, items }: Assignment): string =>
  new URLSearchParams({
    title,
    due,
    seeds,
    hints,
    draw: String(draw),
    ask: items.map(({ template, version, count }) => `${template}.${version}.${count}`).join(','),
  })
    .toString()
    .replaceAll('%2C', ',');

/** What a link came to: the assignment, or a sentence about what is wrong with it. */
export type Read<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly why: string };

const no = (why: string): { readonly ok: false; readonly why: string } => ({ ok: false, why });

/**
 * Reads an assignment from a link, whoever wrote it.
 * @param query with or without its question mark
 */
export const readAssignment = (query: string): Read<Assignment> => {
  if (query.length > LONGEST_LINK) return no('This link is too long to be an assignment of ours.');
  const given = new URLSearchParams(query);
  const of = (name: string): string => given.get(name) ?? '';
  if (of('ask') === '') return no('This link holds no questions. Ask for the whole link.');
  for (const name of ['title', 'due', 'seeds', 'hints', 'draw', 'ask'])
    if (given.getAll(name).length > 1) return no(`This link gives “${name}” more than once.`);
  const seeds = of('seeds');
  if (seeds !== 'same' && seeds !== 'alias')
    return no('This link does not say whose numbers are drawn: seeds is “same” or “alias”.');
  const hints = of('hints');
  if (hints !== 'free' && hints !== 'tenth' && hints !== 'none')
    return no('This link does not say what hints cost: hints is “free”, “tenth” or “none”.');
  const draw = of('draw');
  if (!/^\d{1,9}$/.test(draw)) return no('This link’s draw is not a whole number.');
  const items: Item[] = [];
  for (const part of of('ask').split(',')) {
    const [, template = '', version = '', count = ''] =
      /^([a-z0-9]+(?:-[a-z0-9]+)*)\.(\d{1,3})\.(\d{1,2})$/.exec(part) ?? [];
    if (template === '') return no(`“${part.slice(0, 40)}” names no question.`);
    if (items.some((item) => item.template === template))
      return no(`This link asks for “${template}” twice.`);
    if (Number(count) < 1 || Number(count) > MOST_OF_ONE)
      return no(
        `From 1 to ${MOST_OF_ONE} variants of one question can be set; here it is ${count}.`,
      );
    items.push({ template, version: Number(version), count: Number(count) });
  }
  if (items.length > MOST_ITEMS) return no(`At most ${MOST_ITEMS} questions can be set at once.`);
  const [title, due] = [of('title'), of('due')].map((text) =>
    text
      .replaceAll(/[\p{Cc}\p{Cf}]/gu, ' ')
      .trim()
      .slice(0, LONGEST_TEXT),
  );
  return {
    ok: true,
    value: { title: title || 'Exercises', due: due ?? '', seeds, hints, draw: Number(draw), items },
  };
};

// A desk asks for the id of one assignment once for each of a class.
const ids = new WeakMap<Assignment, string>();

/** Short text that stands for an assignment: the same link gives the same. */
export const idOfAssignment = (assignment: Assignment): string => {
  const known = ids.get(assignment);
  if (known !== undefined) return known;
  const next = stream(writeAssignment(assignment));
  const id = Array.from({ length: 2 }, () => next(0x7fffffff).toString(36).padStart(6, '0')).join(
    '',
  );
  ids.set(assignment, id);
  return id;
};

/**
 * The questions of one student’s copy, in order. The alias alone decides the seeds, with the assignment; of one template
 * no seed comes twice.
 */
export const questionsOf = (assignment: Assignment, alias: string): readonly Question[] => {
  const who = assignment.seeds === 'same' ? '' : foldAlias(alias);
  const stem = `${idOfAssignment(assignment)}/${who}`;
  return assignment.items.flatMap(({ template, version, count }) => {
    const next = stream(`${stem}/${template}`);
    const drawn = new Set<number>();
    while (drawn.size < count) drawn.add(next(SEEDS));
    return [...drawn].map((seed) => ({ template, version, seed }));
  });
};
