import type { Template } from './template.ts';

/** What exercises can be chosen by; the names are those of the address, too. */
export const FACETS = ['unit', 'skill', 'kind', 'difficulty'] as const;
export type Facet = (typeof FACETS)[number];

/** What is chosen; a facet that is not in it takes everything. */
export type Choice = Readonly<Partial<Record<Facet, string>>>;

interface Placed {
  readonly template: Pick<Template, 'skill' | 'kind' | 'difficulty'>;
  /** Empty where an exercise crosses units. */
  readonly unit: string;
}

/** What an exercise that belongs to no one unit is chosen by. */
export const ACROSS = 'across';

export const facetOf = ({ template, unit }: Placed, facet: Facet): string =>
  facet === 'unit' ? unit || ACROSS : String(template[facet]);

export const fits = (exercise: Placed, choice: Choice): boolean =>
  FACETS.every(
    (facet) => choice[facet] === undefined || choice[facet] === facetOf(exercise, facet),
  );

/**
 * What one facet can still be set to, with how many exercises each leaves: whoever chooses among these is never left
 * without any.
 */
export const offered = (
  exercises: readonly Placed[],
  choice: Choice,
  facet: Facet,
): ReadonlyMap<string, number> => {
  const counts = new Map<string, number>();
  for (const exercise of exercises) {
    const value = facetOf(exercise, facet);
    if (fits(exercise, { ...choice, [facet]: value }))
      counts.set(value, (counts.get(value) ?? 0) + 1);
  }
  return counts;
};

/** A choice as it stands in an address: only what there are exercises for, together, is taken. */
export const readChoice = (
  query: URLSearchParams,
  exercises: readonly Placed[],
): { readonly choice: Choice; readonly refused: readonly Facet[] } => {
  let choice: Choice = {};
  const refused: Facet[] = [];
  for (const facet of FACETS) {
    const values = query.getAll(facet);
    const [value] = values;
    if (value === undefined) continue;
    const with_ = { ...choice, [facet]: value };
    if (values.length === 1 && exercises.some((exercise) => fits(exercise, with_))) choice = with_;
    else refused.push(facet);
  }
  return { choice, refused };
};
