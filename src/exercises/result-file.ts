import { complaintOfAlias, tidyAlias } from './alias.ts';
import {
  questionsOf,
  readAssignment,
  writeAssignment,
  type Assignment,
  type Question,
  type Read,
} from './assignment.ts';
import {
  checksum,
  complaintOfVersion,
  isCount,
  isRecord,
  isTime,
  no,
  readRecord,
  sumFits,
} from './careful.ts';

/** What stands in a field: one text, the places ticked, or a text for each setting or reading. */
export type Raw = string | readonly number[] | Readonly<Record<string, string>>;

/** One answer as it was given, never as it was marked. */
export interface Answer extends Question {
  readonly raw: Raw;
  readonly hints: number;
  /** When it was last changed, as ISO 8601 in UTC. */
  readonly at: string;
}

/** A student’s work, as a file holds it. */
export interface Work {
  readonly assignment: Assignment;
  /** The assignment as its link’s query, written as we write it: what was added to a link on its way is not in it. */
  readonly link: string;
  readonly alias: string;
  readonly started: string;
  readonly saved: string;
  readonly answers: readonly Answer[];
}

export const WORK_VERSION = 1;
const NAME = 'sitting-by-numbers-work';
const LARGEST = 512 * 1024;
const LONGEST_RAW = 200;
const MOST_PARTS = 30;

const body = ({ link, alias, started, saved, answers }: Partial<Record<keyof Work, unknown>>) => ({
  link,
  alias,
  started,
  saved,
  answers,
});

/** The text of a result file: what `shared/schema/work.schema.json` describes. */
export const writeWork = (work: Work): string =>
  `${JSON.stringify({ [NAME]: WORK_VERSION, ...body(work), checksum: checksum(JSON.stringify(body(work))) }, null, 1)}\n`;

const isText = (raw: unknown): raw is string =>
  typeof raw === 'string' && raw.length <= LONGEST_RAW;
const isRaw = (raw: unknown): raw is Raw =>
  isText(raw) ||
  (Array.isArray(raw) &&
    raw.length <= MOST_PARTS &&
    raw.every((place) => isCount(place, MOST_PARTS))) ||
  (isRecord(raw) &&
    Object.keys(raw).length <= MOST_PARTS &&
    Object.entries(raw).every(([name, text]) => /^[a-z0-9-]{1,64}$/.test(name) && isText(text)));

/** A result file’s text as an object, before anything in it is believed. */
export const readWorkRecord = (text: string): Read<Readonly<Record<string, unknown>>> =>
  readRecord(text, LARGEST, 'It is larger than half a megabyte, and no work of ours is.');

/**
 * Reads a result file, whoever wrote it. It is refused whole, with the reason, before anything of it is used; marks that
 * stand in it are not so much as looked at.
 */
export const readWork = (text: string): Read<Work> => {
  const read = readWorkRecord(text);
  return read.ok ? workOf(read.value) : read;
};

let last: { readonly link: string; readonly read: Read<Assignment> } | undefined;

/** A class comes with one link many times over; it is read once. */
const assignmentOf = (link: string): Read<Assignment> => {
  if (last?.link !== link) last = { link, read: readAssignment(link) };
  return last.read;
};

/** The same of an object that was read from a file. */
export const workOf = (raw: Readonly<Record<string, unknown>>): Read<Work> => {
  if (!Object.hasOwn(raw, NAME)) return no('It is no work saved from this site.');
  const old = complaintOfVersion(raw[NAME], WORK_VERSION);
  if (old !== undefined) return no(old);
  const { link, alias, started, saved, answers } = raw;
  if (typeof link !== 'string') return no('It does not say which assignment it belongs to.');
  const assignment = assignmentOf(link);
  if (!assignment.ok) return no(`Its assignment cannot be read. ${assignment.why}`);
  if (typeof alias !== 'string' || complaintOfAlias(alias) !== undefined)
    return no('It has no alias that can be read.');
  if (!isTime(started) || !isTime(saved)) return no('It does not say when it was begun and saved.');
  if (!Array.isArray(answers)) return no('It holds no answers.');
  const asked = questionsOf(assignment.value, alias);
  if (answers.length > asked.length)
    return no('It has more answers than the assignment has questions.');
  const read: Answer[] = [];
  for (const one of answers as unknown[]) {
    if (!isRecord(one)) return no('One of its answers is none.');
    const { template, version: of, seed, raw: typed, hints, at } = one;
    const question = asked.find(
      (it) => it.template === template && it.seed === seed && it.version === of,
    );
    if (!question)
      return no('One of its answers belongs to no question of this assignment and alias.');
    if (read.some((it) => it.template === template && it.seed === seed))
      return no('It answers one question twice.');
    if (!isRaw(typed))
      return no(`Its answer to “${question.template}” is nothing that can be typed here.`);
    if (!isCount(hints, 20) || !isTime(at))
      return no(`Its answer to “${question.template}” lacks hints or time.`);
    read.push({ ...question, raw: typed, hints, at });
  }
  return {
    ok: true,
    value: {
      assignment: assignment.value,
      link: writeAssignment(assignment.value),
      alias: tidyAlias(alias),
      started,
      saved,
      answers: read,
    },
  };
};

/** Whether the sum of a file that was read fits what stands in it; undefined where it has none. */
export const isWholeWork = (raw: Readonly<Record<string, unknown>>): boolean | undefined =>
  sumFits(raw, body(raw));

/** The same of a file’s text. */
export const isWhole = (text: string): boolean | undefined => {
  const read = readWorkRecord(text);
  return read.ok ? isWholeWork(read.value) : undefined;
};
