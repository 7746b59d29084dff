import { parse } from 'csv-parse/sync';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { encode } from 'uqr';
import { beforeAll, describe, expect, inject, it } from 'vitest';
import { questionsOf, readAssignment, writeAssignment } from '../../src/exercises/assignment.ts';
import { askedOf, variantOf, workOut } from '../../src/exercises/variant.ts';
import { factorOf } from '../../src/formula/units.ts';
import { serve, type Served } from '../../src/site/commands/serve.ts';
import { bank } from '../support/bank.ts';
import type { CourseItem } from '../support/course-item.ts';
import { root } from '../support/files.ts';
import { sticksOut, tooSmall } from '../support/measure.ts';
import { readGift } from '../support/read-gift.ts';
import { readMoodle } from '../support/read-moodle.ts';
import { readQti } from '../support/read-qti.ts';
import { recordOf } from '../support/records.ts';
import { look, reader } from '../support/site.ts';

const address = (page: string, query = ''): string =>
  `${inject('url')}${page}/${query === '' ? '' : `?${query}`}`;
const still = { reducedMotion: 'reduce', acceptDownloads: true } as const;
/** Waits for what comes of a press or of the network. */
const eventually = <T>(see: () => Promise<T>) => expect.poll(see, { timeout: 15_000 });

const NUMBER = 'step-back-for-the-frame';
const TABLE = 'frame-from-a-table';
const DESIGN = 'hide-the-top-edge';
const CHOICE = 'what-changes-the-nose';
const BRIEF = 'tape-and-frame';
const link = writeAssignment({
  title: 'Light & room, 50 %',
  due: 'Friday',
  seeds: 'alias',
  hints: 'tenth',
  draw: 7,
  items: [
    { template: NUMBER, version: 1, count: 2 },
    { template: DESIGN, version: 1, count: 1 },
  ],
});

const templateOf = (id: string) => {
  const found = bank.find(({ template }) => template.id === id)?.template;
  if (!found) throw new Error(`The exercise ${id} is gone.`);
  return found;
};
const assignmentOf = (query: string) => {
  const read = readAssignment(query);
  if (!read.ok) throw new Error(read.why);
  return read.value;
};
/** The numbers of one alias, question by question: text shown, and answer as a student may type it. */
const copyOf = (alias: string, query = link) =>
  questionsOf(assignmentOf(query), alias).map(({ template: id, seed }) => {
    const template = templateOf(id);
    const variant = variantOf(template, recordOf, seed);
    const worked = 'ask' in template ? workOut(recordOf, { formula: template.formula, given: variant.given, result: template.ask }) : undefined; // prettier-ignore
    return {
      id,
      text: variant.say(template.text).trim().replaceAll(/\s+/g, ' '),
      value: typeof worked?.value === 'number' ? worked.value : Number.NaN,
      answer: worked?.text ?? '',
      solution: variant.say(template.solution).trim().replaceAll(/\s+/g, ' '),
    };
  });

const spaced = (text: string): string => text.replaceAll(/[\s\u00a0\u202f]+/g, ' ').trim();
const textsOf = async (page: Page): Promise<string[]> =>
  (await page.locator('.question-sheet > p:first-of-type').allTextContents()).map(spaced);
const errorsOf = (page: Page): string[] => {
  const errors: string[] = [];
  page.on('pageerror', ({ message }) => errors.push(message));
  page.on('dialog', (dialog) => {
    errors.push(`a dialog: ${dialog.message()}`);
    void dialog.dismiss();
  });
  return errors;
};

const begin = async (page: Page, url: string, alias: string): Promise<void> => {
  await page.goto(url);
  await page.getByLabel('Alias').fill(alias);
  await page.getByRole('button', { name: 'Begin' }).click();
  await page.locator('.question-sheet').nth(2).waitFor();
};
const sheetOf = (page: Page, at: number) => page.locator('.question-sheet').nth(at);
const type = (page: Page, at: number, label: string, text: string) =>
  sheetOf(page, at).getByLabel(label, { exact: true }).fill(text);
