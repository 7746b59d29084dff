import type { Kept } from './storage.ts';

/** The theme the reader chose; nothing is kept while the system decides. public/theme.js reads it too. */
export const theme: Kept<'light' | 'dark'> = {
  thing: 'theme',
  version: 1,
  accept: (raw) => (raw === 'light' || raw === 'dark' ? raw : undefined),
};

/** Lessons ticked off, by their permanent ids. */
export const progress: Kept<readonly string[]> = {
  thing: 'progress',
  version: 1,
  accept: (raw) =>
    Array.isArray(raw) &&
    raw.length <= 1000 &&
    raw.every((id): id is string => typeof id === 'string' && /^[a-z0-9-]{1,64}$/.test(id))
      ? [...new Set(raw)]
      : undefined,
};
