import { foldAlias } from './alias.ts';
import { readWork, writeWork, type Work } from './result-file.ts';

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
