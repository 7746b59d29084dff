import type { AsPlainObject } from 'minisearch';

/** Fields in a row, and for each of them the places where a term stands, as distances in base 36: `lens 1:4,2,1a;3:7`. */
export type Packed = string;

/** What MiniSearch writes of itself, as far as it is read here. */
interface Written {
  readonly index: readonly (readonly [
    string,
    Readonly<Record<string, Readonly<Record<string, number>>>>,
  ])[];
}

const ascending = (ids: readonly string[]): number[] => ids.map(Number).sort((a, b) => a - b);

/** The terms of each field of one entry that its own shown words hold: whoever has the entry need not be sent them. */
export type Shown = readonly (readonly [field: number, terms: readonly string[]])[];

/**
 * Writes an index as one text, half as long as its JSON after gzip. Every term stands once in a field, and what is shown
 * anyway is left out.
 */
export const pack = (words: AsPlainObject, shown: readonly Shown[]): Packed => {
  const there = shown.map((fields) => new Map(fields.map(([field, terms]) => [field, new Set(terms)])));
  return (words as unknown as Written).index
    .map(([term, fields]) => {
      const rows = Object.entries(fields).flatMap(([field, places]) => {
        const ids = ascending(Object.keys(places)).filter((id) => !there[id]?.get(Number(field))?.has(term));
        return ids.length === 0 ? [] : [`${field}:${ids.map((id, i) => (id - (ids[i - 1] ?? 0)).toString(36)).join(',')}`];
      });
      return rows.length === 0 ? '' : `${term} ${rows.join(';')}`;
    })
    .filter(Boolean)
    .sort()
    .join('\n');
}; // prettier-ignore

/** Reads it back as what MiniSearch loads, with all its terms; lengths of fields are counted anew. */
export const unpack = (
  packed: Packed,
  shown: readonly Shown[],
  fields: readonly string[],
): { readonly words: AsPlainObject; readonly terms: ReadonlySet<string> } => {
  const count = shown.length;
  const lengths = shown.map(() => fields.map(() => 0));
  const index = new Map<string, Partial<Record<string, Record<string, number>>>>();
  const put = (term: string, field: number, id: number): void => {
    let places = index.get(term);
    if (!places) index.set(term, (places = {}));
    const here = places[field] ?? {};
    here[id] = 1;
    places[field] = here;
    const length = lengths[id];
    if (length) length[field] = (length[field] ?? 0) + 1;
  };
  for (const line of packed.split('\n')) {
    const [term = '', rows = ''] = line.split(' ');
    for (const row of rows.split(';')) {
      const [field, steps] = row.split(':');
      let id = 0;
      for (const step of steps?.split(',') ?? [])
        put(term, Number(field), (id += parseInt(step, 36)));
    }
  }
  shown.forEach((entry, id) => {
    for (const [field, terms] of entry) for (const term of terms) put(term, field, id);
  });
  const average = fields.map(
    (_, field) => lengths.reduce((sum, length) => sum + (length[field] ?? 0), 0) / count,
  );
  const words = {
    documentCount: count,
    nextId: count,
    documentIds: Object.fromEntries(lengths.map((_, id) => [id, id])),
    fieldIds: Object.fromEntries(fields.map((field, id) => [field, id])),
    fieldLength: Object.fromEntries(lengths.map((length, id) => [id, length])),
    averageFieldLength: average,
    storedFields: {},
    dirtCount: 0,
    index: [...index],
    serializationVersion: 2,
  } as unknown as AsPlainObject;
  return { words, terms: new Set(index.keys()) };
};
