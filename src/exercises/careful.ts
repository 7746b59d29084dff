import type { Read } from './assignment.ts';

/** The careful hand every file is read with, whoever wrote it. */

const DEEPEST = 8;

/** A sum over the text that catches an accident, and nothing else: whoever changes a file can change it too. */
export const checksum = (text: string): string => {
  let sum = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) sum = Math.imul(sum ^ text.charCodeAt(i), 0x01000193);
  return (sum >>> 0).toString(16).padStart(8, '0');
};

export const no = (why: string): { readonly ok: false; readonly why: string } => ({
  ok: false,
  why,
});

const QUOTE = 0x22;
const BACKSLASH = 0x5c;

/** Whether braces and brackets outside texts go deeper than any file of ours; found without building anything. */
const isDeep = (text: string): boolean => {
  let depth = 0;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code === QUOTE) {
      // On to the end of the text; a backslash takes the sign after it along.
      for (i++; i < text.length; i++) {
        const inside = text.charCodeAt(i);
        if (inside === BACKSLASH) i++;
        else if (inside === QUOTE) break;
      }
    } else if (code === 0x7b || code === 0x5b) {
      if (++depth > DEEPEST) return true;
    } else if (code === 0x7d || code === 0x5d) depth--;
  }
  return false;
};

export const isRecord = (raw: unknown): raw is Record<string, unknown> =>
  typeof raw === 'object' && raw !== null && !Array.isArray(raw);

export const isCount = (raw: unknown, most: number): raw is number =>
  Number.isInteger(raw) && (raw as number) >= 0 && (raw as number) <= most;

export const isTime = (raw: unknown): raw is string =>
  typeof raw === 'string' &&
  /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d{3})?Z$/.test(raw) &&
  !Number.isNaN(Date.parse(raw));

/**
 * Reads a text as a JSON object, its size and depth looked at first.
 * @param largest characters
 * @param tooLarge what to say of a larger one
 */
export const readRecord = (
  text: string,
  largest: number,
  tooLarge: string,
): Read<Readonly<Record<string, unknown>>> => {
  if (text.length > largest) return no(tooLarge);
  if (isDeep(text)) return no('It is nested deeper than any work of ours.');
  let raw: unknown;
  try {
    raw = JSON.parse(text);
  } catch {
    return no('It is no JSON, or was cut off. Ask for it again.');
  }
  return isRecord(raw) ? { ok: true, value: raw } : no('It is no work saved from this site.');
};

/** What is wrong with a file’s version, or nothing. */
export const complaintOfVersion = (version: unknown, known: number): string | undefined =>
  version === known
    ? undefined
    : typeof version === 'number' && version > known
      ? 'It was saved by a newer edition of this site. Read this page anew.'
      : `It has the version “${String(version).slice(0, 20)}”; this site reads ${known}.`;

/** Whether a file’s sum fits its body; undefined where it has none. A word about accidents, not about honesty. */
export const sumFits = (
  raw: Readonly<Record<string, unknown>>,
  body: unknown,
): boolean | undefined =>
  typeof raw['checksum'] === 'string'
    ? raw['checksum'] === checksum(JSON.stringify(body))
    : undefined;