const typed = (page: Page, at: number, label: string) =>
  sheetOf(page, at).getByLabel(label, { exact: true }).inputValue();
const says = (page: Page, words: RegExp) =>
  page.locator('.work-progress', { hasText: words }).waitFor();
const fileOf = async (page: Page): Promise<string> => {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save the file to hand in' }).click(),
  ]);
  return readFile(await download.path(), 'utf8');
};

describe('setting exercises', () => {
  const composing = async (page: Page) => {
    await page.locator('[data-compose][data-live]').waitFor();
    const row = (id: string) => page.locator(`[data-set="${id}"]`);
    return {
      row,
      count: (id: string) => row(id).getByRole('textbox'),
      shown: () => page.locator('[data-link]').textContent(),
    };
  };

  it('comes to a link and a code, by keyboard and by press, and is there again after a reload', () =>
    look(address('assign'), still, async (page) => {
      const { row, count, shown } = await composing(page);
      expect(await page.locator('.set-result').isVisible()).toBe(false);
      await page.getByLabel('Kind').selectOption('numeric');
      await eventually(() => row(DESIGN).isVisible()).toBe(false);
      await row(NUMBER).getByRole('button', { name: /^One more/ }).click(); // prettier-ignore
      await count(NUMBER).press('ArrowUp');
      await page.getByLabel('Kind').selectOption('all');
      await count(DESIGN).fill('1');
      await page.getByLabel('Title').fill('Light & room, 50 %');
      await page.getByLabel('Due, in your own words').fill('Friday');
      await page.getByLabel('a tenth of the mark each').check();
      const url = new URL((await shown()) ?? '');
      const set = assignmentOf(url.search.slice(1));
      expect(url.pathname.endsWith('/work/')).toBe(true);
      expect(set).toMatchObject({ title: 'Light & room, 50 %', due: 'Friday', seeds: 'alias', hints: 'tenth' }); // prettier-ignore
      expect(new Set(set.items)).toEqual(new Set(assignmentOf(link).items));
      expect(await page.locator('[data-length]').textContent()).toBe(`${url.href.length} characters.`); // prettier-ignore
      expect(await page.getByRole('link', { name: 'Open it as a student' }).getAttribute('href')).toBe(url.href); // prettier-ignore

      // Every module of the code, read back from the drawing.
      const code = encode(url.href, { ecc: 'M', border: 0 });
      const drawn = code.data.map((line) => line.map(() => false));
      await eventually(() => page.locator('.set-code').getAttribute('viewBox')).toBe(
        `-4 -4 ${code.size + 8} ${code.size + 8}`,
      );
      const d = (await page.locator('.set-code path').getAttribute('d')) ?? '';
      for (const [, x = '', y = '', run = ''] of d.matchAll(/M(\d+) (\d+)h(\d+)v1H\d+z/g))
        for (let i = 0; i < Number(run); i++) (drawn[Number(y)] as boolean[])[Number(x) + i] = true;
      expect(drawn).toEqual(code.data);

      await eventually(() => Promise.resolve(new URL(page.url()).search)).toBe(url.search);
      await page.reload();
      const again = await composing(page);
      // In the same order, too: another would draw other numbers.
      expect(await again.shown()).toBe(url.href);
      expect(await again.count(NUMBER).inputValue()).toBe('2');
      await page.getByRole('button', { name: 'Draw anew' }).click();
      const anew = assignmentOf(new URL((await again.shown()) ?? '').search.slice(1));
      expect(anew.draw).not.toBe(set.draw);
      expect(anew.items).toEqual(set.items);
    }));

  it('says what is wrong with a count, and what is too long for a code', () =>
    look(address('assign'), still, async (page) => {
      const { row, count } = await composing(page);
      for (const text of ['21', '-1', '1.5', 'two', '1e1']) {
        await count(NUMBER).fill(text);
        expect(await row(NUMBER).locator('.field-error').textContent()).toContain(text);
        expect(await page.locator('.set-result').isVisible()).toBe(false);
      }
      await count(NUMBER).fill('20');
      expect(await row(NUMBER).locator('.field-error').isVisible()).toBe(false);
      await page.locator('.set-code').waitFor();
      const fields = page.locator('.set-row input');
      for (let at = 0; at < 40; at++) await fields.nth(at).fill('1');
      await eventually(() => page.locator('.set-code-place').textContent()).toMatch(/too long for a code/); // prettier-ignore
      // One more than an assignment holds is no link at all.
      for (let at = 40; at < 61; at++) await fields.nth(at).fill('1');
      expect(await page.locator('.set-result').isVisible()).toBe(false);
      expect(await page.locator('[data-set-why]').textContent()).toMatch(/At most 60/);
    }));

  it.each([
    [`${link}&draw=8`, /more than once/],
    [link.replace('draw=7', 'draw=NaN'), /not a whole number/],
    [link.replace(`${NUMBER}.1.2`, '<script>alert(1)</script>'), /names no question/],
    [link.replace(`${NUMBER}.1.2`, `${NUMBER}.1.99`), /From 1 to 20/],
    [`${link}&x=${'y'.repeat(7000)}`, /too long/],
    [link.replace(`${NUMBER}.1.2`, 'no-such-exercise.1.2'), /not an exercise of this edition/],
    [link.replace(`${NUMBER}.1.2`, `${NUMBER}.9.2`), /has changed/],
    ['title=%3Cimg src=x onerror=alert(1)%3E&due=&seeds=same&hints=none&draw=1&ask=', /^$/],
  ])('takes nothing unsound from an address: %.70s', (query, why) =>
    look('about:blank', still, async (page) => {
      const errors = errorsOf(page);
      await page.goto(address('assign', query));
      await composing(page);
      expect(await page.locator('[data-set-said]').textContent()).toMatch(why);
      expect(await page.locator('[data-set]').filter({ has: page.locator('input:not([value="0"])') }).count()).toBe(0); // prettier-ignore
      expect(errors).toEqual([]);
    }),
  );

  it('stands on a phone with room to press', () =>
    look(address('assign', link), { ...still, viewport: { width: 390, height: 844 } }, async (page) => {
      await composing(page);
      await page.getByLabel('Aliases, one a line').fill('blue heron');
      await page.getByRole('button', { name: 'Look at the first' }).click();
      await page.locator('.sheet').waitFor();
      expect(await page.evaluate(sticksOut)).toEqual([]);
      expect(await page.evaluate(tooSmall)).toEqual([]);
    })); // prettier-ignore
});

