import axe from 'axe-core';
import { parse } from 'csv-parse/sync';
import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { describe, expect, inject, it } from 'vitest';
import { evaluateText } from '../../src/formula/evaluate.ts';
import { sticksOut, tooSmall } from '../support/measure.ts';
import { recordOf } from '../support/records.ts';
import { look } from '../support/site.ts';

const address = (query = ''): string => `${inject('url')}tables/own/${query}`;
const still = { reducedMotion: 'reduce', acceptDownloads: true } as const;

const fixed =
  'format=36x24&f-number=f/4&pupil-magnification=1&marks=typed&measured-from=lens' as const;
/** 100 × 100, and 10,000 × 1. */
const SQUARE = `?formula=depth-of-field&down=subject-distance&across=focal-length&show=total&subject-distance=1m..4.96m..0.04m&focal-length=20mm..119mm..1mm&${fixed}`;
const LONG = `?formula=depth-of-field&down=subject-distance&across=results&show=total&subject-distance=1m..100.99m..0.01m&focal-length=85mm&${fixed}`;

/** The page as a reader meets it, once its script has come. */
const on = async (page: Page) => {
  await page.locator('[data-live]').waitFor({ state: 'attached' });
  const table = page.getByRole('region').getByRole('table');
  return {
    table,
    caption: table.locator('caption'),
    cells: table.locator('td'),
    formula: page.getByLabel('Formula', { exact: true }),
    side: (name: 'Down' | 'Across') => page.getByRole('group', { name, exact: true }),
    press: (name: string) => page.getByRole('button', { name, exact: true }).click(),
    notice: page.locator('.result-notice'),
    says: (words: string | RegExp) => expect.poll(() => table.locator('caption').textContent()).toMatch(words), // prettier-ignore
    whole: () => page.locator('[data-whole]').waitFor({ state: 'attached', timeout: 50_000 }),
    texts: () => table.locator('tbody tr').evaluateAll((rows) => rows.map((row) => [...row.children].map((cell) => cell.textContent.replaceAll('\u00a0', ' ')))), // prettier-ignore
  };
};

const saved = async (page: Page, button: string, delimiter: string) => {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: button, exact: true }).click(),
  ]);
  const text = await readFile(await download.path(), 'utf8');
  const rows: string[][] = parse(text, { delimiter, bom: true });
  return { name: download.suggestedFilename(), text, rows };
};

