import { complaintOfAlias, foldAlias, tidyAlias } from './alias.ts';
import { questionsOf, readAssignment, type Question, type Read } from './assignment.ts';
import {
  checksum,
  complaintOfVersion,
  isRecord,
  isTime,
  no,
  readRecord,
  sumFits,
} from './careful.ts';
import type { Raw } from './result-file.ts';

/** What the instructor decided by hand about one answer, with the reason. */
export interface Override extends Question {
  readonly alias: string;
  /** From 0 to 1. */
  readonly credit: number;
  readonly note: string;
  /** Which answer it was decided on: `sumOfAnswer`. */
  readonly answer: string;
  /** When, as ISO 8601 in UTC: of two the later counts. */
  readonly at: string;
}

/** A tolerance as the instructor typed it, for one template. */
export interface TypedTolerance {
  readonly text: string;
  readonly at: string;
}

/** All that an instructor has decided about one assignment, apart from the students’ files. */
export interface Rulings {
  /** By `overrideKey`. */
  readonly overrides: ReadonlyMap<string, Override>;
  /** By template id. */
  readonly tolerances: ReadonlyMap<string, TypedTolerance>;
}

export const NO_RULINGS: Rulings = { overrides: new Map(), tolerances: new Map() };

/** By the link of the assignment. */
export type AllRulings = ReadonlyMap<string, Rulings>;

export const RULINGS_VERSION = 1;
const NAME = 'sitting-by-numbers-rulings';
const LARGEST = 2_000_000;
const MOST_ASSIGNMENTS = 40;
export const LONGEST_NOTE = 500;
export const LONGEST_TOLERANCE = 40;

export const overrideKey = (
  alias: string,
  { template, seed }: Pick<Question, 'template' | 'seed'>,
): string => `${foldAlias(alias)}/${template}/${seed}`;

/** Short text that stands for one answer, so that a ruling can tell when another came in its place. */
export const sumOfAnswer = (raw: Raw | undefined): string =>
  raw === undefined ? '' : checksum(JSON.stringify(raw));

const bodyOf = (all: AllRulings) =>
  [...all]
    .filter(([, { overrides, tolerances }]) => overrides.size + tolerances.size > 0)
    .map(([link, { overrides, tolerances }]) => ({
      link,
      overrides: [...overrides.values()],
      tolerances: [...tolerances].map(([template, typed]) => ({ template, ...typed })),
    }));

/** The text of a file of rulings. `saved` is when, as ISO 8601 in UTC. */
export const writeRulings = (all: AllRulings, saved: string): string => {
  const body = { saved, assignments: bodyOf(all) };
  return `${JSON.stringify({ [NAME]: RULINGS_VERSION, ...body, checksum: checksum(JSON.stringify(body)) }, null, 1)}\n`;
};

/** Whether a text sets out to be a file of rulings: we write their name first. Only what begins so may be as large. */
export const looksLikeRulings = (text: string): boolean =>
  new RegExp(`^\\s{0,9}\\{\\s{0,9}"${NAME}"`).test(text.slice(0, 64));

const isLine = (raw: unknown, longest: number): raw is string =>
  typeof raw === 'string' && raw.length <= longest && !/\p{Cc}/u.test(raw);

const overridesOf = (
  raw: readonly unknown[],
  questions: (alias: string) => readonly Question[],
): Read<Rulings['overrides']> => {
  const overrides = new Map<string, Override>();
  for (const one of raw) {
    if (!isRecord(one)) return no('One of its marks is none.');
    const { alias, template, version, seed, credit, note, answer, at } = one;
    if (typeof alias !== 'string' || complaintOfAlias(alias) !== undefined)
      return no('One of its marks has no alias that can be read.');
    const question = questions(alias).find(
      (it) => it.template === template && it.seed === seed && it.version === version,
    );
    if (!question) return no('One of its marks belongs to no question of its assignment.');
    if (typeof credit !== 'number' || !(credit >= 0 && credit <= 1))
      return no('One of its marks is not between 0 and 1.');
    if (!isLine(note, LONGEST_NOTE))
      return no('One of its notes is nothing that can be typed here.');
    if (typeof answer !== 'string' || !/^([0-9a-f]{8})?$/.test(answer) || !isTime(at))
      return no('One of its marks does not say when, or on which answer, it was set.');
    const key = overrideKey(alias, question);
    if (overrides.has(key)) return no('It sets one mark twice.');
    overrides.set(key, { alias: tidyAlias(alias), ...question, credit, note, answer, at });
  }
  return { ok: true, value: overrides };
};

