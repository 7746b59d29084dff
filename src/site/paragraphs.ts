/** Paragraphs of HTML as one run of text, so that it may stand inside another. */
export const withoutParagraphs = (html: string): string =>
  html
    .trim()
    .replace(/<\/p>\s*<p>/g, ' ')
    .replace(/^<p>|<\/p>$/g, '');
