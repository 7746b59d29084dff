import type { BrowserContext, BrowserContextOptions, Page } from 'playwright-core';
import { describe, expect, inject, it } from 'vitest';
import { marked } from '../../src/exercises/marked.ts';
import { writeWork } from '../../src/exercises/result-file.ts';
import { judge } from '../support/axe.ts';
import { sticksOut, tooSmall } from '../support/measure.ts';
import { recordOf } from '../support/records.ts';
import { reader } from '../support/site.ts';
import {
  ALL_KINDS,
  begin,
  complaintsOf,
  copyOf,
  eventually,
  field,
  fileOf,
  keyTimes,
  KINDS,
  linkTo,
  nth,
  openFile,
  progress,
  rawsOf,
  sheetOf,
  spaced,
  stateOf,
  textsOf,
  workAt,
  workIn,
} from '../support/student.ts';

const link = linkTo(ALL_KINDS);
const two = linkTo([[KINDS.numeric, 2]]);
const KEY = 'sbn:work:v1';

/** A browser of its own, with windows that are listened to. */
async function machine(
  use: (open: () => Promise<Page>, context: BrowserContext) => Promise<void>,
  options: BrowserContextOptions = {},
  setUp?: (context: BrowserContext) => Promise<unknown>,
): Promise<void> {
  const context = await reader({ reducedMotion: 'reduce', acceptDownloads: true, ...options });
  const heard: string[][] = [];
  try {
    await setUp?.(context);
    await use(async () => {
      const page = await context.newPage();
      heard.push(complaintsOf(page));
      return page;
    }, context);
  } finally {
    await context.close();
  }
  expect(heard.flat()).toEqual([]);
}

const said = (page: Page): Promise<string | null> => page.locator('[data-work-said]').textContent();
const filed = (page: Page): Promise<string | null> => page.locator('.work-filed').textContent();
const stored = (page: Page): Promise<string> =>
  page.evaluate((key) => localStorage.getItem(key) ?? '', KEY);

