import { readWork } from '../exercises/result-file.ts';
import type { Kept } from './storage.ts';

/**
 * Work on assignments that was begun in this browser: the texts of result files, newest last. They are read by the same
 * careful hand as any file.
 */
export const workBegun: Kept<readonly string[]> = {
  thing: 'work',
  version: 1,
  accept: (raw) =>
    Array.isArray(raw) &&
    raw.length <= 40 &&
    raw.every((text): text is string => typeof text === 'string' && readWork(text).ok)
      ? raw
      : undefined,
};