describe('sheets on paper', () => {
  const all = writeAssignment({
    ...assignmentOf(link),
    items: [NUMBER, TABLE, CHOICE, DESIGN, BRIEF].map((template) => ({ template, version: templateOf(template).version, count: 1 })), // prettier-ignore
  });
  const pagesOf = (pdf: Buffer): number => pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length ?? 0; // prettier-ignore
  const makes = async (page: Page, part: string, paper = 'A4') => {
    await page.getByLabel(part, { exact: true }).check();
    await page.getByLabel(paper, { exact: true }).check();
    await page.getByRole('button', { name: 'Print', exact: true }).click();
    await page.locator('.sheets[data-whole]').waitFor();
    await page.emulateMedia({ media: 'print' });
    const seen = spaced(await page.locator('body').innerText());
    const sheets = (await page.locator('.sheet').allInnerTexts()).map(spaced);
    const pdf = await page.pdf({ preferCSSPageSize: true });
    await page.emulateMedia({ media: 'screen' });
    return { seen, sheets, pages: pagesOf(pdf), size: /\/MediaBox\s*\[([^\]]+)\]/.exec(pdf.toString('latin1'))?.[1] ?? '' }; // prettier-ignore
  };

  it('come apart as worksheet, key and solutions, a student a page, with each one’s numbers', () =>
    look(address('assign', all), { ...still, viewport: { width: 1280, height: 900 } }, async (page) => {
      await page.locator('[data-live]').waitFor();
      await page.evaluate(() => (window.print = () => document.body.setAttribute('data-printed', '')));
      await page.getByLabel('Aliases, one a line').fill('Blue Heron\notter\nOTTER \nwren');
      expect(await page.locator('#sheets-class-note').textContent()).toMatch(/Line 3: .*line 2/);
      const aliases = ['Blue Heron', 'otter', 'wren'];

      const worksheet = await makes(page, 'worksheet');
      expect(await page.locator('body').getAttribute('data-printed')).toBe('');
      const key = await makes(page, 'answer key');
      const solutions = await makes(page, 'worked solutions', 'Letter');
      for (const [at, alias] of aliases.entries()) {
        const copy = copyOf(alias, all);
        for (const { text, answer, solution, id } of copy) {
          expect(worksheet.sheets[at]).toContain(text);
          expect(solutions.sheets[at]).toContain(text);
          expect(solutions.sheets[at]).toContain(solution);
          expect(key.sheets[at]).not.toContain(text);
          expect(worksheet.seen).not.toContain(solution);
          if (answer === '') continue;
          expect(key.sheets[at]).toContain(`${answer}. Taken:`);
          expect(solutions.sheets[at]).toContain(`${answer}. Taken:`);
          // A table to read from holds its answer; nothing else does.
          if (id !== TABLE) expect(worksheet.sheets[at]).not.toContain(spaced(answer));
        }
        for (const { sheets } of [worksheet, key, solutions]) expect(sheets[at]).toContain(alias);
      }
      expect(worksheet.seen).not.toMatch(/Taken:|rubric|% of the mark/i);
      const brief = templateOf(BRIEF);
      for (const { text } of brief.kind === 'practical' ? brief.rubric : []) {
        expect(key.sheets[0]).toContain(text);
        expect(worksheet.seen).not.toContain(text);
      }
      // Nothing of the page itself is on the paper.
      for (const { seen } of [worksheet, key, solutions]) expect(seen).not.toMatch(/Set exercises|Quick questions/); // prettier-ignore
      for (const { sheets, pages } of [worksheet, key, solutions]) {
        expect(sheets).toHaveLength(aliases.length);
        expect(pages).toBeGreaterThanOrEqual(aliases.length);
        // As many for each: every one begins on a page of its own.
        expect(pages % aliases.length).toBe(0);
      }
      const [wide, tall] = [worksheet, solutions].map(({ size }) => size.trim().split(/\s+/).slice(2).map((text) => Math.round(Number(text)))); // prettier-ignore
      expect(wide).toEqual([595, 842]);
      expect(tall).toEqual([612, 792]);
    })); // prettier-ignore

  it('are made for 30 students of 20 questions without holding the page up, and can be stopped', () =>
    look(address('assign', writeAssignment({ ...assignmentOf(link), items: [{ template: NUMBER, version: 1, count: 20 }] })), still, async (page) => {
      await page.locator('[data-live]').waitFor();
      await page.evaluate(() => {
        window.print = () => undefined;
        // Presses “Stop” the moment it is there, the first time.
        const progress = document.querySelector<HTMLElement>('.sheets-progress');
        new MutationObserver((_records, watch) => {
          if (progress?.hidden !== false) return;
          watch.disconnect();
          progress.querySelector('button')?.click();
        }).observe(progress as HTMLElement, { attributes: true });
      });
      await page.getByLabel('Aliases, one a line').fill(Array.from({ length: 30 }, (_none, i) => `alias ${i}`).join('\n'));
      await page.getByRole('button', { name: 'Print', exact: true }).click();
      await eventually(() => page.locator('.sheets-said').textContent()).toBe('Stopped.');
      expect(await page.locator('.sheet').count()).toBe(0);
      await page.getByRole('button', { name: 'Print', exact: true }).click();
      await page.locator('.sheets[data-whole]').waitFor({ timeout: 30_000 });
      expect(await page.locator('.sheet').count()).toBe(30);
      expect(await page.locator('.sheet-question').count()).toBe(600);
      expect(await page.locator('.sheet:visible').count()).toBe(1);
    })); // prettier-ignore

  it('need an alias where each has its own numbers, and none where all have the same', () =>
    look(address('assign', link), still, async (page) => {
      await page.locator('[data-live]').waitFor();
      await page.getByRole('button', { name: 'Look at the first' }).click();
      await eventually(() => page.locator('.sheets-said').textContent()).toMatch(/at least one alias/); // prettier-ignore
      await page.getByLabel('the same for all').check();
      await page.getByRole('button', { name: 'Look at the first' }).click();
      await page.locator('.sheet').waitFor();
      expect(await page.locator('.sheet .sheet-alias').textContent()).toMatch(/^Alias/);
    }));
});

