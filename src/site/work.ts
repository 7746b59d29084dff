import { joinTexts } from '../exercises/begun.ts';
import type { Kept } from './storage.ts';

/** More than any text of ours has. */
const LONGEST = 600_000;

/**
 * Work on assignments that was begun in this browser: the texts of result files, newest last. Each is read by the same
 * careful hand as any file, when it is wanted: one that cannot be read takes no other with it.
 */
export const workBegun: Kept<readonly string[]> = {
  thing: 'work',
  version: 1,
  accept: (raw) =>
    Array.isArray(raw) &&
    raw.every((text): text is string => typeof text === 'string' && text.length <= LONGEST)
      ? raw
      : undefined,
  join: joinTexts,
};
