import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { addressOf, look, pages, titled, type Built } from '../support/site.ts';

const lists = pages.filter(({ path }) => /^checklists\/[^/]+\/$/.test(path));
const KEY = 'sbn:checklist:v1';

const pageAt = (path: string): Built => {
  const found = pages.find((one) => one.path === path);
  if (!found) throw new Error(`The built site has no page ${path}.`);
  return found;
};
const kept = (page: Page): Promise<unknown> =>
  page.evaluate((key) => {
    const text = localStorage.getItem(key);
    return text === null ? null : (JSON.parse(text) as unknown);
  }, KEY);
const box = (page: Page, list: string, item: string) =>
  page.locator(`[data-checklist="${list}"] input[data-item="${item}"]`);
const said = (page: Page) => page.locator('[data-checklist-said]');

it('has a page for each list, and one that names them all', async () => {
  expect(lists).toHaveLength(6);
  await look(addressOf(pageAt('checklists/')), {}, async (page) => {
    const hrefs = await page
      .locator('main a')
      .evaluateAll((all) => all.map((link) => link.getAttribute('href')));
    for (const { path } of lists) expect(hrefs).toContain(`/${path}`);
  });
});

describe('a tick', () => {
  it('is kept when the reader sets it and not before, comes back, and goes when taken off', async () => {
    await look(addressOf(pageAt('checklists/props/')), {}, async (page) => {
      expect(await kept(page)).toBeNull();
      await expect.poll(() => said(page).textContent()).toContain('in this browser only');

      await page.getByText('No loop, ring, net or handle', { exact: false }).click();
      expect(await box(page, 'props', 'no-loop').isChecked()).toBe(true);
      expect(await kept(page)).toEqual({ props: ['no-loop'] });
      expect(await said(page).textContent()).toMatch(/^1 of 16 ticked/);

      await page.reload();
      expect(await box(page, 'props', 'no-loop').isChecked()).toBe(true);
      expect(await said(page).textContent()).toMatch(/^1 of 16 ticked/);
      expect(new URL(page.url()).search + new URL(page.url()).hash).toBe('');

      await box(page, 'props', 'no-loop').uncheck();
      expect(await kept(page)).toBeNull();
      expect(await said(page).textContent()).toMatch(/^0 of 16 ticked/);
    });
  });

  it('is the same in the lesson as on the list’s own page, and other lists keep theirs', async () => {
    await look(addressOf(pageAt('checklists/safe-on-set/')), {}, async (page) => {
      await box(page, 'safe-on-set', 'one-spotter').check();
      await page.goto(addressOf(pageAt('the-sitting/safe-on-set/')));
      expect(await box(page, 'safe-on-set', 'one-spotter').isChecked()).toBe(true);
      await page.goto(addressOf(pageAt('checklists/props/')));
      await box(page, 'props', 'sanded').check();
      await page.locator('[data-checklist-clear]').click();
      expect(await kept(page)).toEqual({ 'safe-on-set': ['one-spotter'] });
    });
  });

  it('goes with all others of its list at one press, and leaves nothing behind', async () => {
    await look(addressOf(pageAt('checklists/file-care/')), {}, async (page) => {
      for (const item of ['two-copies', 'names-out', 'profile'])
        await box(page, 'file-care', item).check();
      expect(await kept(page)).toEqual({ 'file-care': ['two-copies', 'names-out', 'profile'] });
      await page.locator('[data-checklist-clear]').click();
      expect(await page.locator('input[data-item]:checked').count()).toBe(0);
      expect(await said(page).textContent()).toMatch(/^Cleared/);
      expect(await page.evaluate(() => localStorage.length)).toBe(0);
      await page.reload();
      expect(await page.locator('input[data-item]:checked').count()).toBe(0);
    });
  });

  it('that is damaged in the storage harms nothing', async () => {
    await look(addressOf(pageAt('checklists/props/')), {}, async (page) => {
      await page.evaluate((key) => {
        localStorage.setItem(key, '{"props":[1]}');
      }, KEY);
      await page.reload();
      expect(await page.locator('input[data-item]:checked').count()).toBe(0);
      await box(page, 'props', 'paint').check();
      expect(await kept(page)).toEqual({ props: ['paint'] });
    });
  });

  it('is reached and set by the keyboard alone', async () => {
    await look(addressOf(pageAt('checklists/props/')), {}, async (page) => {
      await box(page, 'props', 'rope-fixed').focus();
      await page.keyboard.press('Space');
      await page.keyboard.press('Tab');
      await page.keyboard.press('Space');
      expect(await kept(page)).toEqual({ props: ['rope-fixed', 'no-loop'] });
    });
  });
});

describe.concurrent.each(titled(lists))('%s', (_, built) => {
  it('has rows of 44 px or more for a thumb, at 390 and at 320 px', async () => {
    await look(addressOf(built), { viewport: { width: 390, height: 844 } }, async (page) => {
      for (const width of [390, 320]) {
        await page.setViewportSize({ width, height: 844 });
        const rows = await page
          .locator('label:has(input[data-item])')
          .evaluateAll((all) => all.map((row) => row.getBoundingClientRect().height));
        expect(rows.length).toBeGreaterThan(9);
        expect(Math.min(...rows)).toBeGreaterThanOrEqual(44);
      }
    });
  });

  it('is a list with boxes and its caution without script, and asks for no button', async () => {
    await look(addressOf(built), { javaScriptEnabled: false }, async (page) => {
      const boxes = page.locator('input[data-item]');
      expect(await boxes.count()).toBeGreaterThan(9);
      await boxes.first().check();
      expect(await boxes.first().isChecked()).toBe(true);
      expect(await page.locator('[data-checklist-clear]').isVisible()).toBe(false);
      expect(await page.locator('.checklist .caution').isVisible()).toBe(true);
      expect(await page.locator('noscript').textContent()).toMatch(/until the page is left/);
    });
  });

  it('prints on one sheet of A4, every line with its box', async () => {
    await look(addressOf(built), { viewport: { width: 680, height: 1010 } }, async (page) => {
      await page.locator('input[data-item]').first().check();
      await page.emulateMedia({ media: 'print' });
      const boxes = await page.locator('input[data-item]').evaluateAll((all) =>
        all.map((one) => {
          const { width, height } = one.getBoundingClientRect();
          const { borderTopStyle, borderTopWidth } = getComputedStyle(one);
          return {
            seen: width > 9 && height > 9,
            edge: borderTopStyle === 'solid' && parseFloat(borderTopWidth) > 0,
          };
        }),
      );
      expect(boxes.filter(({ seen, edge }) => !seen || !edge)).toEqual([]);
      expect(await page.locator('[data-checklist-clear]').isVisible()).toBe(false);
      const pdf = (await page.pdf({ format: 'A4', preferCSSPageSize: true })).toString('latin1');
      expect(pdf.match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
    });
  });
});
