import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readHeaderRules, serve } from '../../src/site/commands/serve.ts';
import type { Served } from '../../src/site/commands/serve.ts';

const folder = mkdtempSync(join(tmpdir(), 'sbn-serve-'));
let site: Served;

beforeAll(async () => {
  mkdirSync(join(folder, 'about'));
  writeFileSync(join(folder, 'index.html'), '<h1>Home</h1>');
  writeFileSync(join(folder, 'about', 'index.html'), '<h1>About</h1>');
  writeFileSync(join(folder, '404.html'), '<h1>Not here</h1>');
  writeFileSync(join(folder, 'type.woff2'), 'font');
  writeFileSync(join(folder, '_headers'), '# all\n/*\n  X-Test: yes\n/about/\n  X-About: 1\n');
  site = await serve({ folder, base: '/sub/', port: 0 });
});

afterAll(async () => {
  await site.close();
  rmSync(folder, { recursive: true });
});

const get = (path: string): Promise<Response> =>
  fetch(new URL(path, site.url), { redirect: 'manual' });

describe('the server', () => {
  it.each([
    ['', 200, 'Home'],
    ['index.html', 200, 'Home'],
    ['about/', 200, 'About'],
    ['nowhere/', 404, 'Not here'],
    ['_headers', 404, 'Not here'],
    ['/', 404, 'Not here'],
    ['/elsewhere', 404, 'Not here'],
    ['%E0%A4%A', 404, 'Not here'],
    ['..%2f..%2f..%2f..%2fetc/passwd', 404, 'Not here'],
  ])('answers "%s" with %i', async (path, status, words) => {
    const answer = await get(path);
    expect(answer.status).toBe(status);
    expect(await answer.text()).toContain(words);
  });

  it('sends a folder address without its slash on to the one with it, query kept', async () => {
    expect((await get('about?f=85mm')).headers.get('location')).toBe('/sub/about/?f=85mm');
    expect((await get('/sub')).headers.get('location')).toBe('/sub/');
  });

  it('squeezes text and leaves fonts as they are', async () => {
    expect((await get('')).headers.get('content-encoding')).toBe('gzip');
    const font = await get('type.woff2');
    expect(font.headers.get('content-encoding')).toBeNull();
    expect(font.headers.get('content-type')).toBe('font/woff2');
  });

  it('adds the headers of _headers where their path fits', async () => {
    const home = (await get('')).headers;
    const about = (await get('about/')).headers;
    expect([home.get('x-test'), home.get('x-about')]).toEqual(['yes', null]);
    expect([about.get('x-test'), about.get('x-about')]).toEqual(['yes', '1']);
  });

  it('only hands out: it takes nothing', async () => {
    expect((await fetch(site.url, { method: 'POST', body: 'x' })).status).toBe(405);
  });

  it('says when its port is taken', async () => {
    const port = Number(new URL(site.url).port);
    await expect(serve({ folder, port })).rejects.toMatchObject({ code: 'EADDRINUSE' });
  });
});

it('refuses a _headers file whose lines are neither path nor header', () => {
  expect(() => readHeaderRules('/*\n  no colon here')).toThrow('expected "  Name: value"');
  expect(() => readHeaderRules('  X-Test: before any path')).toThrow(/under a path/);
});
