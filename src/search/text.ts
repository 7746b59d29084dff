/** Words that say nothing about what is looked for. */
const STOP = new Set(
  'a an and are as at be but by can could do does for from get give given had has have here how i if in into is it its like make many may me much must my need needs no not of off on or our out please should show so some than that the their them then there these they this those to too up us use used using want was we were what when where which who why will with would you your'.split(
    ' ',
  ),
);

const LONGEST = 160;

/** Typed text as plain characters of ordinary length: no direction marks, accents or full-width forms. */
export const tidy = (text: string): string =>
  text
    .slice(0, LONGEST)
    .normalize('NFKD')
    .replace(/[\p{M}\p{Cc}\p{Cf}]+/gu, (marks) => (/[\t\n\r]/.test(marks) ? ' ' : ''))
    .replace(/[’‘ʼ′]/g, "'")
    .replace(/[‐-―−]/g, '-');

/** The words of a text, their case kept; a hyphen parts them, and the mark of the genitive goes. */
export const wordsOf = (text: string): string[] =>
  text.replace(/(\p{L})['’]s\b/gu, '$1').match(/[\p{L}\p{N}]+(?:[.,]\p{N}+)*/gu) ?? [];

/**
 * One word as the index keeps it: small letters, British and American spelling alike, without its ending.
 *
 * Model: a light stemmer, the same for what is indexed and what is asked. It need not make words, only equals of equals.
 * @example fold('Colours') // 'color'
 * @example fold('focusing') === fold('focussed') // true
 */
export const fold = (word: string): string => {
  const known = folded.get(word);
  if (known !== undefined) return known;
  const stem = stemOf(word);
  // Thousands of words are folded as an index is opened, and most of them many times.
  if (folded.size < MOST_KEPT) folded.set(word, stem);
  return stem;
};

const MOST_KEPT = 8000;
const folded = new Map<string, string>();

const stemOf = (word: string): string => {
  let stem = word
    .toLowerCase()
    .replace(/our(?=s|ed|ing|ful|less|$)/, 'or')
    .replace(/(?<=[^aeiou])re(?=s?$)/, 'er')
    .replace(/^grey/, 'gray')
    .replace(/is(?=(e[sdr]?|ing|ation)$)/, 'iz');
  if (stem.length < 4 || /\d/.test(stem)) return stem;
  stem = stem.replace(/ies$/, 'y').replace(/(?<=ss|sh|ch|x|z|ns)es$/, '');
  if (!/(ss|us|is|ns)$/.test(stem)) stem = stem.replace(/s$/, '');
  if (/(?<=[aeiouy].{1,})(ing|ed)$/.test(stem) && stem.length > 5)
    stem = stem.replace(/(ing|ed)$/, '').replace(/([^aeiouls])\1$|(l)l$|(s)s$/, '$1$2$3');
  return stem.length > 4 ? stem.replace(/e$/, '') : stem;
};

export const isStop = (word: string): boolean => STOP.has(word.toLowerCase());

/** A text's words as the index keeps them, those that say nothing left out. */
export const termsOf = (text: string): string[] =>
  wordsOf(text)
    .filter((word) => !isStop(word))
    .map(fold);

/** A whole phrase as one string that equals its other spellings: “f-stop”, “fstop” and “F stop” are the same. */
export const whole = (text: string): string => wordsOf(text).map(fold).join('');
