import { readFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import { root } from './files.ts';

export interface Import {
  /** A path from the top of the repository, or a package's name. */
  readonly target: string;
  readonly typeOnly: boolean;
}

const written =
  /(?:^|[\n;{>])\s*(?:import|export)\s+(type\s)?(?:[\w*\s{},$]+?\sfrom\s*)?['"]([^'"\n]+)['"]|\bimport\(\s*['"]([^'"\n]+)['"]/g;

/** What a file imports, relative and `~/` paths resolved. */
export function importsOf(file: string, text = readFileSync(join(root, file), 'utf8')): Import[] {
  return [...text.matchAll(written)].map(([, type, named, lazy]) => {
    const path = (named ?? lazy ?? '').replace(/\?.*$/, '');
    let target = path;
    if (path.startsWith('~/')) target = `src/${path.slice(2)}`;
    else if (path.startsWith('.')) target = posix.join(posix.dirname(file), path);
    return { target, typeOnly: type !== undefined };
  });
}

/** The text of the scripts that a page part sends to the reader, as one. */
export function scriptsIn(file: string): string {
  const text = readFileSync(join(root, file), 'utf8').replace(/^---[^]*?\n---/, '');
  return [...text.matchAll(/<script\b[^>]*>([^]*?)<\/script>/g)].map(([, body]) => body).join('\n');
}
