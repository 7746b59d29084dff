import { foldAlias } from './alias.ts';
import { readWork, writeWork, type Answer, type Work } from './result-file.ts';

/** Whose work on what: two such are one work however the alias is written. */
export type Whose = Pick<Work, 'link' | 'alias'>;

export const isSameWork = (one: Whose, other: Whose): boolean =>
  one.link === other.link && foldAlias(one.alias) === foldAlias(other.alias);

/** All work that was begun here and can be read, last touched first. */
export const worksIn = (texts: readonly string[]): readonly Work[] =>
  texts
    .flatMap((text) => {
      const read = readWork(text);
      return read.ok ? [read.value] : [];
    })
    .toSorted((a, b) => b.saved.localeCompare(a.saved));

/** The work of one alias on one assignment, if it was begun here. */
export const workIn = (texts: readonly string[], of: Whose): Work | undefined =>
  worksIn(texts).find((work) => isSameWork(work, of));

/** The same texts without one work; what cannot be read stays, for an edition that can. */
export const withoutWork = (texts: readonly string[], of: Whose): readonly string[] =>
  texts.filter((text) => {
    const read = readWork(text);
    return !(read.ok && isSameWork(read.value, of));
  });

/** The same texts with this work in its place. None is ever dropped to make room: whoever keeps them says when it is full. */
export const withWork = (texts: readonly string[], work: Work): readonly string[] => [
  ...withoutWork(texts, work),
  writeWork(work),
];

const keyOf = ({ template, seed }: Answer): string => `${template}/${seed}`;

/** Answers from two places: of each question the one that was changed last. */
export const joinAnswers = (
  ours: readonly Answer[],
  theirs: readonly Answer[],
): readonly Answer[] => {
  const all = new Map(ours.map((answer) => [keyOf(answer), answer]));
  for (const answer of theirs) {
    const mine = all.get(keyOf(answer));
    if (!mine || mine.at < answer.at) all.set(keyOf(answer), answer);
  }
  return [...all.values()];
};

/** Whether some answers are not, or only in an older state, among others. */
export const isMissing = (ours: readonly Answer[], among: readonly Answer[]): boolean =>
  ours.some((answer) => {
    const other = among.find((one) => keyOf(one) === keyOf(answer));
    return !other || other.at < answer.at;
  });

/** One work from two states of it, as from a file and from this browser; nothing that was answered in either is lost. */
export const joinWorks = (ours: Work, theirs: Work): Work => ({
  ...(ours.saved >= theirs.saved ? ours : theirs),
  started: ours.started <= theirs.started ? ours.started : theirs.started,
  answers: joinAnswers(ours.answers, theirs.answers),
});

/** Two lists of texts as one: work that stands in both is joined, all else stays. */
export const joinTexts = (ours: readonly string[], theirs: readonly string[]): readonly string[] =>
  theirs.reduce((texts, text) => {
    const read = readWork(text);
    if (!read.ok) return texts.includes(text) ? texts : [...texts, text];
    const mine = workIn(texts, read.value);
    return withWork(texts, mine ? joinWorks(mine, read.value) : read.value);
  }, ours);