describe('a student’s page', () => {
  it('says what is set, takes all six kinds of answer, sums them up and saves them', () =>
    machine(async (open) => {
      const page = await open();
      await page.goto(workAt(link));
      await page.getByRole('button', { name: 'Begin' }).waitFor();
      expect(await page.title()).toMatch(/^Light & room, 50 % · /);
      expect(await page.locator('h1').textContent()).toBe('Light & room, 50 %');
      expect(await page.locator('[data-work-due]').textContent()).toBe('Due: Friday, before the set is built'); // prettier-ignore
      expect(await page.locator('.work-terms li').allTextContents()).toEqual([
        '6 questions, 1 of them with your own tape or meter.',
        'Each alias has its own numbers.',
        'Hints are free.',
      ]);
      await begin(page, workAt(link), '  Blue   HERON ');
      const copy = copyOf(link, 'blue heron');
      expect(await textsOf(page)).toEqual(copy.map(({ text }) => text));
      expect((await page.locator('.question-sheet h3').allTextContents()).map(spaced)).toEqual(
        copy.map(({ template }, at) => `${at + 1} ${template.title}`),
      );
      expect(await progress(page)).toBe('0 of 6 answered, as Blue HERON.');
      // Nobody is told off for what they have not come to.
      expect(await page.locator('.field-error:not(:empty)').count()).toBe(0);
      expect(await page.locator('.work-list .work-state').allTextContents()).toEqual(Array(6).fill('not answered')); // prettier-ignore

      await field(page, 1).fill(`${keyTimes(nth(copy, 0))} m`);
      for (const text of ['Step back, and crop', 'Have the stand-in turn its head'])
        await sheetOf(page, 2).getByLabel(text).check();
      await field(page, 3).fill(`${keyTimes(nth(copy, 2))} m`);
      await sheetOf(page, 4).getByLabel('Behind the sensor nothing more').check();
      await eventually(() => stateOf(page, 4).textContent()).toBe('begun, not whole yet');
      await field(page, 4).fill(`${keyTimes(nth(copy, 3))} m`);
      await field(page, 5, 'Focal length').fill('85');
      await field(page, 5, 'Subject distance').fill('2,21 m');
      await eventually(() => stateOf(page, 5).textContent()).toBe('begun, not whole yet');
      await field(page, 5, 'Backdrop distance').fill('1.5 m');
      await field(page, 6, 'Focal length').fill('85 mm');
      await field(page, 6, 'Frame height').fill('0.9 m');
      await sheetOf(page, 6).getByLabel('as you measured it').fill('2.2 m');
      await eventually(() => progress(page)).toBe('6 of 6 answered, as Blue HERON.');
      expect(await page.locator('.work-open-count').textContent()).toBe('Every question is answered.'); // prettier-ignore
      expect(await stateOf(page, 1).textContent()).toBe(`${keyTimes(nth(copy, 0))} m`);
      expect(await page.locator('.work-kept').textContent()).toMatch(/^Kept here, \d\d:\d\d\.$/);

      const text = await fileOf(page);
      const work = workIn(text);
      expect(work).toMatchObject({ alias: 'Blue HERON', link });
      expect(work.started <= work.saved).toBe(true);
      for (const { at } of work.answers) expect(at >= work.started && at <= work.saved).toBe(true);
      const raws = rawsOf(text);
      expect(raws[0]).toBe(`${keyTimes(nth(copy, 0))} m`);
      expect(raws[1]).toEqual([0, 4]);
      expect(raws[5]).toMatchObject({ 'subject-distance': '2.2 m' });
      // The file is marked as it was meant; the brief waits for a person.
      expect(copy.map(({ question, template }, at) => marked(template, question.seed, raws[at] as string, recordOf, { stored: true }).credit)).toEqual([1, 1, 1, 1, 1, undefined]); // prettier-ignore
      expect(await filed(page)).toMatch(/^Saved at \d\d:\d\d with 6 of 6 answered\./);

      await field(page, 1).fill('3 m');
      await eventually(() => filed(page)).toMatch(/^Changed since the file was saved/);
      await page.reload();
      await page.locator('.work-summary').waitFor();
      expect(await field(page, 1).inputValue()).toBe('3 m');
      expect(await field(page, 5, 'Subject distance').inputValue()).toMatch(/^2\.21\s?m$/);
      expect(await progress(page)).toBe('6 of 6 answered, as Blue HERON.');
      expect(rawsOf(await fileOf(page)).slice(1)).toEqual(raws.slice(1));
    }));

  it('leads from the summary to a question, and begins with the first, by keyboard', () =>
    machine(async (open) => {
      const page = await open();
      await page.goto(workAt(two));
      await page.getByLabel('Alias', { exact: true }).fill('wren');
      await page.keyboard.press('Enter');
      await page.locator('.work-summary').waitFor();
      await eventually(() => page.evaluate(() => document.activeElement?.id)).toBe('question-1');
      await page.locator('.work-list a').nth(1).press('Enter');
      expect(await page.evaluate(() => document.activeElement?.id)).toBe('question-2');
      expect(new URL(page.url()).hash).toBe('');
      // What has the focus is not under the bar.
      const [bar, sheet] = await Promise.all([page.locator('.work-bar').boundingBox(), sheetOf(page, 2).boundingBox()]); // prettier-ignore
      expect(sheet?.y ?? 0).toBeGreaterThanOrEqual((bar?.y ?? 0) + (bar?.height ?? 0) - 1);
    }));

  it.each([
    ['free', 'Hints are free.', 'Hint 1 of 2'],
    ['tenth', 'Each hint you take costs a tenth of its question’s mark.', 'Hint 1 of 2 (a tenth of the mark)'],
    ['none', 'There are no hints.', undefined],
  ] as const)('tells what hints cost and counts them, an answer or none: %s', (hints, words, press) =>
    machine(async (open) => {
      const page = await open();
      await begin(page, workAt(linkTo([[KINDS.numeric, 2]], { hints })), 'wren');
      expect((await page.locator('.work-terms li').allTextContents())[2]).toBe(words);
      const buttons = page.getByRole('button', { name: /^Hint/ });
      if (press === undefined) {
        expect(await buttons.count()).toBe(0);
        return;
      }
      expect(await buttons.first().textContent()).toBe(press);
      await sheetOf(page, 2).getByRole('button', { name: /^Hint/ }).click();
      await eventually(() => stateOf(page, 2).textContent()).toBe('not answered, 1 hint taken');
      await page.reload();
      await page.locator('.work-summary').waitFor();
      expect(await sheetOf(page, 2).locator('.hints li').count()).toBe(1);
      expect(workIn(await fileOf(page)).answers.map((one) => [one.raw, one.hints])).toEqual([['', 1]]); // prettier-ignore
    }),
  ); // prettier-ignore

  it('asks which reading of 3,145 is meant, guesses neither, and keeps the question open', () =>
    machine(async (open) => {
      const page = await open();
      await begin(page, workAt(two), 'wren');
      for (const text of ['3,145', '3.145']) {
        await field(page, 1).fill(text);
        await eventually(() => sheetOf(page, 1).locator('.field-error').textContent()).toMatch(/3\.145 m.*3145 m/); // prettier-ignore
        expect(await progress(page)).toMatch(/^0 of 2/);
        await eventually(() => stored(page)).toContain('3,145');
        await page.reload();
        await page.locator('.work-summary').waitFor();
        expect(await field(page, 1).inputValue()).toBe('3,145');
        expect(await sheetOf(page, 1).getByRole('button', { name: /^3/ }).count()).toBe(2);
        expect(await progress(page)).toMatch(/^0 of 2/);
      }
      const first = nth(copyOf(two, 'wren'), 0);
      expect(marked(first.template, first.question.seed, rawsOf(await fileOf(page))[0] as string, recordOf, { stored: true }).verdict.kind).toBe('ambiguous'); // prettier-ignore
      await sheetOf(page, 1).getByRole('button', { name: '3.145 m' }).click();
      await eventually(() => progress(page)).toMatch(/^1 of 2/);
      expect(rawsOf(await fileOf(page))[0]).toBe('3.145 m');
    }));

  it('writes a comma where the reader’s country does, and other units when asked, and changes no answer', () =>
    machine(
      async (open) => {
        const page = await open();
        await begin(page, workAt(two), 'wren');
        const metric = await textsOf(page);
        expect(metric[0]).toMatch(/\d,\d+ m/);
        await field(page, 1).fill('2,21');
        await field(page, 2).fill('7 ft 3 in');
        await eventually(() => progress(page)).toMatch(/^2 of 2/);
        const before = workIn(await fileOf(page)).answers;
        await page.getByRole('button', { name: 'imperial' }).click();
        await eventually(async () => (await textsOf(page))[0]).toMatch(/′|″| ft| in/);
        await page.reload();
        await page.locator('.work-summary').waitFor();
        expect((await textsOf(page))[0]).toMatch(/′|″| ft| in/);
        expect(await page.getByRole('button', { name: 'imperial' }).getAttribute('aria-pressed')).toBe('true'); // prettier-ignore
        await page.getByRole('button', { name: 'metric', exact: true }).click();
        await eventually(() => textsOf(page)).toEqual(metric);
        expect(workIn(await fileOf(page)).answers).toEqual(before);
      },
      { locale: 'de-DE' },
    ));
});

