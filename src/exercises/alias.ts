/** Longer than any alias worth typing. */
export const LONGEST_ALIAS = 40;

/** An alias as it is shown and kept: without blanks around it or doubled in it. */
export const tidyAlias = (alias: string): string =>
  alias.normalize('NFC').trim().replaceAll(/\s+/g, ' ');

/**
 * An alias as it is compared: one form of every letter, no blanks around it or doubled in it, no capitals.
 * @example foldAlias('  Blue  HERON ') // 'blue heron'
 */
export const foldAlias = (alias: string): string => tidyAlias(alias).toLowerCase().normalize('NFC');

/** What is wrong with an alias, or nothing. */
export const complaintOfAlias = (alias: string): string | undefined => {
  const folded = foldAlias(alias);
  if (folded === '') return 'Type an alias: any word of your own, but not your name.';
  if (folded.length > LONGEST_ALIAS) return `An alias has at most ${LONGEST_ALIAS} characters.`;
  if (/[\p{Cc}\p{Cf}\p{Co}\p{Cn}]/u.test(folded))
    return 'That alias has characters that cannot be seen. Use letters, digits and blanks.';
  return undefined;
};