describe('your own table', () => {
  it('stands there without a script', () =>
    look(address(), { ...still, javaScriptEnabled: false }, async (page) => {
      expect(await page.getByRole('table').locator('td').count()).toBe(16 * 7);
      const link = page.getByRole('table').locator('td a').first();
      expect(await link.getAttribute('href')).toContain('plates/depth-of-field/?');
      expect(await page.getByLabel('Formula').isVisible()).toBe(false);
    }));

  it('gives a formula’s table at once, and one for what is chosen to run', () =>
    look(address(), still, async (page) => {
      const own = await on(page);
      await own.says(/^Depth of field: total/);
      await own.formula.selectOption('framing-distance');
      await own.says(
        /^Framing distance: subject distance, by frame height down and focal length across$/,
      );
      await own.side('Across').getByLabel('What goes across').selectOption('format');
      await own.says(/frame height down and format across$/);
      await own.side('Across').getByLabel('4 × 5 in sheet film').uncheck();
      await expect.poll(() => own.table.locator('thead th').count()).toBe(7);
      await own.side('Down').getByLabel('a list').check();
      await own.side('Down').getByLabel('Values').fill('0,5; 0,9');
      await expect.poll(() => own.table.locator('tbody th').allTextContents()).toEqual(['0,50\u00a0m', '0,90\u00a0m']); // prettier-ignore
      // What stays the same, with its unit and its error beside it; the typed text stands.
      await page.locator('summary', { hasText: 'The same in every cell' }).click();
      const focal = page.getByLabel('Focal length', { exact: true });
      await focal.fill('fifty');
      await expect.poll(() => page.locator('#own-fixed-focal-length-note').textContent()).toMatch(/not a number/); // prettier-ignore
      expect(await focal.inputValue()).toBe('fifty');
      const before = await own.texts();
      await focal.fill('50');
      await expect.poll(own.texts).not.toEqual(before);
      const now = await own.texts();
      const said = evaluateText(
        recordOf('framing-distance'),
        [['format', '36x24'], ['orientation', 'portrait'], ['focal-length', '50mm'], ['frame-height', '0.5m']], // prettier-ignore
        { decimal: 'comma' },
      );
      expect(now[0]?.[1]).toBe(said.results['subject-distance']?.text);
      await own.press('imperial');
      await expect.poll(() => own.table.locator('tbody th').first().textContent()).toBe('1′\u00a07¾″'); // prettier-ignore
    }));

  it('comes back from its own link, and answers any other in words', () =>
    look(
      address(),
      { ...still, permissions: ['clipboard-read', 'clipboard-write'] },
      async (page) => {
        const own = await on(page);
        await own.formula.selectOption('f-stop');
        await own.says(/^f-stop|Stops|F-stop/i);
        await own.side('Down').getByLabel('Values').fill('f/2; f/4');
        await expect.poll(() => own.cells.count()).toBe(14);
        await own.press('Copy link');
        await expect.poll(() => own.notice.textContent()).toBe('Link copied.');
        const link = await page.evaluate(() => navigator.clipboard.readText());
        const texts = await own.texts();
        await page.goto(link);
        const again = await on(page);
        await expect.poll(again.texts).toEqual(texts);
        expect(await again.notice.textContent()).toBe('');
        for (const [query, why] of [
          ['?formula=nothing', /names no formula that is here/],
          [
            '?formula=depth-of-field&down=subject-distance&subject-distance=1m..1000000000m..0.1m',
            /A table holds/,
          ],
          [`${SQUARE}&x=${'9'.repeat(7000)}`, /names no formula|too long/],
          ['?formula=gel&down=<script>alert(1)</script>', /which this table cannot/],
          ['?formula=f-stop&formula=gel', /names no formula/],
          ['?%00&__proto__=1', /names no formula/],
        ] as const) {
          await page.goto(address(query));
          const here = await on(page);
          await expect
            .poll(() => here.notice.textContent(), { message: query.slice(0, 80) })
            .toMatch(why);
          expect(await here.cells.count()).toBeGreaterThan(10);
        }
      },
    ));

  it('leaves as files that another’s parser reads back to the cells shown', () =>
    look(
      address(
        '?formula=depth-of-field&down=subject-distance&across=f-number&show=near;total&subject-distance=1m;2.5m&f-number=f/2;f/8&focal-length=85mm&format=36x24',
      ),
      still,
      async (page) => {
        const own = await on(page);
        const shown = await own.texts();
        for (const [button, separator] of [
          ['Save as CSV', ','],
          ['Save as CSV with semicolons', ';'],
        ] as const) {
          const { name, rows, text } = await saved(page, button, separator);
          expect(name).toMatch(/^depth-of-field.*\.csv$/);
          expect(text).toMatch(/\r\n$/);
          expect(rows[0]).toEqual([
            'subject distance (m)',
            ...['f/2', 'f/8'].flatMap((stop) => [`f-number ${stop}: near (m)`, `f-number ${stop}: total (cm)`]), // prettier-ignore
          ]);
          rows.slice(1).forEach((row, line) => {
            const numbers = row.map((one) => Number(one.replace(',', '.')));
            shown[line]?.forEach((cell, i) => {
              const inCell = Number.parseFloat(cell) * (cell.endsWith('cm') || i % 2 === 1 || i === 0 ? 1 : 100); // prettier-ignore
              expect(Math.abs((numbers[i] ?? 0) - inCell)).toBeLessThanOrEqual(0.006 * inCell);
            });
          });
        }
        const { rows } = await saved(page, 'Save as CSV', ',');
        const said = evaluateText(recordOf('depth-of-field'), [['format', '36x24'], ['focal-length', '85mm'], ['f-number', 'f/2'], ['subject-distance', '2.5m']]); // prettier-ignore
        expect(Number(rows[2]?.[1])).toBeCloseTo(said.results['near']?.value as number, 4);
        expect(Number(rows[2]?.[2])).toBeCloseTo(100 * (said.results['total']?.value as number), 3);
      },
    ));

  it('holds 10,000 cells and lets the page live meanwhile', () =>
    look(address(), still, async (page) => {
      const own = await on(page);
      await own.side('Across').getByLabel('What goes across').selectOption('focal length');
      await own.side('Across').getByLabel('from, to, step').check();
      for (const [part, text] of [
        ['From', '20'],
        ['To', '119'],
        ['Step', '1'],
      ] as const)
        await own.side('Across').getByLabel(part, { exact: true }).fill(text);
      await own.side('Down').getByLabel('To', { exact: true }).fill('4.96');
      await expect.poll(() => own.cells.count()).toBeGreaterThan(1000);
      await own.whole();
      const before = await own.cells.count();
      // Beats of the page's own clock, and how many cells stood there at each.
      await page.evaluate(() => {
        const beats: number[] = [];
        const busy: string[] = [];
        Object.assign(globalThis, { beats, busy });
        const beat = (): void => {
          beats.push(document.querySelectorAll('.grid-table td').length);
          const counted = document.querySelector(
            '.progress[data-busy] [data-counted]',
          )?.textContent;
          if (counted) busy.push(counted);
          requestAnimationFrame(beat);
        };
        requestAnimationFrame(beat);
      });
      await own.side('Down').getByLabel('Step', { exact: true }).fill('0.04');
      await expect.poll(() => own.cells.count(), { timeout: 50_000 }).toBe(10_000);
      await own.whole();
      const { beats, busy } = await page.evaluate(() => { const { beats, busy } = globalThis as unknown as { beats: number[]; busy: string[] }; return { beats, busy }; }); // prettier-ignore
      const partial = new Set(beats.filter((cells) => cells !== before && cells < 10_000));
      // How many there are is the machine’s pace; without slices there is none.
      expect(partial.size, 'frames between the slices').toBeGreaterThan(0);
      expect(busy.some((text) => /^[\d\u202f]+ of 10\u202f000 cells$/.test(text))).toBe(true);
      expect(await page.locator('.progress[data-busy]').count()).toBe(0);
      // One stop for Tab among ten thousand cells.
      expect(await own.table.locator('a[tabindex="0"]').count()).toBe(1);
      const more = own.side('Down').getByLabel('To', { exact: true });
      await more.fill('5');
      await expect.poll(() => own.notice.textContent()).toMatch(/10\u202f100 cells.*a step of/);
      expect(await own.cells.count()).toBe(10_000);
    }));

  it('stops when told to, and gives way to what is asked for later', () =>
    look(address(), still, async (page) => {
      const own = await on(page);
      const start = async (): Promise<void> => {
        // As fast as a reader could, the moment the wait is spoken of.
        await own.side('Across').getByLabel('What goes across').selectOption('several results');
        for (const name of ['near', 'far', 'in front', 'behind', 'hyperfocal'])
          await page
            .getByRole('group', { name: 'Shown' })
            .getByLabel(name, { exact: true })
            .uncheck();
        await own.side('Down').getByLabel('Step', { exact: true }).fill('0.01');
      };
      await start();
      // That first wish has to be done with: its wait would be taken for the one to stop.
      await expect.poll(() => own.cells.count(), { timeout: 20_000 }).toBe(301);
      await own.whole();
      await page.evaluate(
        () =>
          new Promise<void>((done) => {
            const watch = new MutationObserver(() => {
              const progress = document.querySelector('.progress[data-busy]');
              if (!progress) return;
              watch.disconnect();
              progress.querySelector('button')?.click();
              done();
            });
            watch.observe(document.body, { subtree: true, attributes: true });
            const to = document.querySelector<HTMLInputElement>('#own-down-to');
            if (!to) return;
            to.value = '100.99';
            to.dispatchEvent(new Event('input', { bubbles: true }));
          }),
      );
      expect(await page.locator('[data-counted]').textContent()).toMatch(/^Stopped: .* of the 10\u202f000 cells stand here$/); // prettier-ignore
      const stood = await own.cells.count();
      expect(stood).toBeLessThan(10_000);
      await own.press('Work it out');
      // A later wish, while that is under way.
      await own.side('Down').getByLabel('To', { exact: true }).fill('1.05');
      await expect.poll(() => own.cells.count()).toBe(6);
      await own.whole();
      expect(await own.cells.count()).toBe(6);
      expect(await page.locator('.progress[data-busy]').count()).toBe(0);
    }));

  it('is gone through with the arrow keys, and a cell opens its plate', () =>
    look(address(), still, async (page) => {
      const own = await on(page);
      await own.cells.first().locator('a').focus();
      expect(await own.table.locator('a[tabindex="0"]').count()).toBe(1);
      for (const key of [
        'ArrowRight',
        'ArrowDown',
        'End',
        'Control+End',
        'Home',
        'ArrowUp',
        'ArrowRight',
      ])
        await page.keyboard.press(key);
      const at = await page.evaluate(() => {
        const cell = document.activeElement?.closest('td');
        const row = cell?.closest('tr');
        return { row: row?.rowIndex, column: cell?.cellIndex, marked: [...document.querySelectorAll('.at')].map(({ localName }) => localName) }; // prettier-ignore
      });
      expect(at).toEqual({ row: 15, column: 2, marked: ['col', 'th', 'tr'] });
      const said = (await page.locator(':focus').textContent())?.replaceAll('\u00a0', ' ');
      await page.keyboard.press('Enter');
      await page.waitForURL(/plates\/depth-of-field\/\?.*subject-distance=3\.8m.*/);
      const values = [...new URL(page.url()).searchParams];
      expect(Object.fromEntries(values)).toMatchObject({ 'f-number': 'f/2' });
      expect(evaluateText(recordOf('depth-of-field'), values).results['total']?.text).toBe(said);
    }));

  it('marks row and column under a pointer, and follows a tap on a cell that was no link yet', () =>
    look(address(LONG), { ...still, hasTouch: true }, async (page) => {
      const own = await on(page);
      await own.whole();
      const cell = own.cells.nth(7);
      await cell.hover();
      expect(await page.locator('tr.at th').textContent()).toBe('1.07\u00a0m');
      await own.cells.nth(3).tap();
      await page.waitForURL(/subject-distance=1\.03m/);
    }));

  it('goes to paper with its headings on every sheet, its constants, its source and the day', () =>
    look(address(), { ...still, colorScheme: 'dark' }, async (page) => {
      const own = await on(page);
      await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
      const sheet = await page.pdf({ format: 'A4' });
      expect(sheet.subarray(0, 5).toString()).toBe('%PDF-');
      const pagesIn = (pdf: Buffer): number =>
        pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length ?? 0;
      expect(pagesIn(sheet)).toBe(1);
      expect(pagesIn(await page.pdf({ format: 'Letter' }))).toBe(1);
      await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
      const notes = (await page.locator('#own-notes').innerText()).replaceAll('\u00a0', ' ');
      for (const words of [
        'Worked out on',
        'focal length 85 mm',
        'diagonal/1500, here 0.0288 mm',
        'front principal plane',
        'f/5.6 is 5.6',
        'Thin lens',
        'Source of the formula',
      ])
        // prettier-ignore
        expect(notes).toContain(words);
      expect(await own.formula.isVisible()).toBe(false);
      expect(await page.locator('thead').first().evaluate((head) => getComputedStyle(head).display)).toBe('table-header-group'); // prettier-ignore
      // Wider than a sheet: several tables that fit, each with its headings, and every number once.
      await page.emulateMedia({ media: 'screen' });
      await own.side('Across').getByLabel('Values').fill('1.4; 1.6; 1.8; 2; 2.2; 2.5; 2.8; 3.2; 3.5; 4; 4.5; 5; 5.6; 6.3; 7.1; 8; 9; 10; 11; 13; 14; 16; 18; 20; 22'); // prettier-ignore
      await expect.poll(() => own.cells.count()).toBe(16 * 25);
      await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
      await page.emulateMedia({ media: 'print' });
      const sheets = page.locator('[data-paper] table');
      expect(await sheets.count()).toBeGreaterThan(1);
      expect(await sheets.locator('td').count()).toBe(16 * 25);
      expect(await page.locator('.grid-table').isVisible()).toBe(false);
      const heads = await sheets.locator('thead').evaluateAll((all) => all.map((head) => head.textContent)); // prettier-ignore
      expect(heads.every((text) => text.startsWith('Subject distance'))).toBe(true);
      const widths = await sheets.evaluateAll((all) => all.map((one) => one.getBoundingClientRect().width / (96 / 25.4))); // prettier-ignore
      for (const width of widths) expect(width, 'millimetres').toBeLessThanOrEqual(178);
      await page.evaluate(() => dispatchEvent(new Event('afterprint')));
      expect(await sheets.count()).toBe(0);
    }));

  it.each([320, 1280])('breaks no rule at %s px, and nothing sticks out or is too small', (width) =>
    look(
      address('?formula=angle-of-view'),
      { ...still, viewport: { width, height: 800 } },
      async (page) => {
        const own = await on(page);
        await own.says(/^Angle of view/);
        await page.locator('summary', { hasText: 'The same in every cell' }).click();
        await page.evaluate(axe.source);
        const found = await page.evaluate(async () => {
          const { violations } = await (globalThis as unknown as { axe: typeof axe }).axe.run(
            'main',
          );
          return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(' ')}`); // prettier-ignore
        });
        expect(found).toEqual([]);
        expect(await page.evaluate(sticksOut)).toEqual([]);
        expect(await page.evaluate(tooSmall)).toEqual([]);
      },
    ),
  );
});
