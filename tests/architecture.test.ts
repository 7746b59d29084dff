import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { filesUnder, root } from './support/files.ts';
import { importsOf, scriptsIn } from './support/imports.ts';

// Who may import whom, by room. A room may always import itself; a star lets it import anything but `never`.
const mayImport: Record<string, readonly string[]> = {
  formula: [],
  optics: ['formula', 'tables'],
  sitting: ['formula', 'tables'],
  formulas: ['formula', 'optics', 'sitting'],
  drawing: ['formula', 'optics', 'sitting'],
  tabulate: ['formula'],
  search: ['formula', 'minisearch'],
  exercises: ['formula', 'optics', 'sitting', 'pure-rand', 'fflate'],
  plan: ['formula', 'optics', 'sitting'],
  widgets: [
    'formula',
    'formulas',
    'optics',
    'sitting',
    'drawing',
    'tabulate',
    'search',
    'exercises',
    'plan',
    'svelte',
    'colorjs.io',
    'uqr',
  ],
  reference: ['formula', 'shared', 'tables'],
  components: ['*'],
  'widget pages': ['*'],
  site: ['*'],
  layouts: ['*'],
  pages: ['*'],
  content: ['widget pages', 'components'],
};
const never: Record<string, readonly string[]> = {
  components: ['widgets', 'widget pages', 'layouts'],
  'widget pages': ['layouts'],
  site: ['widgets', 'widget pages', 'layouts'],
};
const pure = ['formula', 'optics', 'sitting', 'drawing', 'tabulate', 'search', 'exercises', 'plan'];
const buildTimeOnly =
  /^(src\/(reference|components|site\/commands)\/|katex|zod|astro:|shared\/(?!tables\/))/;

/** The room a file lives in, or a package's name. */
function roomOf(path: string): string {
  const [top = '', room = ''] = path.split('/');
  if (top === 'shared') return path.startsWith('shared/tables/') ? 'tables' : 'shared';
  if (top === 'content' || top === 'tests') return top;
  if (top !== 'src') return path.startsWith('@') ? `${top}/${room}` : top;
  return room === 'widgets' && path.endsWith('.astro') ? 'widget pages' : room.replace(/\.ts$/, '');
}

const code = [...filesUnder('src'), ...filesUnder('content')].filter((file) =>
  /\.(ts|svelte|astro|mdx)$/.test(file),
);

