import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { formulasNeeded } from '../../exercises/needs.ts';
import type { Template } from '../../exercises/template.ts';
import type { Formula } from '../../formula/record.ts';
import { formulas as all } from '../../formulas.ts';
import { mixedAssignment, workText, type Answering } from './bench-class.ts';
import { against, built, median, newPhone, phone, withSite, type Sheet } from './bench-phone.ts';

/** Milliseconds: for the class in sight, and for any one task on the way there. */
const limits = { table: 2000, task: 100 };
const FILES = 300;
const QUESTIONS = 20;

/** Most answers are right, some are wrong, a few cannot be read or are not there. */
const ANSWERS: readonly Answering[] = [
  'right', 'wrong', 'right', 'right', 'unreadable', 'right', 'wrong', 'right', 'none', 'right',
]; // prettier-ignore

/** Result files of a class, made of the bank the site was built with. */
async function makeClass(): Promise<readonly string[]> {
  const bank = JSON.parse(readFileSync(join(built(), 'bank.json'), 'utf8')) as readonly {
    readonly template: Template;
  }[];
  const templates = bank.map(({ template }) => template);
  const loaded = new Map<string, Formula>();
  for (const id of new Set(templates.flatMap(formulasNeeded))) {
    const fetched = await all[id]?.();
    if (fetched) loaded.set(id, fetched.default);
  }
  const formulas = (id: string): Formula => {
    const formula = loaded.get(id);
    if (!formula) throw new Error(`There is no formula ${id}.`);
    return formula;
  };
  const assignment = mixedAssignment(templates, QUESTIONS);
  return Array.from({ length: FILES }, (_none, student) =>
    workText(assignment, `heron ${student + 1}`, templates, formulas, (at) => {
      return ANSWERS[(student * 3 + at * 7) % ANSWERS.length] ?? 'right';
    }),
  );
}

/** What one run came to, in milliseconds. */
interface Run {
  readonly table: number;
  readonly longest: number;
}

/** Drops the files on the page and waits until the whole class stands there, painted. */
const dropThem = (page: Page, texts: readonly string[]): Promise<Run> =>
  page.evaluate(async (texts) => {
    const carried = new DataTransfer();
    texts.forEach((text, at) =>
      carried.items.add(new File([text], `${at}-work.json`, { type: 'application/json' })),
    );
    const drop = document.querySelector('[data-desk-drop]');
    const sheet = document.querySelector<HTMLElement>('[data-desk-sheet]');
    if (!drop || !sheet) throw new Error('There is no desk here.');
    let longest = 0;
    new PerformanceObserver((list) => {
      for (const { duration } of list.getEntries()) longest = Math.max(longest, duration);
    }).observe({ type: 'longtask' });
    const there = (): boolean =>
      sheet.querySelectorAll('.desk-class tbody tr').length === texts.length &&
      sheet.querySelectorAll('.desk-class tbody button').length === texts.length * 20;
    // Making the files is over, and does not count.
    await new Promise((done) => setTimeout(done, 1000));
    longest = 0;
    const start = performance.now();
    drop.dispatchEvent(new DragEvent('drop', { dataTransfer: carried, bubbles: true, cancelable: true })); // prettier-ignore
    await new Promise<void>((done) => {
      const watch = new MutationObserver(() => {
        if (!there()) return;
        watch.disconnect();
        done();
      });
      watch.observe(sheet, { childList: true, subtree: true });
    });
    const table = await new Promise<number>((done) => {
      requestAnimationFrame(() => {
        // A message sent from a frame arrives once that frame is painted.
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = () => done(performance.now() - start);
        port2.postMessage(null);
      });
    });
    await new Promise((done) => setTimeout(done, 500));
    return { table, longest };
  }, texts);

/** From a class's files dropped on the marking desk to all their marks in sight. */
export async function timeDesk(sheet: Sheet): Promise<void> {
  sheet.heading(
    `${FILES} result files of ${QUESTIONS} answers dropped on the marking desk of "phone" (${phone.saying}), median of five`,
  );
  const texts = await makeClass();
  sheet.note(`${(texts.join('').length / 1e6).toFixed(1)} MB of files, every kind of exercise`);
  await withSite(async (url, browser) => {
    const runs: Run[] = [];
    while (runs.length < 5) {
      const page = await newPhone(browser);
      await page.goto(`${url}marking/`, { waitUntil: 'networkidle' });
      runs.push(await dropThem(page, texts));
      await page.context().close();
    }
    sheet.line(
      against('from the drop to the class', median(runs.map(({ table }) => table)), limits.table),
    );
    sheet.line(
      against(
        'the longest task on the way',
        median(runs.map(({ longest }) => longest)),
        limits.task,
      ),
    );
  });
}
