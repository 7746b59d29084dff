import { joinTexts } from '../exercises/begun.ts';
import { LARGEST } from '../exercises/result-file.ts';
import type { Kept } from './storage.ts';

/**
 * Work on assignments that was begun in this browser: the texts of result files, newest last. Each is read by the same
 * careful hand as any file, when it is wanted: one that cannot be read takes no other with it.
 */
export const workBegun: Kept<readonly string[]> = {
  thing: 'work',
  version: 1,
  accept: (raw) =>
    Array.isArray(raw) &&
    raw.every((text): text is string => typeof text === 'string' && text.length <= LARGEST)
      ? raw
      : undefined,
  join: joinTexts,
};