describe('who may import whom', () => {
  it('finds the code it is to judge', () => {
    expect(code.length).toBeGreaterThan(60);
    expect(code.flatMap((file) => importsOf(file)).length).toBeGreaterThan(150);
    const lost = code.flatMap((file) =>
      importsOf(file)
        .filter(({ target }) => /^(src|shared|content)\//.test(target))
        .filter(({ target }) => !existsSync(join(root, target)))
        .map(({ target }) => `${file} imports ${target}, which is not there`),
    );
    expect(lost).toEqual([]);
  });

  it('keeps every import pointing the right way', () => {
    const wrong = code.flatMap((file) => {
      const from = roomOf(file);
      const allowed = mayImport[from] ?? ['*'];
      const barred = [...(never[from] ?? []), 'tests', ...(from === 'pages' ? [] : ['pages'])];
      return importsOf(file)
        .map(({ target }) => roomOf(target))
        .filter((to) => to !== from)
        .filter((to) => barred.includes(to) || !(allowed.includes('*') || allowed.includes(to)))
        .map((to) => `${file} (${from}) may not import ${to}`);
    });
    expect(wrong).toEqual([]);
  });

  it('lets a lesson import widgets and components by name only', () => {
    const odd = code
      .filter((file) => file.startsWith('content/'))
      .flatMap((file) => importsOf(file).map(({ target }) => target))
      .filter((to) => !/^src\/(widgets\/[\w-]+\/index|components\/\w+)\.astro$/.test(to));
    expect(odd).toEqual([]);
  });

  it('sends nothing to the reader that belongs to the build', () => {
    const entries = code.filter((file) => /\.svelte(\.ts)?$/.test(file));
    const scripts = code.filter((file) => file.endsWith('.astro'));
    const queue = [
      ...entries,
      ...scripts.flatMap((file) => importsOf(file, scriptsIn(file)).map(({ target }) => target)),
    ];
    const shipped = new Set<string>();
    for (let file = queue.pop(); file !== undefined; file = queue.pop()) {
      if (shipped.has(file)) continue;
      shipped.add(file);
      if (!/^src\/.*\.(ts|svelte)$/.test(file)) continue;
      queue.push(
        ...importsOf(file)
          .filter((one) => !one.typeOnly)
          .map(({ target }) => target),
      );
    }
    expect([...shipped].filter((file) => file.startsWith('src/formula/')).length).toBeGreaterThan(
      3,
    );
    expect([...shipped].filter((file) => buildTimeOnly.test(file))).toEqual([]);
  });
});

it('runs every pure file under plain Node, with no page around it', () => {
  const files = pure
    .filter((room) => existsSync(join(root, 'src', room)))
    .flatMap((room) => filesUnder(`src/${room}`))
    .filter((file) => file.endsWith('.ts'));
  expect(files.length).toBeGreaterThan(20);
  const list = files.map((file) => `await import(${JSON.stringify(`./${file}`)});`).join('\n');
  const script = `${list}\nawait Promise.all(Object.values((await import('./src/formulas.ts')).formulas).map((load) => load()));`;
  const options = { cwd: root, encoding: 'utf8', stdio: 'pipe' } as const;
  expect(execFileSync(process.execPath, ['--input-type=module', '-e', script], options)).toBe('');
});

it('says the order of the style layers wherever one is filled, since any sheet may come first on a page', () => {
  const filling = filesUnder('src')
    .filter((file) => /\.(astro|svelte|css)$/.test(file) && file !== 'src/styles/layers.css')
    .filter((file) => /@layer \w+ \{/.test(readFileSync(join(root, file), 'utf8')));
  expect(filling.length).toBeGreaterThan(4);
  expect(
    filling.filter((file) => !readFileSync(join(root, file), 'utf8').includes('layers.css')),
  ).toEqual([]);
});

/** The selectors of a sheet that stand in no other rule. */
const outermost = (sheet: string): string[] => {
  const found: string[] = [];
  const open: string[] = [];
  for (const [, before = '', sign] of sheet.matchAll(/([^{};]*)([{};])/g)) {
    if (sign === '}') open.pop();
    if (sign !== '{') continue;
    if (!before.includes('@') && open.every((one) => one.includes('@')))
      found.push(...before.split(/,(?![^(]*\))/));
    open.push(before);
  }
  return found;
};

it('lets no page’s sheet speak of what another’s calls by the same name, since every page has all of them', () => {
  const everywhere = readFileSync(join(root, 'src/styles/site.css'), 'utf8');
  // What the whole site shares, and what plates alone add to it.
  const shared = /^(prose|plate-sheet|drawing|field|field-line|result-more|glossary-list)$/;
  const users = new Map<string, Set<string>>();
  for (const file of filesUnder('src').filter((one) => one.endsWith('.css'))) {
    const text = readFileSync(join(root, file), 'utf8').replaceAll(/\/\*[^]*?\*\//g, '');
    for (const selector of outermost(text)) {
      const [, first] = /^\s*[a-z]*(?:\[[^\]]*\])?\.([\w-]+)/.exec(selector) ?? [];
      if (first !== undefined) users.set(first, (users.get(first) ?? new Set()).add(file));
    }
  }
  expect(users.size).toBeGreaterThan(200);
  const isOwn = (file: string): boolean =>
    !everywhere.includes(`'./${file.replace('src/styles/', '')}'`);
  const both = [...users].filter(
    ([name, files]) => files.size > 1 && [...files].some(isOwn) && !shared.test(name),
  );
  expect(both.map(([name, files]) => `.${name}: ${[...files].join(', ')}`)).toEqual([]);
});
