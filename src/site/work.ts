import { foldAlias } from '../exercises/alias.ts';
import { readWork, writeWork, type Work } from '../exercises/result-file.ts';
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

const MOST = 20;

const isOf = (text: string, { link, alias }: Pick<Work, 'link' | 'alias'>): boolean => {
  const read = readWork(text);
  return read.ok && read.value.link === link && foldAlias(read.value.alias) === foldAlias(alias);
};

/** The work of one alias on one assignment, if it was begun here. */
export const workIn = (
  texts: readonly string[],
  of: Pick<Work, 'link' | 'alias'>,
): Work | undefined => {
  const text = texts.find((one) => isOf(one, of));
  const read = text === undefined ? undefined : readWork(text);
  return read?.ok ? read.value : undefined;
};

/** The same texts with this work in its place; the oldest go once there are too many. */
export const withWork = (texts: readonly string[], work: Work): readonly string[] =>
  [...texts.filter((text) => !isOf(text, work)), writeWork(work)].slice(-MOST);