describe('a file for a course system', () => {
  const MISTAKE = 'square-forgotten';
  const DRAWING = 'quay-from-the-drawing';
  const letters = (text = ''): string => text.replaceAll(/\s/g, '');
  const all = writeAssignment({
    ...assignmentOf(link),
    items: [[NUMBER, 2], [TABLE, 1], [DRAWING, 1], [CHOICE, 1], [MISTAKE, 1], [DESIGN, 1], [BRIEF, 1]].map(
      ([template, count]) => ({ template: String(template), version: templateOf(String(template)).version, count: Number(count) }),
    ),
  }); // prettier-ignore
  const readers: Readonly<Record<string, (bytes: Uint8Array) => ReadonlyMap<string, CourseItem>>> =
    {
      'QTI 2.1': (bytes) => readQti(bytes).items,
      'QTI 2.2': (bytes) => readQti(bytes).items,
      'Moodle XML': readMoodle,
      GIFT: readGift,
    };
  const at = async (page: Page): Promise<void> => {
    await page.locator('[data-compose][data-live]').waitFor();
    await page.getByLabel('those of one alias').check();
  };
  const saves = async (page: Page, format: string) => {
    await page.getByLabel(format, { exact: true }).check();
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save the file', exact: true }).click(),
    ]);
    return { name: download.suggestedFilename(), bytes: await readFile(await download.path()) };
  };
  const said = (page: Page) => page.locator('.hand-said').textContent();

  it.each(Object.entries(readers))('in %s has the numbers of the student’s own page, and marks as the desk does', (format, read) =>
    look(address('assign', all), still, async (page) => {
      const errors = errorsOf(page);
      await at(page);
      await page.getByLabel('Alias', { exact: true }).fill('  BLUE heron');
      const { name, bytes } = await saves(page, format);
      expect(name).toMatch(/^light-room-50-blue-heron\.(qti|qti-2\.2|moodle|gift)\.(zip|xml|txt)$/);
      expect(await said(page)).toMatch(/8 questions, \d+\skB\. A person marks “.+”, “.+”\.$/);
      // Saved again, it is the same file.
      expect(Buffer.compare((await saves(page, format)).bytes, bytes)).toBe(0);
      expect(errors).toEqual([]);

      await page.goto(address('work', all));
      await page.getByLabel('Alias').fill('Blue  Heron');
      await page.getByRole('button', { name: 'Begin' }).click();
      await page.locator('.question-sheet').nth(7).waitFor();
      const student = await textsOf(page);

      const found = read(bytes);
      const mine = copyOf('Blue Heron', all);
      const ids = questionsOf(assignmentOf(all), 'Blue Heron').map(({ template, version, seed }) => `${template}.${version}.${seed}`);
      expect([...found.keys()]).toEqual(ids);
      for (const [i, id] of ids.entries()) {
        const item = found.get(id);
        expect(letters(item?.shown)).toContain(letters(student[i]));
        const { value, answer } = mine[i] ?? { value: Number.NaN, answer: '' };
        if (answer === '' || mine[i]?.id === MISTAKE) continue;
        const template = templateOf(mine[i]?.id ?? '');
        const per = 'ask' in template ? factorOf(askedOf(recordOf(template.formula), template.ask).unit) : 1;
        expect(item?.mark({ number: String(value / per) }).credit).toBe(1);
        expect(item?.mark({ number: String((value * 1.5) / per) }).credit).toBeLessThan(1);
      }
      if (format.startsWith('QTI')) {
        const { files } = readQti(bytes);
        expect(Object.keys(files).filter((path) => path.endsWith('.svg'))).toHaveLength(1);
      }
    }),
  ); // prettier-ignore

  it('draws several of each, no two alike, and says where there are none to draw', () =>
    look(address('assign', all), still, async (page) => {
      await page.locator('[data-compose][data-live]').waitFor();
      await page.getByLabel('How many of each').fill('4');
      await page.getByLabel('imperial', { exact: true }).last().check();
      const found = readGift((await saves(page, 'GIFT')).bytes);
      const shown = [...found].filter(([id]) => id.startsWith(`${NUMBER}.`)).map(([, one]) => one.shown);
      expect(new Set(shown).size).toBe(4);
      for (const text of shown) expect(text).toMatch(/[′″].*decimal number of feet/);
      expect(await said(page)).toContain(`“${templateOf(CHOICE).title}” has no numbers to draw, and comes once.`);
      expect([...found.keys()].filter((id) => id.startsWith(`${CHOICE}.`))).toHaveLength(1);
    })); // prettier-ignore

  it('says what is missing, and needs no alias where all have the same numbers', () =>
    look(address('assign'), still, async (page) => {
      await page.locator('[data-compose][data-live]').waitFor();
      const save = page.getByRole('button', { name: 'Save the file', exact: true });
      await save.click();
      expect(await said(page)).toMatch(/Choose an exercise/);
      await page.locator(`[data-set="${NUMBER}"]`).getByRole('textbox').fill('1'); // prettier-ignore
      for (const text of ['0', '21', '1.5', 'few', '']) {
        await page.getByLabel('How many of each').fill(text);
        await save.click();
        expect(await page.locator('#hand-count-note').textContent()).toContain(text || 'nothing');
        expect(await page.getByLabel('How many of each').getAttribute('aria-invalid')).toBe('true');
      }
      await page.getByLabel('those of one alias').check();
      await save.click();
      expect(await page.locator('#hand-alias-note').textContent()).toMatch(/Type an alias/);
      await page.getByLabel('the same for all').check();
      expect(await page.getByLabel('Alias', { exact: true }).isVisible()).toBe(false);
      const { name, bytes } = await saves(page, 'Moodle XML');
      expect(name).toBe('exercises.moodle.xml');
      expect(readMoodle(bytes).size).toBe(1);
    })); // prettier-ignore

  it('is written with progress, and can be stopped', () =>
    look(address('assign', writeAssignment({ ...assignmentOf(link), items: bank.slice(0, 60).map(({ template }) => ({ template: template.id, version: template.version, count: 1 })) })), still, async (page) => {
      await page.locator('[data-compose][data-live]').waitFor();
      await page.getByLabel('How many of each').fill('20');
      await page.evaluate(() => {
        const progress = document.querySelector<HTMLElement>('.hand-progress');
        new MutationObserver((_records, watch) => {
          if (progress?.hidden !== false) return;
          watch.disconnect();
          progress.querySelector('button')?.click();
        }).observe(progress as HTMLElement, { attributes: true });
      });
      await page.getByRole('button', { name: 'Save the file', exact: true }).click();
      await eventually(() => said(page)).toBe('Stopped. Nothing was saved.');
      const { bytes } = await saves(page, 'QTI 2.1');
      expect(readQti(bytes).items.size).toBeGreaterThan(700);
    })); // prettier-ignore
});

