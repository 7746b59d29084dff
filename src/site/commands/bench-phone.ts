import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { startChromium } from './browser.ts';
import { root } from './run.ts';
import { serve } from './serve.ts';

/** "phone", the one profile that every limit is measured on. */
export const phone = {
  cpu: 4,
  bitsPerSecond: 1_600_000,
  /** Milliseconds. */
  latency: 150,
  screen: { width: 390, height: 844 },
  saying: 'processor 4 times slower, 1.6 Mbit/s, 150 ms',
} as const;

/** The middle one of an odd number of measurements. */
export const median = (all: readonly number[]): number =>
  [...all].sort((a, b) => a - b)[Math.floor(all.length / 2)] ?? Number.NaN;

/** A line of the bench, and whether it keeps its limit. */
export interface Line {
  readonly pass: boolean;
  readonly text: string;
}

/** Prints lines as they are measured, and counts those that fail. */
export class Sheet {
  misses = 0;

  heading(text: string): void {
    console.log(`\n${text}`);
  }

  line({ pass, text }: Line): void {
    if (!pass) this.misses += 1;
    console.log(`${pass ? 'pass' : 'FAIL'}  ${text}`);
  }

  note(text: string): void {
    console.log(`      ${text}`);
  }
}

/** Milliseconds against their limit. */
export const against = (name: string, milliseconds: number, limit: number): Line => ({
  pass: milliseconds <= limit,
  text: `${name.padEnd(52)} ${milliseconds.toFixed(1).padStart(7)} ms  limit ${limit.toFixed(1)} ms`,
});

/**
 * The folder of the built site.
 * Throws: Error when nothing is built.
 */
export function built(): string {
  const folder = join(root, 'dist');
  if (!existsSync(join(folder, 'index.html')))
    throw new Error('There is no built site to time: run npm run build first.');
  return folder;
}

/** Serves the built site and starts a browser for as long as the work takes. */
export async function withSite(
  work: (url: string, browser: Browser) => Promise<void>,
  more: readonly string[] = [],
): Promise<void> {
  const site = await serve({ folder: built(), port: 0 });
  try {
    const browser = await startChromium(undefined, more);
    try {
      await work(site.url, browser);
    } finally {
      await browser.close();
    }
  } finally {
    await site.close();
  }
}

/** A reader's first visit: a context of its own with nothing kept, and a page as slow as the phone is. */
export async function newPhone(
  browser: Browser,
  options: BrowserContextOptions = {},
): Promise<Page> {
  const context = await browser.newContext({ viewport: phone.screen, ...options });
  const page = await context.newPage();
  await slowDown(page);
  return page;
}

/** Makes a page slow as the phone is: processor and network. */
export async function slowDown(page: Page): Promise<void> {
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: phone.cpu });
  await session.send('Network.emulateNetworkConditions', {
    offline: false,
    latency: phone.latency,
    downloadThroughput: phone.bitsPerSecond / 8,
    uploadThroughput: phone.bitsPerSecond / 8,
  });
}
