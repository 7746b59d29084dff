/** What is kept, as a file and back, and away with it: only where a page offers it. */
import { keep, key, parse, PREFIX, recall, type Kept } from './storage.ts';

/** More characters than a browser keeps for a site. */
const LONGEST = 6_000_000;

/** Some things, by the keys they are kept under, as the text of a file. */
export const fileOf = (kept: Readonly<Record<string, unknown>>): string =>
  JSON.stringify({ 'sitting-by-numbers': 1, kept }, null, 2);

/** Hands the reader a file. */
export const saveFile = (text: string, name: string): void => {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
  link.download = name;
  link.click();
  URL.revokeObjectURL(link.href);
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
  return fileOf(kept);
};

/**
 * Takes a file's values over, those that are sound and that we know; the answer says what came of it.
 * A file is checked whole before anything is written.
 */
export const importAll = (text: string, known: readonly Kept<unknown>[]): string => {
  const file = text.length > LONGEST ? undefined : parse(text);
  const kept = isRecord(file) && file['sitting-by-numbers'] === 1 ? file['kept'] : undefined;
  if (!isRecord(kept)) return 'That file was not saved from here, so nothing was changed.';
  const found = known.flatMap((one) => {
    const value = one.accept(kept[key(one.thing, one.version)]);
    return value === undefined ? [] : [{ one, value }];
  });
  if (found.length === 0) return 'There is nothing in that file for this version of the site.';
  for (const { one, value } of found) {
    const mine = one.join && recall(one);
    const failed = keep(one, mine === undefined ? value : one.join?.(mine, value));
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