describe('three students and a desk', () => {
  const files: Record<string, string> = {};
  let site: Served;

  beforeAll(async () => {
    site = await serve({ folder: join(root, 'dist'), port: 0 });
    const open = async (alias: string): Promise<[BrowserContext, Page, string[]]> => {
      const context = await reader(still);
      const page = await context.newPage();
      const errors = errorsOf(page);
      await begin(page, `${site.url}work/?${link}`, alias);
      return [context, page, errors];
    };
    const [[heronAt, heron, heronErrors], [otterAt, otter, otterErrors], [wrenAt, wren, wrenErrors]] = [
      await open('Blue  Heron'),
      await open('otter'),
      await open('wren'),
    ]; // prettier-ignore

    // Each has the numbers that their alias draws, and no other’s.
    const shown = await Promise.all([heron, otter, wren].map(textsOf));
    expect(shown).toEqual(['Blue Heron', 'otter', 'wren'].map((alias) => copyOf(alias).map(({ text }) => text))); // prettier-ignore
    expect(new Set(shown.map(String)).size).toBe(3);

    // Half a design is kept over a reload like everything else, and nobody is told off for what they have not come to.
    const [first, second] = copyOf('Blue Heron');
    await type(heron, 0, 'Your answer', `${first?.value ?? 0} m`);
    await type(heron, 2, 'Focal length', '85 mm');
    await says(heron, /^1 of 3 answered/);
    expect(await heron.locator('.field-error').count()).toBe(0);
    await heron.reload();
    await heron.locator('.question-sheet').nth(2).waitFor();
    expect(await typed(heron, 0, 'Your answer')).toBe(`${first?.value ?? 0} m`);
    expect(await typed(heron, 2, 'Focal length')).toMatch(/^85\s?mm$/);

    // From here on there is no signal.
    await site.close();
    await sheetOf(heron, 1).getByRole('button', { name: /^Hint 1/ }).click(); // prettier-ignore
    await type(heron, 1, 'Your answer', `${((second?.value ?? 0) * 100).toFixed(2)} cm`);
    await type(heron, 2, 'Subject distance', '2.21');
    await type(heron, 2, 'Backdrop distance', '1,5 m');
    await says(heron, /^3 of 3 answered/);
    files['heron'] = await fileOf(heron);

    const wrong = copyOf('otter');
    await type(otter, 0, 'Your answer', `${(wrong[0]?.value ?? 0) * 2} m`);
    await type(otter, 1, 'Your answer', `${(wrong[1]?.value ?? 0) * 0.95} m`);
    await says(otter, /^2 of 3 answered/);
    files['otter'] = await fileOf(otter);

    await type(wren, 0, 'Your answer', 'about so far');
    await sheetOf(wren, 0).locator('.field-error').waitFor();
    await says(wren, /^0 of 3 answered/);
    files['wren'] = await fileOf(wren);
    expect([heronErrors, otterErrors, wrenErrors].flat()).toEqual([]);
    await Promise.all([heronAt, otterAt, wrenAt].map((context) => context.close()));
  }, 120_000);

  const of = (name: string): string => files[name] ?? '';
  const buffer = (name: string, text: string) => ({ name, mimeType: 'application/json', buffer: Buffer.from(text) }); // prettier-ignore

  it('opens a saved file again, to go on from', () =>
    look(address('work'), still, async (page) => {
      await page.locator('[data-work-file]').setInputFiles(buffer('heron.json', of('heron')));
      await page.locator('.question-sheet').nth(2).waitFor();
      expect(await typed(page, 2, 'Subject distance')).toMatch(/^2\.21\s?m$/);
      await says(page, /^3 of 3 answered, as Blue Heron/);
      // In other units the texts change, the answers stay, and the file is of the same assignment.
      await page.getByRole('button', { name: 'imperial' }).click();
      await eventually(async () => (await textsOf(page))[0]).toMatch(/ ft | in|′|″/);
      expect(await typed(page, 2, 'Subject distance')).toMatch(/^2\.21\s?m$/);
      const [was, is] = [of('heron'), await fileOf(page)].map((text) => JSON.parse(text) as { link: string; answers: { raw: unknown; at: string }[] }); // prettier-ignore
      expect(is?.link).toBe(was?.link);
      expect(is?.answers).toEqual(was?.answers);
    }));

  it('writes texts with the reader’s decimal mark', () =>
    look(address('practise', `exercise=${NUMBER}&seed=3`), { ...still, locale: 'de-DE' }, async (page) => {
      await page.locator('.question-sheet').waitFor();
      expect((await textsOf(page))[0]).toMatch(/\d,\d+ m/);
      await page.getByRole('button', { name: 'imperial' }).click();
      await eventually(() => Promise.resolve(new URL(page.url()).search)).toContain('units=imperial');
      await eventually(async () => (await textsOf(page))[0]).not.toMatch(/\d,\d+ m/);
    })); // prettier-ignore

  it('marks all three again, refuses what is hostile, and hands the marks on', () =>
    look('about:blank', still, async (page) => {
      const errors = errorsOf(page);
      await page.goto(address('marking'));
      await page.evaluate(() => {
        window.print = () =>
          document.body.setAttribute('data-printed', JSON.stringify([...document.querySelectorAll('.desk-copy')].map((copy) => copy.textContent)));
      }); // prettier-ignore
      const script = of('otter').replace('"otter"', '"<script>alert(1)</script>"');
      await page.locator('[data-desk-files]').setInputFiles([
        buffer('heron.json', of('heron')),
        buffer('otter.json', of('otter')),
        buffer('wren.json', of('wren')),
        buffer('huge.json', `{"x":"${'y'.repeat(700_000)}"}`),
        buffer('deep.json', '['.repeat(5000)),
        buffer('schema.json', '{"sitting-by-numbers-work":1,"link":5}'),
        buffer('other.json', '{"hello":"world"}'),
        buffer('script.json', script),
        buffer('twice.json', of('otter')),
        buffer('cut.json', of('otter').slice(0, 300)),
        buffer('old.json', of('otter').replace('"sitting-by-numbers-work": 1', '"sitting-by-numbers-work": 0')), // prettier-ignore
      ]);
      const table = page.getByRole('region', { name: 'The class' });
      const total = (alias: string) => table.getByRole('row', { name: new RegExp(`^${alias}`) }).locator('td').first().textContent(); // prettier-ignore
      await table.waitFor();
      // Heron: right; right with one hint; the design kept in all. Otter: twice as far is nought, 5 % off is nought.
      expect(await total('Blue Heron')).toBe('2.9 of 3');
      expect(await total('otter')).toBe('0.0 of 3');
      expect(await total('wren')).toBe('0.0 of 3');
      const refused = (await page.locator('[data-desk-refused] li').allTextContents()).join('\n');
      for (const name of ['huge', 'deep', 'schema', 'other', 'script', 'twice', 'cut', 'old'])
        expect(refused).toMatch(new RegExp(`^${name}\\.json: .{12,}`, 'm'));
      expect(await page.locator('[data-desk-refused] li').count()).toBe(8);

      // 5 % off is within 6 %.
      await page.getByLabel('Tolerance of question 1').fill('6 %');
      await page.getByLabel('Tolerance of question 1').press('Tab');
      await eventually(() => total('otter')).toBe('1.0 of 3');
      expect(await total('Blue Heron')).toBe('2.9 of 3');

      await table.getByRole('button', { name: 'wren, question 3', exact: false }).click();
      await page.getByLabel('Mark, of 100').fill('40');
      await page.getByLabel('Note to the student').fill('Told me, "=so" far');
      await page.getByRole('button', { name: 'Set this mark' }).click();
      await eventually(() => total('wren')).toBe('0.4 of 3');

      for (const [button, delimiter] of [['Marks as CSV', ','], ['with semicolons', ';']] as const) {
        const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: button, exact: true }).click()]);
        const rows: Record<string, string>[] = parse(await readFile(await download.path(), 'utf8'), { delimiter, bom: true, columns: true });
        expect(rows.map((row) => [row['alias'], Number(row['total']?.replace(',', '.'))])).toEqual([['Blue Heron', 2.9], ['otter', 1], ['wren', 0.4]]);
        expect(Object.values(rows[2] ?? {})).toContain('Told me, "=so" far');
      } // prettier-ignore

      await page.getByRole('button', { name: 'Print a marked copy for each' }).click();
      await page.locator('body[data-printed]').waitFor();
      const copies = JSON.parse((await page.locator('body').getAttribute('data-printed')) ?? '[]') as string[]; // prettier-ignore
      expect(copies).toHaveLength(3);
      expect(copies[0]).toContain('2.9 of 3');
      expect(copies[2]).toContain('Told me, "=so" far');
      expect(errors).toEqual([]);
    }));
});
