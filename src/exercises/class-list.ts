import { complaintOfAlias, foldAlias, tidyAlias } from './alias.ts';

/** Sheets beyond this are no class of ours. */
export const MOST_ALIASES = 200;

/** Aliases one a line: those that can be used, each once, and a sentence for each line that was not taken. */
export interface ClassList {
  readonly aliases: readonly string[];
  readonly complaints: readonly string[];
}

/**
 * Reads a class list. Lines that differ only in blanks, capitals or the form of a letter are one alias.
 * @example readClassList('Blue Heron\nblue heron') // one alias, and the sentence “Line 2: …”
 */
export const readClassList = (text: string): ClassList => {
  const aliases: string[] = [];
  const complaints: string[] = [];
  const lineOf = new Map<string, number>();
  for (const [at, line] of text.split(/\r\n|\r|\n/).entries()) {
    const alias = tidyAlias(line);
    if (alias === '') continue;
    const wrong = complaintOfAlias(alias);
    const folded = foldAlias(alias);
    const before = lineOf.get(folded);
    if (wrong !== undefined) complaints.push(`Line ${at + 1}: ${wrong}`);
    else if (before !== undefined)
      complaints.push(
        `Line ${at + 1}: “${alias}” is the alias of line ${before + 1} again; one sheet is made.`,
      );
    else if (aliases.length === MOST_ALIASES) {
      complaints.push(`At most ${MOST_ALIASES} aliases are taken at once; the rest is left out.`);
      break;
    } else {
      lineOf.set(folded, at);
      aliases.push(alias);
    }
  }
  return { aliases, complaints };
};
