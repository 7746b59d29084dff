/**
 * The one door to the browser's storage. Keys are `sbn:<thing>:v<n>`; nothing is written but on the
 * reader's act; whatever is refused, full or damaged is answered with a sentence, never thrown.
 */

/** One kept thing: its key, and what counts as a sound value of it. */
export interface Kept<T> {
  readonly thing: string;
  readonly version: number;
  /** The value if it is sound, undefined if not. Text from storage and files is never trusted. */
  readonly accept: (raw: unknown) => T | undefined;
  /** From an older version's key, newest first: how its value becomes one of ours. */
  readonly migrate?: readonly {
    readonly version: number;
    readonly lift: (raw: unknown) => unknown;
  }[];
}

const PREFIX = 'sbn:';
const REFUSED =
  'This browser would not keep it: its storage is full or switched off. Save a file instead.';

const key = (thing: string, version: number): string => `${PREFIX}${thing}:v${String(version)}`;

const parse = (text: string | null): unknown => {
  if (text === null) return undefined;
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
};

/** What is kept, or undefined where there is nothing sound. */
export const recall = <T>({ thing, version, accept, migrate = [] }: Kept<T>): T | undefined => {
  try {
    const raw = parse(localStorage.getItem(key(thing, version)));
    if (raw !== undefined) return accept(raw);
    for (const older of migrate) {
      const old = parse(localStorage.getItem(key(thing, older.version)));
      if (old !== undefined) return accept(older.lift(old));
    }
  } catch {
    // Storage refused: as if nothing were kept.
  }
  return undefined;
};

/** Keeps a value; undefined removes it. The answer is what to tell the reader if it could not be done. */
export const keep = <T>({ thing, version }: Kept<T>, value: T | undefined): string | undefined => {
  try {
    if (value === undefined) localStorage.removeItem(key(thing, version));
    else localStorage.setItem(key(thing, version), JSON.stringify(value));
    return undefined;
  } catch {
    return REFUSED;
  }
};

/** Everything of ours, as the text of a file. */
export const exportAll = (): string => {
  const kept: Record<string, unknown> = {};
  try {
    for (let i = 0; i < localStorage.length; i += 1) {
      const name = localStorage.key(i) ?? '';
      if (name.startsWith(PREFIX)) kept[name] = parse(localStorage.getItem(name));
    }
  } catch {
    // Nothing to export then.
  }
  return JSON.stringify({ 'sitting-by-numbers': 1, kept }, null, 2);
};

/**
 * Takes a file's values over, those that are sound and that we know; the answer says what came of it.
 * A file is checked whole before anything is written.
 */
export const importAll = (text: string, known: readonly Kept<unknown>[]): string => {
  const file = text.length > 1_000_000 ? undefined : parse(text);
  const kept = isRecord(file) && file['sitting-by-numbers'] === 1 ? file['kept'] : undefined;
  if (!isRecord(kept)) return 'That file was not saved from here, so nothing was changed.';
  const found = known.flatMap((one) => {
    const value = one.accept(kept[key(one.thing, one.version)]);
    return value === undefined ? [] : [{ one, value }];
  });
  if (found.length === 0) return 'There is nothing in that file for this version of the site.';
  for (const { one, value } of found) {
    const failed = keep(one, value);
    if (failed) return failed;
  }
  return 'Read, and kept in this browser.';
};

/** Forgets everything of ours. */
export const eraseAll = (): string => {
  try {
    Object.keys(localStorage)
      .filter((name) => name.startsWith(PREFIX))
      .forEach((name) => localStorage.removeItem(name));
    return 'Erased. Nothing of this site is kept in this browser now.';
  } catch {
    return 'This browser gives no access to its storage, so there was nothing to erase.';
  }
};

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