it('begins in the units of the reader’s kit', () =>
  machine(
    async (open) => {
      const page = await open();
      await begin(page, workAt(two), 'wren');
      expect((await textsOf(page))[0]).toMatch(/′|″| ft| in/);
      await page.getByRole('button', { name: 'metric', exact: true }).click();
      await eventually(async () => (await textsOf(page))[0]).not.toMatch(/′|″/);
      await page.reload();
      await page.locator('.work-summary').waitFor();
      expect((await textsOf(page))[0]).not.toMatch(/′|″/);
    },
    {},
    (context) =>
      context.addInitScript(() => localStorage.setItem('sbn:kit:v1', '{"system":"imperial"}')),
  ));

describe('nothing is lost', () => {
  it('when the window is closed the moment after, and nobody is asked about it', () =>
    machine(async (open) => {
      const page = await open();
      await begin(page, workAt(two), 'wren');
      await field(page, 1).fill('2.5 m');
      await page.close({ runBeforeUnload: true });
      const again = await open();
      await again.goto(workAt(two));
      await again.getByRole('button', { name: 'Go on as wren' }).click();
      await again.locator('.work-summary').waitFor();
      expect(await field(again, 1).inputValue()).toBe('2.5 m');
    }));

  it('when the page crashes', () =>
    machine(async (open, context) => {
      const page = await open();
      await begin(page, workAt(two), 'wren');
      await field(page, 1).fill('2.5 m');
      await eventually(() => stored(page)).toContain('2.5 m');
      const devtools = await context.newCDPSession(page);
      const crashed = page.waitForEvent('crash');
      devtools.send('Page.crash').catch(() => undefined);
      await crashed;
      const again = await open();
      await again.goto(workAt(two));
      await again.getByRole('button', { name: 'Go on as wren' }).click();
      await again.locator('.work-summary').waitFor();
      expect(await field(again, 1).inputValue()).toBe('2.5 m');
    }));

  it('in two windows with the same work, which take each other’s answers up', () =>
    machine(async (open) => {
      const one = await open();
      await begin(one, workAt(two), 'wren');
      const other = await open();
      await begin(other, workAt(two), 'WREN');
      expect(await said(other)).toMatch(/begun in this browser as wren, and is open again/);
      await field(one, 1).fill('1.5 m');
      await eventually(() => field(other, 1).inputValue()).toBe('1.5 m');
      await field(other, 2).fill('2.5 m');
      await field(one, 1).fill('1.6 m');
      await eventually(() => progress(one)).toMatch(/^2 of 2/);
      await eventually(() => progress(other)).toMatch(/^2 of 2/);
      await eventually(() => field(other, 1).inputValue()).toBe('1.6 m');
      expect(rawsOf(await fileOf(one))).toEqual(['1.6 m', '2.5 m']);
      expect(await filed(one)).toMatch(/^Saved at/);
      // What is taken out in one is out of the other.
      await field(other, 1).fill('');
      await eventually(() => field(one, 1).inputValue()).toBe('');
      expect(await filed(one)).toMatch(/^Changed since/);
      expect(rawsOf(await fileOf(one))).toEqual(['', '2.5 m']);
      expect(rawsOf(await fileOf(other))).toEqual(['', '2.5 m']);
    }));

  it('in two windows that write at the same moment', () =>
    machine(async (open) => {
      const one = await open();
      await begin(one, workAt(two), 'wren');
      const other = await open();
      await begin(other, workAt(two), 'wren');
      for (const [mine, theirs] of [['1.1 m', '2.1 m'], ['1.2 m', '2.2 m'], ['1.3 m', '2.3 m'], ['', '2.4 m']] as const) {
        await Promise.all([field(one, 1).fill(mine), field(other, 2).fill(theirs)]);
        await eventually(() => field(other, 1).inputValue()).toBe(mine);
        await eventually(() => field(one, 2).inputValue()).toBe(theirs);
        await eventually(async () => { const text = await stored(one); return [mine, theirs].every((part) => text.includes(part)); }).toBe(true);
      }
      expect(rawsOf(await fileOf(one))).toEqual(['', '2.4 m']);
      expect(rawsOf(await fileOf(other))).toEqual(['', '2.4 m']);
    })); // prettier-ignore

  it('in a window that heard nothing of the other, until it writes', () =>
    machine(
      async (open) => {
        const one = await open();
        await begin(one, workAt(two), 'wren');
        const other = await open();
        await begin(other, workAt(two), 'wren');
        await field(one, 1).fill('1.5 m');
        await eventually(() => stored(one)).toContain('1.5 m');
        expect(await field(other, 1).inputValue()).toBe('');
        await field(other, 2).fill('2.5 m');
        await eventually(() => field(other, 1).inputValue()).toBe('1.5 m');
        expect(rawsOf(await fileOf(other))).toEqual(['1.5 m', '2.5 m']);
        expect(rawsOf(await fileOf(one))).toEqual(['1.5 m', '2.5 m']);
      },
      {},
      (context) =>
        context.addInitScript(() =>
          addEventListener('storage', (event) => event.stopImmediatePropagation(), true),
        ),
    ));

  it('with two aliases on one machine: each goes on with its own, and what is done with can be taken away', () =>
    machine(async (open) => {
      const page = await open();
      await begin(page, workAt(two), 'wren');
      await field(page, 1).fill('1.5 m');
      // Within the quiet before it is kept.
      await page.getByRole('button', { name: 'Another alias' }).click();
      await page.getByLabel('Alias', { exact: true }).fill('Otter');
      await page.getByRole('button', { name: 'Begin' }).click();
      await eventually(() => progress(page)).toBe('0 of 2 answered, as Otter.');
      expect(await field(page, 1).inputValue()).toBe('');
      expect(await textsOf(page)).toEqual(copyOf(two, 'otter').map(({ text }) => text));
      await field(page, 1).fill('3.5 m');
      await page.getByRole('button', { name: 'Another alias' }).click();
      expect(await page.locator('.work-begun strong').allTextContents()).toEqual(['Otter', 'wren']);
      await page.getByRole('button', { name: 'Go on as wren' }).click();
      await eventually(() => progress(page)).toBe('1 of 2 answered, as wren.');
      expect(await field(page, 1).inputValue()).toBe('1.5 m');
      // Whoever comes to the page without the link is led back to it.
      await page.goto(`${inject('url')}work/`);
      await eventually(() => said(page)).toMatch(/without an assignment/);
      await page.getByRole('link', { name: /begun as Otter/ }).click();
      await page.getByRole('button', { name: 'Take away the work of wren' }).click();
      await page.getByRole('button', { name: 'Keep them' }).click();
      await page.getByRole('button', { name: 'Take away the work of wren' }).click();
      await page.getByRole('button', { name: 'Take them away' }).click();
      await eventually(() => page.locator('.work-begun strong').allTextContents()).toEqual(['Otter']); // prettier-ignore
      expect(await stored(page)).not.toContain('wren');
      expect(await stored(page)).toContain('3.5 m');
    }));

  it.each(['', '   ', 'a'.repeat(41), 'a\u202Eb'])('and no alias of %j is taken', (alias) =>
    machine(async (open) => {
      const page = await open();
      await page.goto(workAt(two));
      await page.getByLabel('Alias', { exact: true }).fill(alias);
      await page.getByRole('button', { name: 'Begin' }).click();
      await page.locator('#work-alias-note.field-error').waitFor();
      expect(await page.locator('.work-sheet').isVisible()).toBe(false);
      expect(await stored(page)).toBe('');
    }),
  );
});

