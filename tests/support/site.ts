import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, inject } from 'vitest';
import { startChromium } from '../../src/site/commands/browser.ts';
import { readLessons } from './content.ts';
import { filesUnder, root } from './files.ts';

/** A built page: its file, and its address below the base path. */
export interface Built {
  readonly file: string;
  readonly path: string;
}

/** Every page of a built site, by address. */
export function pagesIn(folder = 'dist'): Built[] {
  return filesUnder(folder)
    .filter((file) => file.endsWith('.html'))
    .map((file) => ({
      file,
      path: file.slice(folder.length + 1).replace(/(^|\/)index\.html$/, '$1'),
    }));
}

export const pages = pagesIn();
export const markupOf = ({ file }: Built): string => readFileSync(join(root, file), 'utf8');
export const withPlates = pages.filter((page) => markupOf(page).includes('data-plate='));
/** Addresses of the lessons of all units, in reading order. */
export const curriculum = readLessons().map(({ unit, slug }) => `${unit}/${slug}/`);
export const lessons = pages.filter(({ path }) => curriculum.includes(path));
/** Each plate alone. */
export const plates = pages.filter(({ path }) => /^plates\/[^/]+\/$/.test(path));

/** Titles for tests: the address as readers see it. */
export const titled = (all: readonly Built[]): [string, Built][] =>
  all.map((page) => [`/${page.path}`, page]);

/** Kilobytes of a thousand bytes after gzip, as the budgets count them. */
export const kilobytes = (bytes: string | Buffer): number =>
  gzipSync(bytes, { level: 9 }).byteLength / 1000;

export const addressOf = ({ path }: Built, query = ''): string => `${inject('url')}${path}${query}`;

let browser: Promise<Browser> | undefined;

const usual = { locale: 'en-GB', timezoneId: 'Europe/London' };

/** A fresh reader, with nothing in the cache; the browser is shared by one file of tests and closed after it. */
export async function reader(options: BrowserContextOptions = {}): Promise<BrowserContext> {
  browser ??= startChromium(inject('chromium'));
  const context = await (
    await browser
  ).newContext({
    viewport: { width: 390, height: 844 },
    ...usual,
    serviceWorkers: 'block',
    ...options,
  });
  // Blocked is said on the console; here the page just hears nothing, as from a worker that is slow to come.
  if (options.serviceWorkers !== 'allow') await context.addInitScript(withoutWorker);
  return context;
}

/** Runs in the page before its own scripts. */
function withoutWorker(): void {
  if ('serviceWorker' in navigator)
    ServiceWorkerContainer.prototype.register = () => new Promise(() => undefined);
}

afterAll(async () => {
  await (await browser)?.close();
  browser = undefined;
});

/** Windows that stand open and idle, by what cannot be changed in an open one. */
const idle = new Map<string, Page[]>();

/**
 * Opens a page for a reader and hands it on. The window is used again for the next look of its kind, since a first page
 * in a new window costs a second of a core, and any later one a sixth of that. Nothing of one look reaches the next: each
 * has a document of its own, screen, media, storage, permissions, listeners and pointer are set back, and a window in
 * which anything failed is thrown away.
 */
export async function look<T>(
  address: string,
  options: BrowserContextOptions,
  use: (page: Page) => Promise<T>,
): Promise<T> {
  const {
    viewport = { width: 390, height: 844 },
    colorScheme = 'light',
    reducedMotion = 'no-preference',
    forcedColors = 'none',
    ...lasting
  } = options;
  const kind = JSON.stringify(Object.entries({ ...usual, ...lasting }).sort());
  const page = idle.get(kind)?.pop() ?? (await (await reader(lasting)).newPage());
  try {
    if (viewport !== null) await page.setViewportSize(viewport);
    await page.emulateMedia({ media: 'screen', colorScheme, reducedMotion, forcedColors });
    await page.goto(address, { waitUntil: 'load' });
    const seen = await use(page);
    await leave(page);
    idle.set(kind, [...(idle.get(kind) ?? []), page]);
    return seen;
  } catch (error) {
    await page.context().close();
    throw error;
  }
}

const heard = ['console', 'dialog', 'pageerror', 'request', 'requestfailed', 'response'] as const;

/** Sets a window back to what a new one is. */
export async function leave(page: Page): Promise<void> {
  for (const event of heard) page.removeAllListeners(event);
  if (page.url() !== 'about:blank') {
    await page.evaluate(() => {
      localStorage.clear();
      sessionStorage.clear();
    });
  }
  await page.context().clearPermissions();
  // Outside the window, where it hovers over nothing.
  await page.mouse.move(-1, -1);
  await page.goto('about:blank');
}

/** Brings every calculator of a page into sight and waits until it has come alive; ends at the foot of the page. */
export async function wake(page: Page): Promise<void> {
  const plates = page.locator('astro-island, [data-plate]');
  for (let index = 0; index < (await plates.count()); index += 1) {
    await plates.nth(index).evaluate(async (plate) => {
      // An island has no box of its own; its first child has.
      const box = plate.firstElementChild ?? plate;
      box.scrollIntoView({ block: 'center', behavior: 'instant' });
      for (const end = performance.now() + 15_000; plate.hasAttribute('ssr');) {
        if (performance.now() > end) throw new Error(`${plate.id} did not come alive.`);
        await new Promise((done) => setTimeout(done, 20));
      }
    });
  }
  await page.evaluate(() => {
    scrollTo({ top: document.documentElement.scrollHeight, behavior: 'instant' });
  });
}

/** Until what the reader did has been set on the page, which happens at its next frame. */
export const nextFrames = (page: Page): Promise<void> =>
  page.evaluate(
    () =>
      new Promise<void>((done) => {
        requestAnimationFrame(() => {
          requestAnimationFrame(() => {
            done();
          });
        });
      }),
  );

/** Runs a task for each item, a few at a time, in order of the items. */
export async function pool<T, R>(
  items: readonly T[],
  workers: number,
  task: (item: T) => Promise<R>,
): Promise<R[]> {
  const results: R[] = [];
  let next = 0;
  const work = async (): Promise<void> => {
    for (let index = next++; index < items.length; index = next++) {
      results[index] = await task(items[index] as T);
    }
  };
  await Promise.all(Array.from({ length: workers }, work));
  return results;
}
