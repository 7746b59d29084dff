import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { key } from '../../src/site/storage.ts';
import { progress, theme } from '../../src/site/kept.ts';
import { addressOf, lessons, look, type Built } from '../support/site.ts';

const home: Built = { file: 'dist/index.html', path: '' };
const [lesson] = lessons;
if (!lesson) throw new Error('There is no lesson to tick.');

const progressKey = key(progress.thing, progress.version);
const themeKey = key(theme.thing, theme.version);
const switched = (page: Page): Promise<string | null> =>
  page.evaluate(() => document.documentElement.getAttribute('data-theme'));
const kept = (page: Page, name: string): Promise<string | null> =>
  page.evaluate((key) => localStorage.getItem(key), name);
const tick = (page: Page) => page.locator('[data-progress-tick]');
const fetched = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    performance
      .getEntriesByType('resource')
      .map(({ name }) => /([\w-]+)\.[\w-]+\.js$/.exec(name)?.[1] ?? ''),
  );

describe('a page', () => {
  it('spares a newcomer the code for the theme, for ticks and for storage', async () => {
    await look(addressOf(lesson), {}, async (page) => {
      await page.keyboard.press('Escape');
      await page.locator('h1').click();
      const parts = await fetched(page);
      expect(parts.length).toBeGreaterThan(2);
      for (const part of ['theme', 'ticks', 'kept']) expect(parts, part).not.toContain(part);
      await page.locator('[data-theme-switch]').click();
      await expect.poll(() => fetched(page)).toContain('theme');
      expect(await fetched(page)).not.toContain('ticks');
    });
  });

  it('turns the theme round: light, dark, the system’s; and remembers it from the first paint on', async () => {
    await look(addressOf(home), {}, async (page) => {
      const press = page.locator('[data-theme-switch]');
      await press.click();
      await expect.poll(() => switched(page)).toBe('light');
      await press.locator('span:visible').click();
      await expect.poll(() => switched(page)).toBe('dark');
      expect(await kept(page, themeKey)).toBe('"dark"');
      await page.reload({ waitUntil: 'commit' });
      await page.waitForSelector('body');
      expect(await switched(page)).toBe('dark');
      await press.click();
      await expect.poll(() => switched(page)).toBeNull();
      expect(await kept(page, themeKey)).toBeNull();
    });
  });
});

describe('a lesson’s tick', () => {
  it('is set by a press, kept, counted and shown on the first page, and taken off again', async () => {
    await look(addressOf(lesson), {}, async (page) => {
      expect(await kept(page, progressKey)).toBeNull();
      await tick(page).click();
      await expect.poll(() => tick(page).textContent()).toBe('Done: take the tick off');
      expect(await tick(page).getAttribute('aria-pressed')).toBe('true');
      const id = (await tick(page).getAttribute('data-progress-tick')) ?? '';
      expect(await kept(page, progressKey)).toBe(JSON.stringify([id]));
      expect(await page.locator('[data-progress-said]').textContent()).toMatch(/^Ticked/);

      await page.goto(addressOf(home));
      await expect.poll(() => page.locator(`[data-tick="${id}"]`).textContent()).toBe('done');
      expect(await page.locator('[data-progress-count]').textContent()).toMatch(
        /^1 of \d+ lessons/,
      );

      await page.goto(addressOf(lesson));
      await expect.poll(() => tick(page).getAttribute('aria-pressed')).toBe('true');
      await tick(page).click();
      await expect.poll(() => kept(page, progressKey)).toBeNull();
      expect(await tick(page).textContent()).toMatch(/^\s*Tick this lesson off/);
    });
  });

  it('shows in another window at once', async () => {
    await look(addressOf(home), {}, async (page) => {
      const other = await page.context().newPage();
      await other.goto(addressOf(lesson));
      await tick(other).click();
      await expect
        .poll(() => page.locator('[data-progress-count]').textContent())
        .toMatch(/^1 of \d+ lessons/);
      await other.close();
    });
  });
});
