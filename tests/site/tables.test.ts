import { readFile } from 'node:fs/promises';
import { parse } from 'csv-parse/sync';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { showResult } from '../../src/formula/show.ts';
import { workedCell } from '../../src/site/quick-table.ts';
import { readTables } from '../support/tables.ts';
import { addressOf, look, pages, type Built } from '../support/site.ts';

const tables = readTables();
const pageOf = (path: string): Built => {
  const found = pages.find((one) => one.path === path);
  if (!found) throw new Error(`The built site has no page ${path}.`);
  return found;
};
const at = (id: string): string => addressOf(pageOf(`tables/${id}/`));
const bare = { javaScriptEnabled: false } as const;
const wide = { width: 1280, height: 900 } as const;

const shown = (page: Page) => page.locator('.panel').filter({ visible: true });
const grid = (page: Page): Promise<string> => shown(page).locator('table').innerText();
const sheets = (pdf: Buffer): number => pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length ?? 0; // prettier-ignore

it('lists every table by its question, and each has its page', () =>
  look(addressOf(pageOf('tables/')), bare, async (page) => {
    const hrefs = await page.locator('main a').evaluateAll((all) => all.map((link) => link.getAttribute('href'))); // prettier-ignore
    for (const { id, file } of tables) {
      expect(hrefs).toContain(`/tables/${id}/`);
      expect(await page.getByRole('link', { name: file.question, exact: true }).count()).toBe(1);
    }
  }));

describe.concurrent.each(tables.map((one) => [one.id, one] as const))('%s', (id, one) => {
  const [panel] = one.panels;
  const worked = panel && workedCell(panel);

  it('shows one grid, changes it without a script, and prints on one sheet', () =>
    look(at(id), { ...bare, viewport: wide }, async (page) => {
      expect(await shown(page).count()).toBe(1);
      expect(await page.locator('table td').count()).toBeGreaterThan(10);
      const before = await grid(page);
      await page.emulateMedia({ media: 'print' });
      for (const format of ['A4', 'Letter'] as const) {
        const pdf = await page.pdf({ format, preferCSSPageSize: false });
        expect(sheets(pdf), format).toBe(1);
      }
      await page.emulateMedia({ media: 'screen' });
      if (one.choices.length > 1) {
        await page.locator('[name=choice]').last().check();
        expect(await shown(page).count()).toBe(1);
        const place = String(one.choices.length - 1);
        expect(await shown(page).getAttribute('data-choice')).toBe(place);
      }
      if (one.systems.length > 1) {
        await page.locator('[name=units][value=imperial]').check();
        expect(await shown(page).count()).toBe(1);
        expect(await shown(page).getAttribute('data-system')).toBe('imperial');
        expect(await grid(page)).not.toBe(before);
      }
    }));

  it('opens the plate with a cell’s values, and the plate says the same', () =>
    look(at(id), { viewport: wide }, async (page) => {
      if (!panel || !worked) throw new Error(`${id} has no cell.`);
      const row = panel.down.heads.indexOf(worked.line);
      const column = panel.across.heads.indexOf(worked.column);
      await shown(page).locator('tbody tr').nth(row).locator('td').nth(column).locator('a').click();
      await page.waitForURL(`**/plates/${one.formula.id}/?${worked.shown.query}`);
      const plate = page.locator(`[data-plate="${one.formula.id}"]`);
      const columns = one.file.across ? one.columns : one.columns.slice(column, column + 1);
      for (const { key } of columns) {
        const output = one.formula.outputs[key];
        if (!output) throw new Error(`no result ${key}`);
        const text = showResult(output, worked.shown.cell.results?.[key]);
        await plate.filter({ hasText: text.replaceAll('\u00a0', ' ') }).waitFor();
      }
    }));
});

it('keeps its headings, lights line and column, and is passed by one link', () =>
  look(at('depth-of-field'), {}, async (page) => {
    const box = shown(page).locator('.grid-table');
    await box.evaluate((area) => {
      area.scrollTo(1000, 300);
    });
    const frame = await box.boundingBox();
    const corner = await shown(page).locator('.heads th').first().boundingBox();
    const side = await shown(page).locator('tbody th').last().boundingBox();
    if (!frame || !corner || !side) throw new Error('nothing laid out');
    expect(Math.abs(corner.x - frame.x)).toBeLessThan(2);
    expect(Math.abs(side.x - frame.x)).toBeLessThan(2);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390); // prettier-ignore

    const cell = shown(page).locator('tbody tr').nth(4).locator('td').nth(6);
    const paint = (where: ReturnType<Page['locator']>) =>
      where.evaluate((one) => {
        const { backgroundColor, textDecorationLine } = getComputedStyle(one);
        return [backgroundColor, textDecorationLine] as const;
      });
    const head = shown(page).locator('.heads th').nth(7);
    const far = shown(page).locator('tbody tr').nth(9).locator('td').nth(6);
    const plain = await paint(far);
    await cell.locator('a').focus();
    expect((await paint(far))[0]).not.toBe(plain[0]);
    expect((await paint(head))[1]).toBe('underline');
    const rowHead = shown(page).locator('tbody tr').nth(4).locator('th');
    expect((await paint(rowHead))[1]).toBe('underline');
    expect(await paint(shown(page).locator('tbody tr').nth(9).locator('td').nth(3))).toEqual(plain);

    await page.locator('.quick-skip').focus();
    await page.keyboard.press('Enter');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('after-depth-of-field');
  }));

it('is taken away as a file that another’s parser reads, without a script', () =>
  look(at('depth-of-field'), bare, async (page) => {
    for (const [name, delimiter] of [
      ['CSV, commas', ','],
      ['CSV, semicolons', ';'],
    ] as const) {
      const [download] = await Promise.all([
        page.waitForEvent('download'),
        page.getByRole('link', { name, exact: true }).click(),
      ]);
      const text = await readFile(await download.path(), 'utf8');
      const rows: string[][] = parse(text, { delimiter, bom: true });
      expect(rows).toHaveLength(1 + 7 * 16 * 7);
      const found = rows.find(([format, distance, stop]) => format?.startsWith('36') && distance === '2' && stop === '4'); // prettier-ignore
      expect(Number(found?.[3]?.replace(',', '.')).toFixed(1)).toBe('12.2');
    }
  }));

it('says on paper what it was worked out with, when, and where it is from', () =>
  look(at('depth-of-field'), { viewport: wide }, async (page) => {
    await page.emulateMedia({ media: 'print' });
    const text = (await page.locator('[data-quick-table]').innerText()).replaceAll('\u00a0', ' ');
    for (const words of [
      /circle 0\.0288\d* mm/,
      /measured from the lens/,
      /marks as typed/,
      /Worked out \d+ \w+ 20\d\d/,
      /\/tables\/depth-of-field\//,
    ])
      // prettier-ignore
      expect(text).toMatch(words);
    expect(text).not.toMatch(/Print this table|imperial/);
  }));
