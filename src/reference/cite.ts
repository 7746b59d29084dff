import type { Source } from './shapes.ts';

/** Author or publisher, and year, as far as the source has them: “United States Navy” or “Nikon, 2016”. */
export const shortCitation = (source: Source): string => {
  const names = (source.author ?? []).map(({ family, literal }) => family ?? literal ?? '');
  const who = names.length > 2 ? `${names[0] ?? ''} and others` : names.join(' and ');
  return [who || source.publisher || source['container-title'], yearOf(source)]
    .filter(Boolean)
    .join(', ');
};

/** Everything but the title: who, where, when. */
export const citationTail = (source: Source): string => {
  const authors = (source.author ?? []).map(
    ({ family, given, literal }) => literal ?? [given, family].filter(Boolean).join(' '),
  );
  return [authors.join(', '), source['container-title'], source.publisher, yearOf(source)]
    .filter(Boolean)
    .join(', ');
};

const yearOf = (source: Source): string | undefined =>
  source.issued?.['date-parts'][0]?.[0]?.toString();
