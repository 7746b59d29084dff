import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { readHeaderRules } from '../src/site/commands/serve.ts';
import { writeCopy } from '../src/site/offline/copy.ts';
import { inHex } from '../src/site/offline/in-hex.ts';

describe('the offline copy', () => {
  let folder: string;
  const read = (file: string): string => readFileSync(join(folder, file), 'utf8');
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'sbn-copy-'));
    for (const inside of ['plates', '_astro', 'tour']) mkdirSync(join(folder, inside));
    writeFileSync(join(folder, 'index.html'), '<h1>Home</h1>');
    writeFileSync(join(folder, 'plates/index.html'), '<h1>Plates</h1>');
    writeFileSync(join(folder, '_astro/live.abc.js'), 'export {};');
    writeFileSync(join(folder, 'a.csv'), 'm,s\r\n1,2\r\n');
    writeFileSync(join(folder, 'tour/lesson.png'), 'left out');
    writeFileSync(join(folder, '_headers'), 'left out');
  });
  afterEach(() => {
    rmSync(folder, { recursive: true });
  });

  it('lists pages by address, in order, and tells by content what may change under one name', async () => {
    const { files, edition } = await writeCopy(folder);
    const [, list = ''] = /const files = (\[.*\]);/.exec(read('sw.js')) ?? [];
    const listed = JSON.parse(list) as { url: string; revision: string | null }[];
    expect(listed.map(({ url }) => url)).toEqual([
      './',
      '_astro/live.abc.js',
      'a.csv',
      'plates/',
      'edition.json',
    ]);
    expect(listed.filter(({ revision }) => revision === null)).toEqual([
      { url: '_astro/live.abc.js', revision: null },
    ]);
    expect(files).toBe(listed.length);
    expect(JSON.parse(read('edition.json'))).toMatchObject({ files, edition });
    const [, library = ''] = /importScripts\('([^']*)'\)/.exec(read('sw.js')) ?? [];
    expect(existsSync(join(folder, library))).toBe(true);
  });

  it('is the same for the same files, however often it is made, and another for one byte', async () => {
    const { edition } = await writeCopy(folder);
    const before = read('sw.js');
    expect((await writeCopy(folder)).edition).toBe(edition);
    expect(read('sw.js')).toBe(before);
    writeFileSync(join(folder, 'a.csv'), 'm,s\r\n1,3\r\n');
    expect((await writeCopy(folder)).edition).not.toBe(edition);
    expect(read('sw.js')).not.toBe(before);
  });

  it('is refused beyond its limit, and names what is largest', async () => {
    writeFileSync(
      join(folder, 'a.csv'),
      Buffer.from(Array.from({ length: 5000 }, (_, i) => (i * i * 7919) % 251)),
    );
    await expect(writeCopy(folder, 100)).rejects.toThrow(
      /most it may be\. The largest files: a\.csv/,
    );
  });
});

it('asks hosts to look for a newer worker each time', () => {
  const rules = readHeaderRules(readFileSync('public/_headers', 'utf8'));
  const told = rules
    .filter(({ pattern }) => pattern.test('/sw.js'))
    .flatMap(({ headers }) => headers);
  expect(told).toContainEqual(['Cache-Control', 'no-cache']);
});

it('writes a pair of colours as systems outside the page read them', () => {
  const css = ':root { --ink: light-dark(oklch(0% 0 0), white); --x: red; }';
  expect(inHex(css, 'ink')).toEqual({ light: '#000000', dark: '#ffffff' });
  expect(() => inHex(css, 'x')).toThrow(/--x no pair/);
});
