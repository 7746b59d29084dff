import { strToU8, zipSync, type Zippable } from 'fflate';

/**
 * Texts as a zip. The same texts in the same order give the same bytes, on any day and in any zone.
 * @param files texts by their path inside
 */
export const zip = (files: Readonly<Record<string, string>>): Uint8Array => {
  const entries: Zippable = {};
  for (const [path, text] of Object.entries(files)) entries[path] = [strToU8(text), {}];
  // Zips hold local times and no zone: a date made from local parts gives the same bytes everywhere.
  return zipSync(entries, { mtime: new Date(2000, 0, 1), level: 9 });
};