describe('where the browser keeps nothing', () => {
  const full = (context: BrowserContext): Promise<unknown> =>
    context.addInitScript(() => {
      Storage.prototype.setItem = () => {
        throw new DOMException('full', 'QuotaExceededError');
      };
    });
  const denied = (context: BrowserContext): Promise<unknown> =>
    context.addInitScript(() => {
      Object.defineProperty(window, 'localStorage', {
        get: () => {
          throw new DOMException('denied', 'SecurityError');
        },
      });
    });

  it.each([['full', full], ['denied', denied]] as const)('it says so, offers the file, and warns only while something is in none: %s', (_name, setUp) =>
    machine(
      async (_open, context) => {
        const page = await context.newPage();
        const asked: string[] = [];
        page.on('dialog', (dialog) => {
          asked.push(dialog.type());
          void dialog.dismiss();
        });
        await begin(page, workAt(two), 'wren');
        const trouble = page.getByRole('alert');
        await trouble.waitFor();
        expect(await trouble.textContent()).toMatch(/would not keep it: its storage is full or switched off/); // prettier-ignore
        expect(await page.locator('.work-kept').textContent()).toBe('');
        await field(page, 1).fill('1.5 m');
        await eventually(() => progress(page)).toMatch(/^1 of 2/);
        // Neither another alias nor another file takes the place of what is nowhere yet.
        await page.getByRole('button', { name: 'Another alias' }).click();
        expect(await said(page)).toMatch(/in no file yet/);
        const theirs = copyOf(two, 'otter');
        await openFile(page, writeWork({ ...workIn(await emptyFile()), alias: 'otter', answers: [{ ...nth(theirs, 0).question, raw: '9 m', hints: 0, at: '2026-11-25T09:00:00.000Z' }] })); // prettier-ignore
        await eventually(() => said(page)).toMatch(/in no file yet\. Save them first/);
        expect(await field(page, 1).inputValue()).toBe('1.5 m');
        await page.evaluate(() => location.reload());
        await eventually(() => Promise.resolve(asked)).toEqual(['beforeunload']);
        expect(await field(page, 1).inputValue()).toBe('1.5 m');

        const [download] = await Promise.all([
          page.waitForEvent('download'),
          page.getByRole('button', { name: 'Save the file now' }).click(),
        ]);
        expect(download.suggestedFilename()).toBe('light-room-50-wren.json');
        await trouble.waitFor({ state: 'hidden' });
        // In other units nothing goes back to an older state either.
        await page.getByRole('button', { name: 'imperial' }).click();
        await eventually(async () => (await textsOf(page))[0]).toMatch(/′|″| ft| in/);
        expect(await field(page, 1).inputValue()).toBe('1.5 m');
        await page.reload();
        expect(asked).toEqual(['beforeunload']);
      },
      {},
      setUp,
    ),
  ); // prettier-ignore

  const emptyFile = async (): Promise<string> => {
    let text = '';
    await machine(async (open) => {
      const page = await open();
      await begin(page, workAt(two), 'otter');
      text = await fileOf(page);
    });
    return text;
  };
});

