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
/** Waits for what is fetched on a press. */
const soon = <T>(see: () => Promise<T>) => expect.poll(see, { timeout: 10_000 });
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
      await soon(() => fetched(page)).toContain('theme');
      expect(await fetched(page)).not.toContain('ticks');
    });
  });

  it('turns the theme round: light, dark, the system’s; and remembers it from the first paint on', async () => {
    await look(addressOf(home), {}, async (page) => {
      const press = page.locator('[data-theme-switch]');
      await press.click();
      await soon(() => switched(page)).toBe('light');
      await press.locator('span:visible').click();
      await soon(() => switched(page)).toBe('dark');
      expect(await kept(page, themeKey)).toBe('"dark"');
      await page.reload({ waitUntil: 'commit' });
      await page.waitForSelector('body');
      expect(await switched(page)).toBe('dark');
      await press.click();
      await soon(() => switched(page)).toBeNull();
      expect(await kept(page, themeKey)).toBeNull();
    });
  });
});

describe('a lesson’s tick', () => {
  it('is set by a press, kept, counted and shown on the first page, and taken off again', async () => {
    await look(addressOf(lesson), {}, async (page) => {
      expect(await kept(page, progressKey)).toBeNull();
      await tick(page).click();
      await soon(() => tick(page).textContent()).toBe('Done: take the tick off');
      expect(await tick(page).getAttribute('aria-pressed')).toBe('true');
      const id = (await tick(page).getAttribute('data-progress-tick')) ?? '';
      expect(await kept(page, progressKey)).toBe(JSON.stringify([id]));
      expect(await page.locator('[data-progress-said]').textContent()).toMatch(/^Ticked/);

      await page.goto(addressOf(home));
      await soon(() => page.locator(`[data-tick="${id}"]`).textContent()).toBe('done');
      expect(await page.locator('[data-progress-count]').textContent()).toMatch(
        /^1 of \d+ lessons/,
      );

      await page.goto(addressOf(lesson));
      await soon(() => tick(page).getAttribute('aria-pressed')).toBe('true');
      await tick(page).click();
      await soon(() => kept(page, progressKey)).toBeNull();
      expect(await tick(page).textContent()).toMatch(/^\s*Tick this lesson off/);
    });
  });

  it('shows in another window at once', async () => {
    await look(addressOf(home), {}, async (page) => {
      const other = await page.context().newPage();
      await other.goto(addressOf(lesson));
      await tick(other).click();
      await soon(() => page.locator('[data-progress-count]').textContent()).toMatch(
        /^1 of \d+ lessons/,
      );
      await other.close();
    });
  });
});

describe('the running head', () => {
  it('has its six ways in one row on a phone, in two of three on the smallest, each wide enough for a finger', async () => {
    await look(addressOf(lesson), { viewport: { width: 390, height: 844 } }, async (page) => {
      const links = page.locator('.masthead li a');
      expect(await links.count()).toBe(6);
      for (const [width, rows] of [
        [1280, [6]],
        [390, [6]],
        [320, [3, 3]],
      ] as const) {
        await page.setViewportSize({ width, height: 844 });
        const tops = await links.evaluateAll((all) =>
          all.map((link) => Math.round(link.getBoundingClientRect().top)),
        );
        const found = [...new Set(tops)].map((top) => tops.filter((one) => one === top).length);
        expect(found, `${width} px`).toEqual(rows);
      }
      const boxes = await page
        .locator('.masthead :is(a, button)')
        .evaluateAll((all) =>
          all
            .map((one) => one.getBoundingClientRect())
            .map(({ width, height }) => Math.min(width, height)),
        );
      expect(Math.min(...boxes)).toBeGreaterThanOrEqual(24);
    });
  });

  it.each([
    ['plates/', 'Plates', 'page'],
    ['plates/room-fit/', 'Plates', 'true'],
    [lesson.path, 'Learn', 'true'],
  ])('marks on /%s the way there: %s', async (path, name, mark) => {
    await look(addressOf({ file: '', path }), {}, async (page) => {
      const marked = page.locator('.masthead [aria-current]');
      expect(await marked.count()).toBe(1);
      expect(await marked.textContent()).toContain(name);
      expect(await marked.getAttribute('aria-current')).toBe(mark);
    });
  });
});
