import { Ajv } from 'ajv';
import { basename } from 'node:path';
import { describe, expect, it } from 'vitest';
import { filesUnder } from './support/files.ts';
import { textOf } from './support/content.ts';

const read = (file: string): unknown => JSON.parse(textOf(file)) as unknown;
const schemas = filesUnder('shared/schema');
const schemaFor = (file: string): string =>
  file.startsWith('shared/checks/') ? 'checks' : basename(file, '.json');

const files = [
  'shared/sources.json',
  ...filesUnder('shared/checks'),
  ...filesUnder('shared/tables'),
];

describe('published data', () => {
  it.each(files)('%s has the shape its schema gives', (file) => {
    const schema = `shared/schema/${schemaFor(file)}.schema.json`;
    expect(schemas, `${file} needs ${schema}`).toContain(schema);
    const ajv = new Ajv({ allErrors: true, strict: false });
    const valid = ajv.compile(read(schema) as object);
    valid(read(file));
    expect((valid.errors ?? []).map((one) => `${one.instancePath} ${one.message ?? ''}`)).toEqual(
      [],
    );
  });

  it('names each value once over all files', () => {
    const ids = filesUnder('shared/checks').flatMap((file) =>
      (read(file) as { values: readonly { id: string }[] }).values.map(({ id }) => id),
    );
    expect(ids.filter((id, i) => ids.indexOf(id) !== i)).toEqual([]);
  });

  it('refuses a misspelt key and a kind that does not exist', () => {
    const ajv = new Ajv({ strict: false });
    const valid = ajv.compile(read('shared/schema/checks.schema.json') as object);
    const [value] = (read('shared/checks/angle-of-view.json') as { values: readonly object[] })
      .values;
    const file = (one: object): unknown => ({ formula: 'angle-of-view', parts: [], values: [one] });
    expect(valid(file({ ...value }))).toBe(true);
    expect(valid(file({ ...value, wher: 'page 1' }))).toBe(false);
    expect(valid(file({ ...value, kind: 'derivd' }))).toBe(false);
  });
});
