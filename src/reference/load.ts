import type { CheckFile, CheckValue, Source } from './shapes.ts';
import bibliography from '../../shared/sources.json' with { type: 'json' };

const files = import.meta.glob<CheckFile>('../../shared/checks/*.json', {
  eager: true,
  import: 'default',
});

/** The bibliography, by short id. */
export const sources: ReadonlyMap<string, Source> = new Map(
  bibliography.map((source) => [source.id, source]),
);

/** Every formula's published values, by formula id. Their shape is checked against shared/schema by the tests. */
export const checks: ReadonlyMap<string, CheckFile> = new Map(
  Object.entries(files)
    .map(([path, file]) => [path.replace(/^.*\/(.*)\.json$/, '$1'), accept(path, file)] as const)
    .toSorted(([a], [b]) => a.localeCompare(b, 'en')),
);

/**
 * The published values of one formula.
 *
 * Throws: Error for a formula without a file.
 */
export function checksFor(formula: string): readonly CheckValue[] {
  const file = checks.get(formula);
  if (!file) {
    throw new Error(
      `The formula ${formula} has no published values: expected shared/checks/${formula}.json. ` +
        'shared/README.md says what stands in it.',
    );
  }
  return file.values;
}

/**
 * One entry of the bibliography.
 *
 * Throws: Error for an id that is not in it.
 */
export function sourceOf(id: string): Source {
  const source = sources.get(id);
  if (!source) {
    throw new Error(
      `Unknown source “${id}”. shared/sources.json has: ${[...sources.keys()].join(', ')}.`,
    );
  }
  return source;
}

/** What a schema cannot say: names agree, and every source named is in the bibliography. */
function accept(path: string, file: CheckFile): CheckFile {
  const name = path.replace(/^.*\/(.*)\.json$/, '$1');
  const where = `shared/checks/${name}.json`;
  if (file.formula !== name) throw new Error(`${where} says it is for “${file.formula}”.`);
  const seen = new Set<string>();
  for (const value of file.values) {
    if (seen.has(value.id)) throw new Error(`${where} has two values with the id ${value.id}.`);
    seen.add(value.id);
    if (value.source !== null) sourceOf(value.source);
    else if (value.kind === 'published') {
      throw new Error(`${where}, ${value.id}: a published value names its source.`);
    }
  }
  return file;
}
