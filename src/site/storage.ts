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
  /** How a file's value and the one kept here become one, where the file must not take its place. */
  join?(ours: T, theirs: T): T;
  /** From an older version's key, newest first: how its value becomes one of ours. */
  readonly migrate?: readonly {
    readonly version: number;
    readonly lift: (raw: unknown) => unknown;
  }[];
}

export const PREFIX = 'sbn:';
const REFUSED =
  'This browser would not keep it: its storage is full or switched off. Save a file instead.';

export const key = (thing: string, version: number): string =>
  `${PREFIX}${thing}:v${String(version)}`;

export const parse = (text: string | null): unknown => {
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
