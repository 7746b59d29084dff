import type { Page, Response } from 'playwright-core';
import { inject } from 'vitest';
import { addressOf, kilobytes, leave, reader, wake } from './site.ts';
import type { Built } from './site.ts';

/** What one reader's visit to one page costs and stirs up. */
export interface Visit {
  /** Kilobytes of gzip, fetched and inline. */
  readonly script: number;
  readonly html: number;
  readonly css: number;
  readonly fonts: number;
  readonly messages: readonly string[];
  readonly violations: readonly string[];
  readonly strangers: readonly string[];
  readonly failures: readonly string[];
  /** How far things moved by themselves, in the browser's own measure: while the page and its fonts came in, and later. */
  readonly shiftWhileLoading: number;
  readonly shiftLater: number;
  /** What moved later. */
  readonly shifted: readonly string[];
}

interface Watched {
  violations: string[];
  shiftWhileLoading: number;
  shiftLater: number;
  shifted: string[];
  /** When the page and its fonts were there. */
  loaded: number;
}

/** Runs in the page before its own scripts. */
function watch(): void {
  const seen: Watched = {
    violations: [],
    shiftWhileLoading: 0,
    shiftLater: 0,
    shifted: [],
    loaded: Infinity,
  };
  Object.assign(globalThis, { watched: seen });
  addEventListener('securitypolicyviolation', (event) => {
    seen.violations.push(
      `${event.effectiveDirective} blocked ${event.blockedURI} (${event.sourceFile}:${event.lineNumber})`,
    );
  });
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) {
      const { value, hadRecentInput, sources } = entry as PerformanceEntry & {
        value: number;
        hadRecentInput: boolean;
        sources: { node: Node | null }[];
      };
      if (hadRecentInput) continue;
      if (entry.startTime < seen.loaded) {
        seen.shiftWhileLoading += value;
        continue;
      }
      seen.shiftLater += value;
      for (const { node } of sources) {
        const element = node instanceof Element ? node : node?.parentElement;
        seen.shifted.push(
          `${element?.tagName ?? '?'} ${element?.textContent.trim().slice(0, 40) ?? ''}`,
        );
      }
    }
  }).observe({ type: 'layout-shift', buffered: true });
}

const kindOf = (response: Response): string => {
  const type = response.headers()['content-type'] ?? '';
  if (type.includes('javascript')) return 'script';
  if (type.includes('html')) return 'html';
  if (type.includes('css')) return 'css';
  return type.includes('font') ? 'fonts' : 'other';
};

/** Windows between two visits. */
const waiting: Page[] = [];

/** A window that keeps nothing it has fetched: every visit in it pays in full, as a first one does. */
async function newcomer(): Promise<Page> {
  const page = await (await reader()).newPage();
  const devtools = await page.context().newCDPSession(page);
  await devtools.send('Network.enable');
  await devtools.send('Network.setCacheDisabled', { cacheDisabled: true });
  await page.addInitScript(watch);
  return page;
}

/** Loads a page, scrolls to its end, types into the first field, waits two seconds, and counts. */
export async function visit(built: Built): Promise<Visit> {
  const page = waiting.pop() ?? (await newcomer());
  const messages: string[] = [];
  const strangers: string[] = [];
  const failures: string[] = [];
  const bodies: Promise<readonly [string, number]>[] = [];
  page.on('console', (message) => {
    if (['error', 'warning', 'assert'].includes(message.type())) messages.push(message.text());
  });
  page.on('pageerror', (error) => messages.push(error.message));
  page.on('request', (request) => {
    if (!/^(data|blob):/.test(request.url()) && !request.url().startsWith(inject('url'))) {
      strangers.push(request.url());
    }
  });
  page.on('requestfailed', (request) => failures.push(request.url()));
  page.on('response', (response) => {
    if (response.status() >= 400) failures.push(`${response.status()} ${response.url()}`);
    bodies.push(response.body().then((body) => [kindOf(response), kilobytes(body)] as const));
  });

  try {
    await page.goto(addressOf(built), { waitUntil: 'load' });
    await page.evaluate(async () => {
      await document.fonts.ready;
      await new Promise((done) => setTimeout(done, 100));
      (globalThis as unknown as { watched: Watched }).watched.loaded = performance.now();
    });
    await wake(page);
    const field = page.locator('[data-plate] input:not([type=range])').first();
    if ((await field.count()) > 0) {
      await field.focus();
      await page.keyboard.press('End');
      await page.keyboard.type('0');
      await page.keyboard.press('Backspace');
    }
    await page.waitForTimeout(2000);
    const inline = await page.evaluate(() => {
      const text = (selector: string): string[] =>
        [...document.querySelectorAll(selector)].map((element) => element.textContent);
      return { script: text('script:not([src])'), css: text('style') };
    });
    const watched = await page.evaluate(
      () => (globalThis as unknown as { watched: Watched }).watched,
    );
    const total: Record<string, number> = {};
    const add = (kind: string, size: number): void => {
      total[kind] = (total[kind] ?? 0) + size;
    };
    for (const [kind, size] of await Promise.all(bodies)) add(kind, size);
    for (const text of inline.script) add('script', kilobytes(text));
    for (const text of inline.css) add('css', kilobytes(text));
    const of = (kind: string): number => total[kind] ?? 0;
    await leave(page);
    waiting.push(page);
    return {
      script: of('script'),
      html: of('html'),
      css: of('css'),
      fonts: of('fonts'),
      messages,
      strangers,
      failures,
      ...watched,
    };
  } catch (error) {
    // Whatever went wrong goes with its window.
    await page.context().close();
    throw error;
  }
}
