import { foldAlias } from './alias.ts';
import { readAssignment, type Assignment } from './assignment.ts';
import { isWhole, readWork, type Work } from './result-file.ts';

/** One file that was taken. */
export interface Taken {
  readonly name: string;
  readonly work: Work;
  /** False where its sum does not fit: an accident on the way, most likely. Undefined where it has none. */
  readonly whole: boolean | undefined;
}

/** One that was not, and why. */
export interface Refused {
  readonly name: string;
  readonly why: string;
}

/** What lies on the desk. */
export interface Pile {
  readonly taken: readonly Taken[];
  readonly refused: readonly Refused[];
}

export const EMPTY: Pile = { taken: [], refused: [] };
/** More than any class, and still no trouble for a phone. */
export const MOST_FILES = 2000;

const sameStudent = (a: Work, b: Work): boolean =>
  a.link === b.link && foldAlias(a.alias) === foldAlias(b.alias);

/**
 * The pile with one more file. Of two files of one alias on one assignment the later one counts, whichever came first.
 * Nothing of a file that is refused is used.
 */
export const addFile = (pile: Pile, name: string, text: string): Pile => {
  const refuse = (why: string): Pile => ({ ...pile, refused: [...pile.refused, { name, why }] });
  if (pile.taken.length >= MOST_FILES) return refuse(`The desk holds ${MOST_FILES} files.`);
  const read = readWork(text);
  if (!read.ok) return refuse(read.why);
  const taken = { name, work: read.value, whole: isWhole(text) };
  const before = pile.taken.find(({ work }) => sameStudent(work, read.value));
  if (!before) return { ...pile, taken: [...pile.taken, taken] };
  if (before.work.saved >= read.value.saved)
    return refuse(
      before.work.saved === read.value.saved
        ? `The same work lies here already, as ${before.name}.`
        : `${before.name} holds later work of “${read.value.alias}”.`,
    );
  return {
    taken: pile.taken.map((one) => (one === before ? taken : one)),
    refused: [
      ...pile.refused,
      { name: before.name, why: `${name} holds later work of “${read.value.alias}”.` },
    ],
  };
};

/** The assignments that lie on the desk, most files first. */
export const assignmentsIn = ({
  taken,
}: Pile): readonly {
  readonly link: string;
  readonly assignment: Assignment;
  readonly files: number;
}[] => {
  const links = [...new Set(taken.map(({ work }) => work.link))];
  return links
    .flatMap((link) => {
      const read = readAssignment(link);
      return read.ok
        ? [
            {
              link,
              assignment: read.value,
              files: taken.filter(({ work }) => work.link === link).length,
            },
          ]
        : [];
    })
    .toSorted((a, b) => b.files - a.files);
};
