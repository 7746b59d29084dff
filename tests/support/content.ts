import { readFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { parse } from 'yaml';
import { filesUnder, root } from './files.ts';

export const textOf = (file: string): string => readFileSync(join(root, file), 'utf8');

/** A Markdown file as its front matter and its body. */
export function readMarkdown(file: string): { data: Record<string, unknown>; body: string } {
  const [, front, body] = /^---\n([^]*?)\n---\n([^]*)$/.exec(textOf(file)) ?? [];
  if (front === undefined || body === undefined) throw new Error(`${file} has no front matter.`);
  return { data: (parse(front) ?? {}) as Record<string, unknown>, body };
}

export interface Lesson {
  readonly file: string;
  readonly folder: string;
  /** Unit and lesson number: the order of the curriculum. */
  readonly order: string;
  /** The unit's part of the address. */
  readonly unit: string;
  readonly slug: string;
  readonly data: Record<string, unknown>;
  readonly body: string;
}

/** All lessons in reading order. */
export function readLessons(): Lesson[] {
  return filesUnder('content/lessons')
    .filter((file) => file.endsWith('/index.mdx'))
    .map((file) => {
      const folder = dirname(file);
      const name = basename(folder);
      const unit = basename(dirname(folder));
      const order = `${unit.split('-')[0] ?? ''}.${name.split('-')[0] ?? ''}`;
      const [unitSlug, slug] = [unit, name].map((part) => part.replace(/^\d+-/, '')) as [
        string,
        string,
      ];
      return { file, folder, order, unit: unitSlug, slug, ...readMarkdown(file) };
    });
}

export interface Exercise {
  readonly file: string;
  readonly data: Record<string, unknown>;
}

/** All files of quick questions; what stands across units are templates of the bank. */
export function readExercises(): Exercise[] {
  return filesUnder('content')
    .filter((file) => /\/lessons\/.*\/exercises\/[^/]+\.yaml$/.test(file))
    .map((file) => ({ file, data: parse(textOf(file)) as Record<string, unknown> }));
}

/** Ids of the glossary's terms. */
export const readTerms = (): string[] =>
  filesUnder('content/glossary').map((file) => basename(file, '.md'));
