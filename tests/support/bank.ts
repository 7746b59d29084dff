import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import type { Template } from '../../src/exercises/template.ts';
import { template } from '../../src/site/bank-schema.ts';
import { filesUnder, root } from './files.ts';

/** Every exercise template with the file it stands in; a malformed one throws with its file’s name. */
export const bank: readonly { readonly file: string; readonly template: Template }[] = filesUnder(
  'content',
)
  .filter((file) => /\/(bank|content\/exercises)\/[^/]+\.yaml$/.test(`/${file}`))
  .map((file) => {
    const read = template.safeParse(parse(readFileSync(join(root, file), 'utf8')));
    if (!read.success)
      throw new Error(
        `${file}: ${read.error.issues.map(({ path, message }) => `${path.join('.')}: ${message}`).join('; ')}`,
      );
    return { file, template: read.data as Template };
  });