describe('a saved file', () => {
  /** What a student has saved elsewhere. */
  const saved = async (query: string, alias: string, ...texts: string[]): Promise<string> => {
    let text = '';
    await machine(async (open) => {
      const page = await open();
      await begin(page, workAt(query), alias);
      for (const [at, answer] of texts.entries()) await field(page, at + 1).fill(answer);
      text = await fileOf(page);
    });
    return text;
  };

  it('is gone on from on another machine, and later answers there are not lost to an older file', () =>
    machine(async (open) => {
      const file = await saved(two, 'Blue Heron', '1.5 m');
      const page = await open();
      await page.goto(`${inject('url')}work/`);
      await openFile(page, file);
      await page.locator('.work-summary').waitFor();
      expect(await said(page)).toBe('The file is open; go on.');
      expect(new URL(page.url()).search).toBe(`?${two}`);
      expect(await progress(page)).toBe('1 of 2 answered, as Blue Heron.');
      await field(page, 1).fill('1.7 m');
      await field(page, 2).fill('2.5 m');
      await eventually(() => progress(page)).toMatch(/^2 of 2/);
      await openFile(page, file);
      await eventually(() => said(page)).toMatch(/later than the file’s: of each question the later one stands/); // prettier-ignore
      await eventually(() => field(page, 1).inputValue()).toBe('1.7 m');
      const whole = await fileOf(page);
      expect(rawsOf(whole)).toEqual(['1.7 m', '2.5 m']);
      expect(workIn(whole).started).toBe(workIn(file).started);
    }));

  it('of another assignment is asked about first', () =>
    machine(async (open) => {
      const other = linkTo([KINDS.numeric], { title: 'Last week' });
      const file = await saved(other, 'wren', '9 m');
      const page = await open();
      await begin(page, workAt(two), 'wren');
      await field(page, 1).fill('1.5 m');
      await openFile(page, file);
      await eventually(() => said(page)).toMatch(/another assignment, “Last week”, as wren\. Open it in place of “Light & room, 50 %”\?/); // prettier-ignore
      await page.getByRole('button', { name: 'Stay here' }).click();
      expect(await said(page)).toBe('The file was not opened.');
      expect(await field(page, 1).inputValue()).toBe('1.5 m');
      await openFile(page, file);
      await page.getByRole('button', { name: 'Open it' }).click();
      await eventually(() => page.locator('h1').textContent()).toBe('Last week');
      await eventually(() => progress(page)).toBe('1 of 1 answered, as wren.');
      // The other is not gone.
      await page.goto(workAt(two));
      await page.getByRole('button', { name: 'Go on as wren' }).click();
      await eventually(() => field(page, 1).inputValue()).toBe('1.5 m');
    }));

  it('is refused with the reason, and harms nothing, or opened with a word about it', () =>
    machine(async (open) => {
      const file = await saved(two, 'wren', '1.5 m');
      const page = await open();
      await begin(page, workAt(two), 'wren');
      await field(page, 1).fill('7.5 m');
      await eventually(() => stored(page)).toContain('7.5 m');
      for (const [text, why] of [
        [file.slice(0, 200), /not opened\. .*cut off/],
        ['{"hello":1}', /not opened\. .*no work saved from this site/],
        [file.replace('"wren"', '"otter"'), /not opened\. .*no question of this assignment and alias/],
        [file.replace('"1.5 m"', '7'), /not opened\. .*nothing that can be typed/],
        ['['.repeat(5000), /not opened\. /],
        [' '.repeat(5_000_000), /could not be opened\. It is far larger/],
      ] as const) {
        await openFile(page, text);
        await eventually(() => said(page)).toMatch(why);
        await eventually(() => page.locator('[data-work-said]').evaluate((one) => one.getBoundingClientRect().top >= 0 && one.getBoundingClientRect().bottom <= innerHeight)).toBe(true); // prettier-ignore
        expect(await field(page, 1).inputValue()).toBe('7.5 m');
      } // prettier-ignore
      const changed = file.replace('"1.5 m"', '"<b>8</b>"').replace(/"at": "2026/, '"at": "2099');
      await openFile(page, changed);
      await eventually(() => said(page)).toMatch(/Its sum does not fit/);
      await eventually(() => field(page, 1).inputValue()).toBe('<b>8</b>');
      expect(await progress(page)).toMatch(/^0 of 2/);
    }));

  it('keeps the answer to an exercise that this edition cannot show', () =>
    machine(async (open) => {
      const version = 9;
      const items = [KINDS.numeric, KINDS.choice].map((template, at) => ({ template, version: at === 0 ? version : 1, count: 1 })); // prettier-ignore
      const mixed = linkTo([], { items });
      const page = await open();
      await begin(page, workAt(mixed), 'wren');
      expect(await sheetOf(page, 1).textContent()).toMatch(/an older version of it, and cannot be shown/); // prettier-ignore
      expect(await stateOf(page, 1).textContent()).toBe('cannot be shown here');
      const bare = workIn(await fileOf(page));
      const question = { template: KINDS.numeric, version, seed: nth(copyOf(mixed, 'wren'), 0).question.seed }; // prettier-ignore
      const answer = { ...question, raw: '4 m', hints: 1, at: bare.saved };
      await openFile(page, writeWork({ ...bare, answers: [answer] }));
      await eventually(() => said(page)).toMatch(/The file is open/);
      await sheetOf(page, 2).getByLabel('Open the aperture.').check();
      await eventually(() => progress(page)).toMatch(/^1 of 2/);
      const { answers } = workIn(await fileOf(page));
      expect(answers).toContainEqual(answer);
      expect(answers).toHaveLength(2);
    }));
});

describe('a link', () => {
  it.each([
    [two.replace('draw=7', 'draw=seven'), /not a whole number/],
    [two.replace('seeds=alias', 'seeds=mine'), /whose numbers are drawn/],
    [two.slice(0, two.indexOf('&ask')), /holds no questions. Ask for the whole link/],
    [two.replace(KINDS.numeric, '<script>alert(1)</script>'), /names no question/],
    [`${two}&draw=8`, /more than once/],
  ])('that was changed or cut is refused with the reason: %s', (query, why) =>
    machine(async (open) => {
      const page = await open();
      await page.goto(workAt(query));
      await eventually(() => said(page)).toMatch(why);
      expect(await page.locator('.work-begin').isVisible()).toBe(false);
      expect(await page.locator('h1').textContent()).toBe('Your work');
    }),
  );

  it('is the same with what was added to it on its way, and another with other numbers', () =>
    machine(async (open) => {
      const page = await open();
      await begin(page, workAt(`utm_source=post&${two}`), 'wren');
      expect(new URL(page.url()).search).toBe(`?${two}`);
      await field(page, 1).fill('1.5 m');
      await eventually(() => stored(page)).toContain('1.5 m');
      await page.goto(workAt(`${two}&x=1`));
      await page.getByRole('button', { name: 'Go on as wren' }).click();
      await eventually(() => field(page, 1).inputValue()).toBe('1.5 m');
      await page.goto(workAt(two.replace('draw=7', 'draw=8')));
      await page.getByRole('button', { name: 'Begin' }).waitFor();
      expect(await page.locator('.work-begun').isVisible()).toBe(false);
    }));

  it('draws by the alias, not by its capitals or blanks; or the same for all where it says so', () =>
    machine(async (open) => {
      const page = await open();
      const of = async (query: string, alias: string): Promise<string[]> => {
        await page.goto('about:blank');
        await begin(page, workAt(query), alias);
        await page.evaluate(() => localStorage.clear());
        return textsOf(page);
      };
      const heron = await of(link, 'Blue Heron');
      expect(await of(link, '  blue   hERON ')).toEqual(heron);
      expect(await of(link, 'blue heron 2')).not.toEqual(heron);
      const same = linkTo([[KINDS.numeric, 3]], { seeds: 'same' });
      expect(await of(same, 'otter')).toEqual(await of(same, 'wren'));
    }));
});

it('tries again for what could not be fetched', () =>
  machine(async (_open, context) => {
    const page = await context.newPage();
    await page.route('**/bank.json', (route) => route.abort(), { times: 1 });
    await page.goto(workAt(linkTo([KINDS.reading])));
    await page.getByRole('button', { name: 'Try again' }).click();
    await page.route('**/figures/*.json', (route) => route.abort(), { times: 1 });
    await page.getByLabel('Alias', { exact: true }).fill('wren');
    await page.getByRole('button', { name: 'Begin' }).click();
    await eventually(() => sheetOf(page, 1).textContent()).toMatch(/could not be fetched/);
    await sheetOf(page, 1).getByRole('button', { name: 'Try again' }).click();
    await sheetOf(page, 1).locator('svg').waitFor();
  }));

it('stands in every state for those who cannot see it, on narrow phones and on paper', () =>
  machine(async (open) => {
    const page = await open();
    const holds = async (): Promise<void> => {
      for (const { screen, wrong } of await judge(page)) expect(wrong, screen).toEqual([]);
      for (const width of [320, 390]) {
        await page.setViewportSize({ width, height: 844 });
        expect(await page.evaluate(sticksOut)).toEqual([]);
        expect(await page.evaluate(tooSmall)).toEqual([]);
      }
    };
    await begin(page, workAt(linkTo(ALL_KINDS, { hints: 'tenth' })), 'Blue Heron');
    await field(page, 1).fill('3,145');
    await sheetOf(page, 2).getByRole('button', { name: /^Hint/ }).click();
    await eventually(() => stateOf(page, 1).textContent()).toMatch(/cannot be taken/);
    await fileOf(page);
    await holds();
    await page.emulateMedia({ media: 'print' });
    expect(await page.evaluate(sticksOut)).toEqual([]);
    const paper = spaced(await page.locator('body').innerText());
    expect(paper).toContain('0 of 6 answered, as Blue Heron.');
    expect(paper).not.toMatch(/Save the file|Go on from a file|Another alias/);
    await page.emulateMedia({ media: 'screen' });
    await page.getByRole('button', { name: 'Another alias' }).click();
    await holds();
    await page.getByRole('button', { name: /^Take away/ }).click();
    await openFile(page, '{}');
    await eventually(() => said(page)).toMatch(/not opened/);
    await holds();
  }));
