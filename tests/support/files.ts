import { readdirSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder that holds package.json, without a slash at its end. */
export const root = fileURLToPath(new URL('../..', import.meta.url)).replace(/[\\/]$/, '');

/** Every file under a folder of the repository, by its path from the top, in a fixed order. */
export function filesUnder(folder: string): string[] {
  return readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(root, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .sort();
}
