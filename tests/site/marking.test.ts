import { Ajv } from 'ajv';
import { parse } from 'csv-parse/sync';
import { strFromU8, unzipSync } from 'fflate';
import { readFile, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, inject, it } from 'vitest';
import { questionsOf } from '../../src/exercises/assignment.ts';
import { itemsOf, markWork } from '../../src/exercises/desk.ts';
import { readWork, type Work } from '../../src/exercises/result-file.ts';
import { mixedAssignment, workText, type Answering } from '../../src/site/commands/bench-class.ts';
import { judge } from '../support/axe.ts';
import { bank } from '../support/bank.ts';
import { sticksOut, tooSmall } from '../support/measure.ts';
import { recordOf } from '../support/records.ts';
import { look } from '../support/site.ts';

// As on the site: what crosses units comes last.
const crossing = ({ file }: (typeof bank)[number]): number => Number(file.startsWith('content/exercises/')); // prettier-ignore
const templates = bank.toSorted((a, b) => crossing(a) - crossing(b)).map(({ template }) => template); // prettier-ignore
const tools = { templates: new Map(templates.map((one) => [one.id, one])), formulas: recordOf };
const assignment = mixedAssignment(templates, 12);
const HOW: readonly Answering[] = [
  'right',
  'wrong',
  'right',
  'right',
  'none',
  'right',
  'unreadable',
];
const textOf = (alias: string, more: Partial<Work> = {}, how?: Answering): string =>
  workText(assignment, alias, templates, recordOf, (at) => how ?? HOW[(at * 5 + alias.length * 3 + alias.charCodeAt(1)) % HOW.length] ?? 'right', more); // prettier-ignore
const workOf = (text: string): Work => {
  const read = readWork(text);
  if (!read.ok) throw new Error(read.why);
  return read.value;
};
const rowsOf = (text: string) =>
  markWork(workOf(text), questionsOf(assignment, workOf(text).alias), tools, {
    tolerances: new Map(),
    overrides: new Map(),
    hintCost: 0.1,
  });
const SCRIPT = '<script>alert(1)</script>';
const ALIASES = ['Blue Heron', 'otter', 'wren', 'Ägir', 'gull', 'tern', 'plover', 'dunlin', 'knot', 'ruff', SCRIPT]; // prettier-ignore
const class_ = ALIASES.map((alias) => textOf(alias));

const url = (): string => `${inject('url')}marking/`;
const still = { reducedMotion: 'reduce', acceptDownloads: true } as const;
const eventually = <T>(see: () => Promise<T>) => expect.poll(see, { timeout: 15_000 });
const file = (name: string, text: string) => ({ name, mimeType: 'application/json', buffer: Buffer.from(text) }); // prettier-ignore
const choose = (page: Page, files: readonly ReturnType<typeof file>[]) =>
  page.locator('[data-desk-files]').setInputFiles([...files]);
const classFiles = class_.map((text, at) => file(`${at}.json`, text));
const said = (page: Page) => page.locator('[data-desk-said]').textContent();
const table = (page: Page) => page.getByRole('region', { name: 'The class' });
const row = (page: Page, alias: string) => table(page).getByRole('row').filter({ has: page.getByRole('rowheader', { name: alias, exact: true }) }); // prettier-ignore
const total = (page: Page, alias: string) => row(page, alias).locator('td').first().locator('span').first().textContent(); // prettier-ignore
const mark = (page: Page, alias: string, question: number) =>
  table(page).getByRole('button', { name: `${alias}, question ${question}:`, exact: false });
const setOut = async (page: Page, files = classFiles): Promise<void> => {
  await choose(page, files);
  await table(page).waitFor();
  await eventually(() => said(page)).toMatch(/marked/);
};
const errorsOf = (page: Page): string[] => {
  const errors: string[] = [];
  page.on('pageerror', ({ message }) => errors.push(message));
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
  return errors;
};
const saved = async (page: Page, button: string): Promise<Buffer> => {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: button, exact: true }).click(),
  ]);
  return readFile(await download.path());
};
/** Drops files on the page as a hand would, on whatever is there. */
const dropOn = (page: Page, where: string, files: readonly { name: string; text: string }[]) =>
  page.evaluate(
    ([where, files]) => {
      const carried = new DataTransfer();
      for (const { name, text } of files) carried.items.add(new File([text], name));
      for (const kind of ['dragover', 'drop'])
        document.querySelector(where)?.dispatchEvent(new DragEvent(kind, { dataTransfer: carried, bubbles: true, cancelable: true })); // prettier-ignore
    },
    [where, files] as const,
  );

