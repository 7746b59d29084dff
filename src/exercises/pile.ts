import { foldAlias } from './alias.ts';
import { isWholeWork, readWorkRecord, workOf, type Work } from './result-file.ts';
import { looksLikeRulings, readRulings, type RulingsFile } from './rulings.ts';
import type { Assignment } from './assignment.ts';

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

/** More than any class, and still no trouble for a phone. */
export const MOST_FILES = 2000;
/** Bytes. What is larger is refused by its size alone, and never read. */
export const LARGEST_FILE = 4_000_000;
const LONGEST_NAME = 80;

/** A file’s name as it can be shown: its signs that cannot be seen, or that turn text round, left out. */
const tidyName = (name: string): string => {
  const plain = name.replaceAll(/[\p{Cc}\p{Cf}]/gu, '');
  return plain.length > LONGEST_NAME ? `${plain.slice(0, LONGEST_NAME)}…` : plain;
};

const whose = ({ link, alias }: Work): string => `${link}\n${foldAlias(alias)}`;

/** What lies on the desk: the files that were taken, one for each alias on each assignment, and why others were not. */
export class Pile {
  readonly #taken = new Map<string, Taken>();
  readonly #refused: Refused[] = [];

  get taken(): readonly Taken[] {
    return [...this.#taken.values()];
  }

  /** The assignment of the first file that was taken. */
  get first(): Assignment | undefined {
    for (const { work } of this.#taken.values()) return work.assignment;
    return undefined;
  }

  get refused(): readonly Refused[] {
    return this.#refused;
  }

  refuse(name: string, why: string): void {
    this.#refused.push({ name: tidyName(name), why });
  }

  /**
   * Takes one more file, or says why not. Of two files of one alias on one assignment the later one counts, whichever
   * came first. Nothing of a file that is refused is used.
   * @returns rulings, where the file holds those: what counts of them is for the desk to say
   */
  add(name: string, text: string): RulingsFile | undefined {
    if (looksLikeRulings(text)) {
      const rulings = readRulings(text);
      if (rulings.ok) return rulings.value;
      this.refuse(name, rulings.why);
      return undefined;
    }
    const raw = readWorkRecord(text);
    const read = raw.ok ? workOf(raw.value) : raw;
    if (!read.ok) this.refuse(name, read.why);
    else
      this.#put({
        name: tidyName(name),
        work: read.value,
        whole: raw.ok ? isWholeWork(raw.value) : undefined,
      });
    return undefined;
  }

  #put(taken: Taken): void {
    const key = whose(taken.work);
    const before = this.#taken.get(key);
    if (!before) {
      if (this.#taken.size >= MOST_FILES)
        this.refuse(taken.name, `The desk holds ${MOST_FILES} files, and they are here.`);
      else this.#taken.set(key, taken);
      return;
    }
    const [old, now] = [before.work, taken.work];
    if (JSON.stringify(old) === JSON.stringify(now)) {
      this.refuse(taken.name, `The same work lies here already, as ${before.name}.`);
      return;
    }
    // Work that goes on keeps the time it was begun; where that differs, two may have chosen one alias.
    const twins =
      old.started === now.started
        ? ''
        : ' They were begun at different times: see that no two students share the alias.';
    if (old.saved === now.saved) {
      this.refuse(
        taken.name,
        `It has other answers than ${before.name}, yet alias and time of “${now.alias}” are the same; the first counts.${twins}`,
      );
      return;
    }
    const [counts, goes] = old.saved > now.saved ? [before, taken] : [taken, before];
    this.#taken.set(key, counts);
    this.refuse(goes.name, `${counts.name} holds later work of “${now.alias}”.${twins}`);
  }

  /** The assignments that lie on the desk, most files first. */
  assignments(): readonly {
    readonly link: string;
    readonly assignment: Assignment;
    readonly files: number;
  }[] {
    const by = new Map<string, { link: string; assignment: Assignment; files: number }>();
    for (const { work } of this.#taken.values()) {
      const one = by.get(work.link);
      if (one) one.files += 1;
      else by.set(work.link, { link: work.link, assignment: work.assignment, files: 1 });
    }
    return [...by.values()].toSorted((a, b) => b.files - a.files);
  }
}
