import { complaintOfAlias } from './alias.ts';
import {
  questionsOf,
  readAssignment,
  writeAssignment,
  type Assignment,
  type Question,
  type Read,
} from './assignment.ts';

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
const LARGEST = 512 * 1024;
const DEEPEST = 8;
const LONGEST_RAW = 200;
const MOST_PARTS = 30;

/** A sum over the text that catches an accident, and nothing else: whoever changes a file can change it too. */
export const checksum = (text: string): string => {
  let sum = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) sum = Math.imul(sum ^ text.charCodeAt(i), 0x01000193);
  return (sum >>> 0).toString(16).padStart(8, '0');
};

const body = ({ link, alias, started, saved, answers }: Work) => ({
  link,
  alias,
  started,
  saved,
  answers,
});

/** The text of a result file. */
export const writeWork = (work: Work): string =>
  `${JSON.stringify({ 'sitting-by-numbers-work': WORK_VERSION, ...body(work), checksum: checksum(JSON.stringify(body(work))) }, null, 1)}\n`;

const no = (why: string): { readonly ok: false; readonly why: string } => ({ ok: false, why });

/** How deep braces and brackets go, outside texts; found without building anything. */
const depthOf = (text: string): number => {
  let [depth, deepest, inText] = [0, 0, false];
  for (let i = 0; i < text.length; i++) {
    const character = text[i];
    if (inText) {
      if (character === '\\') i++;
      else if (character === '"') inText = false;
    } else if (character === '"') inText = true;
    else if (character === '{' || character === '[') deepest = Math.max(deepest, ++depth);
    else if (character === '}' || character === ']') depth--;
  }
  return deepest;
};

const isRecord = (raw: unknown): raw is Record<string, unknown> =>
  typeof raw === 'object' && raw !== null && !Array.isArray(raw);
const isCount = (raw: unknown, most: number): raw is number =>
  Number.isInteger(raw) && (raw as number) >= 0 && (raw as number) <= most;
const isTime = (raw: unknown): raw is string =>
  typeof raw === 'string' &&
  /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d{3})?Z$/.test(raw) &&
  !Number.isNaN(Date.parse(raw));
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

/**
 * Reads a result file, whoever wrote it. It is refused whole, with the reason, before anything of it is used; marks that
 * stand in it are not so much as looked at.
 */
export const readWork = (text: string): Read<Work> => {
  if (text.length > LARGEST)
    return no('It is larger than half a megabyte, and no work of ours is.');
  if (depthOf(text) > DEEPEST) return no('It is nested deeper than any work of ours.');
  let raw: unknown;
  try {
    raw = JSON.parse(text);
  } catch {
    return no('It is no JSON, or was cut off. Ask for it again.');
  }
  if (!isRecord(raw) || !('sitting-by-numbers-work' in raw))
    return no('It is no work saved from this site.');
  const version = raw['sitting-by-numbers-work'];
  if (version !== WORK_VERSION)
    return no(
      typeof version === 'number' && version > WORK_VERSION
        ? 'It was saved by a newer edition of this site. Read this page anew.'
        : `It has the version “${String(version).slice(0, 20)}”; this site reads ${WORK_VERSION}.`,
    );
  const { link, alias, started, saved, answers } = raw;
  if (typeof link !== 'string') return no('It does not say which assignment it belongs to.');
  const assignment = readAssignment(link);
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
      alias,
      started,
      saved,
      answers: read,
    },
  };
};

/** Whether a file’s sum fits what stands in it; undefined where it has none. A word about accidents, not about honesty. */
export const isWhole = (text: string): boolean | undefined => {
  const raw: unknown = JSON.parse(text);
  if (!isRecord(raw) || typeof raw['checksum'] !== 'string') return undefined;
  const { link, alias, started, saved, answers } = raw;
  return raw['checksum'] === checksum(JSON.stringify({ link, alias, started, saved, answers }));
};