describe('the marking desk', () => {
  it('marks a class as the engine does, chosen or dropped anywhere on the page, and counts it', () =>
    look(url(), still, async (page) => {
      const errors = errorsOf(page);
      await dropOn(page, 'h1', class_.map((text, at) => ({ name: `${at}.json`, text }))); // prettier-ignore
      await eventually(() => said(page)).toBe(`${ALIASES.length} files marked.`);
      expect(await table(page).getByRole('rowheader').allTextContents()).toEqual([...ALIASES].sort(new Intl.Collator('en', { numeric: true }).compare)); // prettier-ignore
      for (const [at, alias] of ALIASES.entries()) {
        const rows = rowsOf(class_[at] ?? '');
        const sum = rows.reduce((all, { credit }) => all + (credit ?? 0), 0);
        expect(await total(page, alias)).toBe(`${sum.toFixed(1)} of 12`);
        expect(await row(page, alias).getByRole('button').allTextContents()).toEqual(rows.map(({ raw, credit }) => (credit === undefined ? '?' : raw === undefined ? '–' : String(Math.round(credit * 100))))); // prettier-ignore
      }
      const items = itemsOf(class_.map(rowsOf));
      const lines = page.getByRole('region', { name: 'The questions' }).locator('tbody tr');
      const texts = await lines.evaluateAll((all) => all.map((line) => [...line.children].slice(1, 4).map((cell) => cell.textContent))); // prettier-ignore
      expect(texts).toEqual(items.map(({ answered, waiting, easiness, itemRest }) => [String(answered), waiting > 0 ? `${waiting} to judge` : String(Math.round((easiness ?? NaN) * 100)), itemRest === undefined ? '–' : itemRest.toFixed(2).replace('-', '−')])); // prettier-ignore
      const turns = items.flatMap(({ commonestTurn }, at) => (commonestTurn ? [[at, commonestTurn.times] as const] : [])); // prettier-ignore
      expect(turns.length).toBeGreaterThan(0);
      for (const [at, times] of turns) expect(await lines.nth(at).locator('.desk-turn').textContent()).toMatch(new RegExp(`.{10,} \\(${times}\\)$`)); // prettier-ignore
      // It says what nobody can know from a file.
      expect(await page.locator('#honesty + ul').textContent()).toMatch(/worked out in the reader’s own browser/); // prettier-ignore
      expect(errors).toEqual([]);
    }));

  it('takes nothing from hostile files, says why of each, and goes on', () =>
    look(url(), still, async (page) => {
      const errors = errorsOf(page);
      let asked = 0;
      page.on('dialog', (dialog) => {
        asked += 1;
        void dialog.dismiss();
      });
      const otter = textOf('otter');
      const other = mixedAssignment(templates, 3, { title: 'Another one', draw: 9 });
      const folder = join(tmpdir(), 'sbn-marking-huge.json');
      await writeFile(folder, ' '.repeat(5_000_000));
      await setOut(page, [file('otter.json', otter)]);
      await choose(page, [
        file('large.json', `{"x":"${'y'.repeat(700_000)}"}`),
        file('deep.json', '['.repeat(50_000)),
        file('schema.json', '{"sitting-by-numbers-work":1,"link":5}'),
        file('strange.json', '{"hello":"world"}'),
        file('empty.json', ''),
        file('binary.json', '\u0000\u0001\u0002'),
        file('cut.json', otter.slice(0, 300)),
        file('old.json', otter.replace('"sitting-by-numbers-work": 1', '"sitting-by-numbers-work": 0')),
        file('newer.json', otter.replace('"sitting-by-numbers-work": 1', '"sitting-by-numbers-work": 7')),
        file('twice.json', otter),
        file('contrary.json', textOf('otter', {}, 'right')),
        file('another-alias.json', otter.replace('"otter"', '"stoat"')),
        file('prototype.json', otter.replace('"answers"', '"__proto__": {"answers": 1}, "answers"').replace('"hints"', '"constructor": 1, "hints"')),
        file('rulings.json', '{"sitting-by-numbers-rulings": 1, "saved": "now"}'),
        file('script.json', textOf(SCRIPT)),
        file('other.json', workText(other, SCRIPT, templates, recordOf, () => 'right')),
      ]); // prettier-ignore
      await eventually(() => said(page)).toBe('2 files marked.');
      const reasons: Readonly<Record<string, RegExp>> = {
        large: /half a megabyte/, deep: /nested deeper/, schema: /which assignment/, strange: /no work saved/, empty: /no JSON/, binary: /no JSON/, cut: /cut off/,
        old: /version “0”/, newer: /newer edition/, twice: /same work/, contrary: /other answers/, 'another-alias': /no question/, prototype: /same work/, rulings: /when it was saved/,
      }; // prettier-ignore
      const refused = await page.locator('[data-desk-refused] li').allTextContents();
      expect(refused).toHaveLength(Object.keys(reasons).length);
      for (const [name, why] of Object.entries(reasons)) expect(refused.find((line) => line.startsWith(`${name}.json`))).toMatch(why); // prettier-ignore

      await page.locator('[data-desk-files]').setInputFiles(folder);
      await eventually(async () => (await page.locator('[data-desk-refused] li').allTextContents()).at(-1)).toMatch(/larger than any file of ours/); // prettier-ignore

      // Text stays text, on the page as everywhere.
      await mark(page, SCRIPT, 1).click();
      await page.locator('.desk-answer h3', { hasText: SCRIPT }).waitFor();
      // The other assignment lies apart.
      await page.getByLabel('Assignment').selectOption({ label: 'Another one (1 file)' });
      await page.getByRole('heading', { name: 'Another one' }).waitFor();
      await eventually(() => total(page, SCRIPT)).toBe('2.0 of 3');
      expect(await page.locator('script:not([src])').count()).toBe(0);
      expect([errors, asked]).toEqual([[], 0]);
    }));

  it('keeps an instructor’s marks and tolerances in a file of their own, and says when they are not saved', () =>
    look(url(), still, async (page) => {
      await setOut(page);
      const before = await total(page, 'wren');
      const holds = () => page.evaluate(() => !dispatchEvent(new Event('beforeunload', { cancelable: true }))); // prettier-ignore
      expect(await holds()).toBe(false);

      // Where the reader is, they stay: neither table nor page moves under a press.
      await table(page).evaluate((frame) => frame.scrollTo(60, 40));
      const scrolled = () => table(page).evaluate((frame) => [frame.scrollTop, frame.scrollLeft]);
      await mark(page, 'wren', 6).click();
      const [top, left] = await scrolled();
      const kept = await table(page).locator('tbody tr').first().elementHandle();
      await page.getByLabel('Mark, of 100').fill('140');
      await page.getByRole('button', { name: 'Set this mark' }).click();
      await page.locator('#desk-credit-note', { hasText: 'between 0 and 100' }).waitFor();
      await page.getByLabel('Mark, of 100').fill('40 %');
      await page.getByLabel('Note to the student').fill('=cmd, "so" far');
      await page.getByRole('button', { name: 'Set this mark' }).click();
      await mark(page, 'wren', 6).getByText('40*').waitFor();
      expect(await scrolled()).toEqual([top, left]);
      expect(await kept.evaluate((line) => line.isConnected)).toBe(true);
      expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Set this mark');
      expect(await page.locator('.desk-question dl').textContent()).toMatch(/40 of 100, set by the instructor.*Note=cmd, "so" far/); // prettier-ignore
      const ruled = await total(page, 'wren');
      expect(ruled).not.toBe(before);

      // A tolerance counts at once; what cannot be read changes nothing.
      const field = page.getByLabel('Tolerance of question 1', { exact: true });
      const marks = () => table(page).locator('tbody td:nth-child(3)').allTextContents();
      const narrow = await marks();
      await field.fill('wide');
      await field.press('Tab');
      await page.locator('.desk-items .field-error', { hasText: 'is not a number' }).waitFor();
      expect(await marks()).toEqual(narrow);
      await field.fill('500 %');
      await field.press('Tab');
      await eventually(async () => (await marks()).filter((text) => text === '0').length).toBeLessThan(narrow.filter((text) => text === '0').length); // prettier-ignore
      const wide = await marks();
      expect(await holds()).toBe(true);
      expect(await page.locator('.desk-rulings').textContent()).toMatch(/1 mark and 1 tolerance, not saved yet/); // prettier-ignore

      const rulings = (await saved(page, 'Save my rulings')).toString();
      expect(await holds()).toBe(false);
      // Nothing of it is kept in the browser.
      expect(await page.evaluate(() => JSON.stringify([localStorage, sessionStorage].map((shelf) => Object.entries(shelf))))).not.toMatch(/wren|cmd|sitting-by-numbers-rulings/); // prettier-ignore

      await page.reload();
      await choose(page, [file('rulings.json', rulings)]);
      await eventually(() => said(page)).toMatch(/1 mark, 1 tolerance/);
      await setOut(page);
      expect(await total(page, 'wren')).not.toBe(before);
      expect(await marks()).toEqual(wide);
      expect(await field.inputValue()).toBe('500 %');
      expect(await mark(page, 'wren', 6).textContent()).toBe('40*');
      expect(await holds()).toBe(false);

      // Later work of the same student shows that the mark was set on another answer.
      await choose(page, [file('later.json', textOf('wren', { saved: '2026-11-26T09:30:00.000Z' }, 'unreadable'))]); // prettier-ignore
      await page.locator('[data-desk-refused] li', { hasText: 'later work of “wren”' }).waitFor();
      await eventually(() => said(page)).toMatch(/marked/);
      await mark(page, 'wren', 6).click();
      await page.locator('.desk-question dd', { hasText: 'set on another answer' }).waitFor();
      await page.getByRole('button', { name: 'Back to the worked mark' }).click();
      await eventually(() => mark(page, 'wren', 6).textContent()).toBe('0');
    }));

  it('is gone through by keyboard', () =>
    look(url(), still, async (page) => {
      await setOut(page);
      const first = table(page).locator('tbody button').first();
      await first.focus();
      expect(await table(page).locator('button[tabindex="0"]').count()).toBe(1);
      for (const key of ['ArrowDown', 'ArrowRight', 'ArrowRight', 'End', 'Home', 'ArrowRight', 'ArrowUp']) await page.keyboard.press(key); // prettier-ignore
      expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toContain(', question 2:'); // prettier-ignore
      await page.keyboard.press('Enter');
      expect(await page.evaluate(() => document.activeElement?.className)).toBe('desk-answer');
      await page.keyboard.press('Escape');
      expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toContain(', question 2:'); // prettier-ignore
      await page.getByRole('button', { name: 'Next to judge' }).click();
      await page.getByRole('group', { name: /^Rubric/ }).waitFor();
      await page
        .getByRole('group', { name: /^Rubric/ })
        .getByRole('checkbox')
        .first()
        .check();
      expect(Number(await page.getByLabel('Mark, of 100').inputValue())).toBeGreaterThan(0);
    }));

  it('hands the marks on as files that spreadsheets read and do not compute', () =>
    look(url(), still, async (page) => {
      const evil = workOf(textOf('knot', { saved: '2026-11-26T09:30:00.000Z' }));
      const at = evil.answers.findIndex(({ raw }) => typeof raw === 'string');
      const answers = evil.answers.map((answer, place) => (place === at ? { ...answer, raw: '=cmd|’ /C calc’!A0' } : answer)); // prettier-ignore
      const text = textOf('knot', { saved: evil.saved, answers });
      await setOut(page, [...classFiles, file('evil.json', text)]);
      for (const [button, delimiter, decimal] of [['Marks as CSV', ',', '.'], ['with semicolons', ';', ',']] as const) {
        const rows: Record<string, string>[] = parse(await saved(page, button), { delimiter, bom: true, columns: true });
        expect(rows).toHaveLength(ALIASES.length);
        for (const one of rows) {
          const own = ALIASES.indexOf(one['alias'] ?? '');
          const sum = rowsOf(one['alias'] === 'knot' ? text : (class_[own] ?? '')).reduce((all, { credit }) => all + (credit ?? 0), 0);
          expect(one['total']).toBe(String(Number(sum.toFixed(3))).replace('.', decimal));
        }
        const cells = rows.flatMap((one) => Object.values(one));
        expect(cells).toContain('’=cmd|’ /C calc’!A0'.replace('’', "'"));
        expect(cells.filter((cell) => /^[=+@]/.test(cell))).toEqual([]);
      } // prettier-ignore
      for (const [button, delimiter] of [['Questions as CSV', ','], ['questions with semicolons', ';']] as const) {
        const rows: Record<string, string>[] = parse(await saved(page, button), { delimiter, bom: true, columns: true });
        expect(rows.map((one) => one['exercise'])).toEqual(assignment.items.map(({ template }) => template));
      } // prettier-ignore
    }));

  it('gives each student a marked copy, on paper and as a page without script', () =>
    look(url(), still, async (page) => {
      await setOut(page);
      const files = unzipSync(await saved(page, 'Save a marked copy for each'));
      expect(unzipSync(await saved(page, 'Save a marked copy for each'))).toEqual(files);
      expect(Object.keys(files)).toHaveLength(ALIASES.length);
      expect(Object.keys(files)).toContain('blue-heron.html');
      const copy = strFromU8(files['script-alert-1-script.html'] ?? new Uint8Array());
      expect(copy).toContain('&lt;script&gt;alert(1)');
      expect(copy).not.toMatch(/<script/i);
      expect(copy).toContain('<svg');
      expect(copy).toContain('<table>');

      // The page of one student, as they open it: it stands by itself, says all, and fits a phone.
      const own = await page.context().newPage();
      const wrong = errorsOf(own);
      await own.setContent(copy);
      await own.setViewportSize({ width: 320, height: 800 });
      expect(await own.evaluate(sticksOut)).toEqual([]);
      expect(await own.locator('section').count()).toBe(12);
      const seen = await own.locator('body').innerText();
      for (const words of [SCRIPT, 'Accepted', 'Feedback', 'Mark', 'of 12']) expect(seen).toContain(words); // prettier-ignore
      expect(wrong).toEqual([]);
      await own.close();

      await page.evaluate(() => {
        window.print = () => document.body.toggleAttribute('data-printed', true);
      });
      await page.getByRole('button', { name: 'Print a marked copy for each' }).click();
      await page.locator('body[data-printed]').waitFor();
      expect(await page.locator('.desk-copy').count()).toBe(ALIASES.length);
      expect(await page.locator('.desk-copy').first().isVisible()).toBe(false);
      await page.emulateMedia({ media: 'print' });
      expect(await page.locator('.desk-copy:visible').count()).toBe(ALIASES.length);
      // Nothing of the page itself is on the paper.
      expect(await page.locator('body').innerText()).not.toMatch(/Choose files|Take away|What a file can/); // prettier-ignore
      const pdf = await page.pdf();
      expect(pdf.toString('latin1').match(/\/Type \/Page\b/g)?.length ?? 0).toBeGreaterThanOrEqual(ALIASES.length); // prettier-ignore
      await page.emulateMedia({ media: 'screen' });
      await page.evaluate(() => dispatchEvent(new Event('afterprint')));
      expect(await page.locator('.desk-copy').count()).toBe(0);
    }));

  it('publishes the format of what it reads', () =>
    look(url(), still, async (page) => {
      for (const name of ['work', 'rulings']) {
        const link = page.locator(`a[href$="/schema/${name}.schema.json"]`);
        expect(await link.count()).toBe(1);
        const response = await page.request.get(`${inject('url')}schema/${name}.schema.json`);
        expect(response.headers()['content-type']).toContain('application/json');
        const valid = new Ajv().compile((await response.json()) as object);
        expect(valid(JSON.parse(textOf('otter')))).toBe(name === 'work');
      }
      const kept = await readFile('dist/sw.js', 'utf8');
      expect(kept).toContain('schema/work.schema.json');
    }));

  it.each([320, 390, 1280])('is sound on a screen %i px wide, light and dark', (width) =>
    look(url(), { ...still, viewport: { width, height: 900 } }, async (page) => {
      await setOut(page);
      await mark(page, 'otter', 2).click();
      expect(await page.evaluate(sticksOut)).toEqual([]);
      expect(await page.evaluate(tooSmall)).toEqual([]);
      // The alias stays in sight wherever the marks are moved.
      await table(page).evaluate((frame) => frame.scrollTo(frame.scrollWidth, 0));
      const [frame, head] = await Promise.all([table(page).boundingBox(), row(page, 'otter').locator('th').boundingBox()]); // prettier-ignore
      expect(head?.x).toBeCloseTo(frame?.x ?? NaN, 0);
      if (width !== 320) for (const { screen, wrong } of await judge(page)) expect([screen, wrong]).toEqual([screen, []]); // prettier-ignore
    }),
  );

  it('stands with 300 files without holding the page up, and one mark changes nothing else', () =>
    look(url(), still, async (page) => {
      const many = Array.from({ length: 300 }, (_none, at) => file(`${at}.json`, textOf(`bird ${at + 1}`))); // prettier-ignore
      await setOut(page, many);
      expect(await table(page).locator('tbody tr').count()).toBe(300);
      expect(await table(page).getByRole('rowheader').nth(9).textContent()).toBe('bird 10');
      const changes = page.evaluate(
        () =>
          new Promise<number>((done) => {
            const cells = new Set<Node>();
            const body = document.querySelector('.desk-class');
            new MutationObserver((records) => {
              for (const { target } of records) cells.add((target instanceof Element ? target : target.parentElement)?.closest('td') ?? target); // prettier-ignore
            }).observe(body as Element, { childList: true, characterData: true, subtree: true });
            document.addEventListener('desk-done', () => done(cells.size), { once: true });
          }),
      );
      await mark(page, 'bird 250', 3).click();
      await page.getByLabel('Mark, of 100').fill('55');
      await page.getByRole('button', { name: 'Set this mark' }).click();
      await mark(page, 'bird 250', 3).getByText('55*').waitFor();
      await page.evaluate(() => document.dispatchEvent(new Event('desk-done')));
      // The mark, and the student’s total.
      expect(await changes).toBe(2);
    }));
});
