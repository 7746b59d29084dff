import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, inject } from 'vitest';
import { startChromium } from '../../src/site/commands/browser.ts';
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
export const lessons = pages.filter(({ path }) => /^focal-length\/[^/]+\/$/.test(path));
/** One page of each kind that has calculators: the longest of the lessons, and each plate alone. */
export const plates = pages.filter(({ path }) => /^plates\/[^/]+\/$/.test(path));

/** Titles for tests: the address as readers see it. */
export const titled = (all: readonly Built[]): [string, Built][] =>
  all.map((page) => [`/${page.path}`, page]);

/** Kilobytes of a thousand bytes after gzip, as the budgets count them. */
export const kilobytes = (bytes: string | Buffer): number =>
  gzipSync(bytes, { level: 9 }).byteLength / 1000;

export const addressOf = ({ path }: Built, query = ''): string => `${inject('url')}${path}${query}`;

let browser: Promise<Browser> | undefined;

/** A fresh reader; the browser is shared by one file of tests and closed after it. */
export async function reader(options: BrowserContextOptions = {}): Promise<BrowserContext> {
  browser ??= startChromium(inject('chromium'));
  return (await browser).newContext({
    viewport: { width: 390, height: 844 },
    locale: 'en-GB',
    timezoneId: 'Europe/London',
    serviceWorkers: 'block',
    ...options,
  });
}

afterAll(async () => {
  await (await browser)?.close();
  browser = undefined;
});

/** Opens a page for a reader, hands it on, and closes the reader's window whatever happens. */
export async function look<T>(
  address: string,
  options: BrowserContextOptions,
  use: (page: Page) => Promise<T>,
): Promise<T> {
  const context = await reader(options);
  try {
    const page = await context.newPage();
    await page.goto(address, { waitUntil: 'load' });
    return await use(page);
  } finally {
    await context.close();
  }
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
