import { execFileSync } from 'node:child_process';
import {
  copyFileSync,
  linkSync,
  mkdirSync,
  readFileSync,
  readdirSync,
  readlinkSync,
  rmSync,
  symlinkSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { collect, program } from '../../src/site/commands/run.ts';
import { serve } from '../../src/site/commands/serve.ts';
import { filesUnder, root } from '../support/files.ts';
import { brokenLinks } from '../support/links.ts';
import { kept, studio } from '../support/kept.ts';
import { look, wake } from '../support/site.ts';

// A second folder, deeper and differently named, with its own packages: nothing of the first may show in what it builds.
const second = '.reports/another place/the same site';
const sub = '.reports/sub';

/** Hard links where the disk allows it: the packages are half a gigabyte. */
function place(from: string, to: string): void {
  mkdirSync(dirname(to), { recursive: true });
  try {
    linkSync(from, to);
  } catch {
    copyFileSync(from, to);
  }
}

function copyPackages(): void {
  const from = join(root, 'node_modules');
  const to = join(root, second, 'node_modules');
  for (const entry of readdirSync(from, { recursive: true, withFileTypes: true })) {
    const inside = join(entry.parentPath, entry.name).slice(from.length + 1);
    if (/^\.(astro|vite|vite-temp|cache|vitest)/.test(inside)) continue;
    if (entry.isFile()) place(join(from, inside), join(to, inside));
    else if (entry.isSymbolicLink()) {
      mkdirSync(dirname(join(to, inside)), { recursive: true });
      symlinkSync(readlinkSync(join(from, inside)), join(to, inside));
    }
  }
}

/** A build reads some of the settings that the test runner leaves in the environment: it gets none of them. */
const bare: NodeJS.ProcessEnv = Object.fromEntries(
  Object.keys(process.env)
    .filter((name) => !/^(PATH|HOME|USERPROFILE|SYSTEMROOT|TE?MP|TMPDIR|LANG)$/i.test(name))
    .map((name) => [name, undefined]),
);

async function build(outDir: string, env: NodeJS.ProcessEnv): Promise<void> {
  const astro = program('astro').replace(root, join(root, second));
  const { code, output } = await collect(astro, ['build', '--outDir', outDir], {
    cwd: join(root, second),
    env: { ...bare, ...env },
  });
  if (code !== 0) throw new Error(output.slice(-3000));
}

const clear = (): void => {
  for (const folder of [dirname(second), sub])
    rmSync(join(root, folder), { recursive: true, force: true });
};

beforeAll(async () => {
  clear();
  const listed = execFileSync(
    'git',
    ['ls-files', '-z', '--cached', '--others', '--exclude-standard'],
    {
      cwd: root,
      encoding: 'utf8',
    },
  );
  for (const file of listed.split('\0').filter((name) => name !== '')) {
    // Only the sources: a file taken out but not yet committed is still listed.
    try {
      mkdirSync(dirname(join(root, second, file)), { recursive: true });
      copyFileSync(join(root, file), join(root, second, file));
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error;
    }
  }
  copyPackages();
  await build('dist', {});
  await build(join(root, sub), { SBN_BASE: '/sub/' });
}, 400_000);

afterAll(clear);

describe('a build', () => {
  it('is the same to the byte from another folder', () => {
    const other = `${second}/dist`;
    const names = (folder: string): string[] =>
      filesUnder(folder).map((file) => file.slice(folder.length + 1));
    expect(names(other).filter((name) => !names('dist').includes(name))).toEqual([]);
    expect(names('dist').filter((name) => !names(other).includes(name))).toEqual([]);
    const differing = names('dist').filter(
      (name) =>
        !readFileSync(join(root, 'dist', name)).equals(readFileSync(join(root, other, name))),
    );
    expect(differing).toEqual([]);
  });

  it('names no folder of the machine that made it', () => {
    const telling = filesUnder('dist').filter((file) =>
      readFileSync(join(root, file)).includes(root),
    );
    expect(telling).toEqual([]);
  });
});

describe('a build for /sub/', () => {
  it('has no link, anchor, picture or part that leads nowhere', () => {
    const { broken, checked } = brokenLinks(sub, '/sub/');
    expect(broken).toEqual([]);
    expect(checked).toBeGreaterThan(300);
  });

  it('comes alive there', async () => {
    const site = await serve({ folder: join(root, sub), base: '/sub/', port: 0 });
    try {
      const failed: string[] = [];
      await look('about:blank', {}, async (page) => {
        page.on('response', (answer) => {
          if (answer.status() >= 400) failed.push(answer.url());
        });
        page.on('console', (message) => {
          if (message.type() === 'error') failed.push(message.text());
        });
        await page.goto(`${site.url}focal-length/angle-of-view/`);
        await wake(page);
        expect(await page.locator('[data-plate] .result').first().textContent()).toMatch(/\d/);
      });
      expect(failed).toEqual([]);
    } finally {
      await site.close();
    }
  });

  it('is kept there for use without a signal, and keeps to its own place', async () => {
    const there = await studio(sub, '/sub/');
    try {
      const page = await there.context.newPage();
      await page.goto(`${there.site.url}plates/`);
      expect(await kept(page)).toBe(there.site.url);
      const places = await page.evaluate(async () => {
        const link = document.querySelector<HTMLLinkElement>('link[rel=manifest]');
        const manifest = (await (await fetch(link?.href ?? '')).json()) as Record<string, unknown>;
        return { ...manifest, caches: await caches.keys() };
      });
      expect(places).toMatchObject({ id: '/sub/', start_url: '/sub/', scope: '/sub/' });
      for (const name of places.caches) expect(name).toContain('/sub/');
      await there.cutOff();
      await page.goto(`${there.site.url}focal-length/angle-of-view/?focal-length=35mm`);
      await wake(page);
      expect(await page.locator('[data-plate] .result').first().textContent()).toMatch(/\d/);
      await page.goto(`${there.site.url}nowhere/`);
      expect(await page.locator('h1').textContent()).toBe('There is no page here');
    } finally {
      await there.end();
    }
  });
});