const tolerancesOf = (
  raw: readonly unknown[],
  templates: readonly string[],
): Read<Rulings['tolerances']> => {
  const tolerances = new Map<string, TypedTolerance>();
  for (const one of raw) {
    if (!isRecord(one)) return no('One of its tolerances is none.');
    const { template, text, at } = one;
    if (typeof template !== 'string' || !templates.includes(template))
      return no('One of its tolerances belongs to no question of its assignment.');
    if (!isLine(text, LONGEST_TOLERANCE) || !isTime(at))
      return no('One of its tolerances is nothing that can be typed here.');
    if (tolerances.has(template)) return no('It sets one tolerance twice.');
    tolerances.set(template, { text, at });
  }
  return { ok: true, value: tolerances };
};

/** A file of rulings, and whether its sum fits. */
export interface RulingsFile {
  readonly all: AllRulings;
  readonly whole: boolean | undefined;
}

/** Reads a file of rulings as carefully as a student’s: refused whole, with the reason, before anything of it counts. */
export const readRulings = (text: string): Read<RulingsFile> => {
  const read = readRecord(text, LARGEST, 'It is larger than two megabytes, and no rulings are.');
  if (!read.ok) return read;
  const { [NAME]: version, saved, assignments } = read.value;
  const old = complaintOfVersion(version, RULINGS_VERSION);
  if (old !== undefined) return no(old);
  if (!isTime(saved)) return no('It does not say when it was saved.');
  if (!Array.isArray(assignments) || assignments.length > MOST_ASSIGNMENTS)
    return no('It holds no rulings that can be read.');
  const all = new Map<string, Rulings>();
  for (const one of assignments as unknown[]) {
    if (!isRecord(one)) return no('One of its assignments is none.');
    const { link, overrides, tolerances } = one;
    if (typeof link !== 'string' || !Array.isArray(overrides) || !Array.isArray(tolerances))
      return no('One of its assignments lacks its link, marks or tolerances.');
    if (all.has(link)) return no('It holds one assignment twice.');
    const assignment = readAssignment(link);
    if (!assignment.ok) return no(`One of its assignments cannot be read. ${assignment.why}`);
    const known = new Map<string, readonly Question[]>();
    const questions = (alias: string): readonly Question[] => {
      const folded = foldAlias(alias);
      const found = known.get(folded) ?? questionsOf(assignment.value, folded);
      known.set(folded, found);
      return found;
    };
    const marks = overridesOf(overrides, questions);
    if (!marks.ok) return marks;
    const widths = tolerancesOf(
      tolerances,
      assignment.value.items.map(({ template }) => template),
    );
    if (!widths.ok) return widths;
    all.set(link, { overrides: marks.value, tolerances: widths.value });
  }
  return { ok: true, value: { all, whole: sumFits(read.value, { saved, assignments }) } };
};

const later = <T extends { readonly at: string }>(
  a: ReadonlyMap<string, T>,
  b: ReadonlyMap<string, T>,
): ReadonlyMap<string, T> => {
  const both = new Map(a);
  for (const [key, one] of b) {
    const other = both.get(key);
    if (!other || Date.parse(one.at) > Date.parse(other.at)) both.set(key, one);
  }
  return both;
};

/** What lies on the desk and what a file brings; of two rulings on one thing the later counts, whichever came first. */
export const mergeRulings = (desk: AllRulings, file: AllRulings): AllRulings => {
  const both = new Map(desk);
  for (const [link, one] of file) {
    const { overrides, tolerances } = both.get(link) ?? NO_RULINGS;
    both.set(link, {
      overrides: later(overrides, one.overrides),
      tolerances: later(tolerances, one.tolerances),
    });
  }
  return both;
};

/** How many marks and tolerances were set, over all assignments. */
export const countRulings = (
  all: AllRulings,
): { readonly marks: number; readonly tolerances: number } => ({
  marks: [...all.values()].reduce((sum, { overrides }) => sum + overrides.size, 0),
  tolerances: [...all.values()].reduce((sum, { tolerances }) => sum + tolerances.size, 0),
});
