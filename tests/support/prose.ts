/**
 * A lesson’s text with everything that is not running prose blanked out, letter for letter, so that a place in the one
 * is the same place in the other.
 */
const NOT_PROSE = [
  /^(?:import|export) .*$/gm,
  // Headings, and what is set as code or maths.
  /^#{1,6} .*$/gm,
  /```[^]*?```|`[^`\n]*`/g,
  /\$[^$\n]+\$/g,
  /\{[^{}]*`[^`]*`[^{}]*\}|\{\/\*[^]*?\*\/\}/g,
  // A link cannot hold a second thing to press.
  /!?\[[^\]]*\]\([^)]*\)/g,
  /<a\s[^>]*>[^]*?<\/a>/g,
  /<summary>[^]*?<\/summary>/g,
  // What a term already is, and every other tag; what stands between two tags is prose again.
  /<Term\s[^>]*>[^]*?<\/Term>/g,
  /<\/?[A-Za-z][^<>]*?(?:"[^"]*"[^<>]*?)*>/g,
];

export const proseOf = (body: string): string =>
  NOT_PROSE.reduce(
    (text, pattern) => text.replace(pattern, (gone) => gone.replaceAll(/[^\n]/g, ' ')),
    body,
  );
