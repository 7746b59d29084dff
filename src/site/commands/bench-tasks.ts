import type { Browser, BrowserContext, Locator, Page } from 'playwright-core';
import { evaluateText } from '../../formula/evaluate.ts';
import { formulas } from '../../formulas.ts';
import { tasks } from './bench-task-list.ts';
import type { Reading, Step, Task } from './bench-task-list.ts';
import { median, newPhone, phone, slowDown, withSite } from './bench-phone.ts';
import type { Sheet } from './bench-phone.ts';

/** Milliseconds a person looks before a tap or a word; they are taken, so that a page may use them, and not counted. */
const THINKING = 1000;
/** Milliseconds after which nobody waits any longer. */
const PATIENCE = 20_000;

/** What one run of a task came to. */
interface Run {
  /** Milliseconds spent waiting for the page, from the address being asked for to the number being in sight. */
  readonly waited: number;
  readonly taps: number;
  /** Screens moved by a finger. */
  readonly scrolls: number;
  readonly typed: number;
  /** The number that was read, or what was there instead. */
  readonly read: string;
}

const pause = (milliseconds: number): Promise<void> =>
  new Promise((resolve) => {
    setTimeout(resolve, milliseconds);
  });

/**
 * The number a task is after, as the formula itself says it.
 * Throws: Error for a task whose formula or result there is not.
 */
export async function numberOf({ formula: id, given, result }: Task): Promise<string> {
  const load = formulas[id];
  if (!load) throw new Error(`A task asks for ${id}, which is no formula.`);
  const { results } = evaluateText((await load()).default, Object.entries(given));
  const text = results[result]?.text;
  if (text === undefined) throw new Error(`${id} has no result ${result}.`);
  return text;
}

/** Screens to an element, up, down or aside, moved; 0 where it is in sight already. */
const bring = (target: Locator): Promise<number> =>
  target.evaluate((element) => {
    const { left, right, top, bottom } = element.getBoundingClientRect();
    const aside = left < 0 || right > innerWidth ? 1 : 0;
    const away = top < 0 || bottom > innerHeight ? Math.abs(top - innerHeight / 2) : 0;
    if (aside + away > 0)
      element.scrollIntoView({ block: 'center', inline: 'center', behavior: 'instant' });
    return aside + Math.ceil(away / innerHeight);
  });

/** Whether a number stands in a place where it can be read: in the window, and under nothing. */
const inSight = (place: Locator, number: string): Promise<boolean> =>
  place.evaluate((element, wanted) => {
    const holds = (one: Element): boolean => one.textContent.replace(/\s+/g, ' ').includes(wanted);
    if (!holds(element)) return false;
    // The least element that holds all of it.
    let least: Element = element;
    for (;;) {
      const inner = [...least.children].find(holds);
      if (!inner) break;
      least = inner;
    }
    const { left, right, top, bottom } = least.getBoundingClientRect();
    const seen = document.elementFromPoint((left + right) / 2, (top + bottom) / 2);
    return top >= 0 && bottom <= innerHeight && seen !== null && least.contains(seen);
  }, number);

/** A cell's number, whose unit stands in the heading. */
const withoutUnit = (text: string): string => text.replace(/[^\d]+$/, '');

const quoted = (text: string): string => `"${text}"`;

/** Where a task's number is to be, once it is there. */
const placeOf = (page: Page, read: Reading, number: string): Locator => {
  if ('sentence' in read) return page.locator(read.sentence).filter({ hasText: number }).first();
  const [row, column] = read.cell.map(quoted);
  const before = `ancestor::table[1]/thead//th[normalize-space()=${String(column)}]/preceding-sibling::*`;
  return page
    .locator(`xpath=//tbody/tr[th[normalize-space()=${String(row)}]]/td[count(${before})]`)
    .filter({ visible: true })
    .first();
};

/** Goes through a task's steps as a person would and reads the number. */
async function perform(page: Page, url: string, task: Task, number: string): Promise<Run> {
  let waited = 0;
  let [taps, scrolls, typed] = [0, 0, 0];
  /** The clock runs from an act until what comes next is in sight. */
  let since = performance.now();
  const stop = (): void => {
    waited += performance.now() - since;
  };

  try {
    await page.goto(url, { waitUntil: 'commit' });
    for (const step of task.steps) {
      const target = locate(page, step);
      await target.waitFor({ state: 'visible', timeout: PATIENCE });
      stop();
      await pause(THINKING);
      scrolls += await bring(target);
      taps += 1;
      if ('tap' in step) {
        since = performance.now();
        await target.tap({ noWaitAfter: true });
      } else {
        // What stood in the field is typed over.
        await target.tap();
        await target.selectText();
        typed += step.text.length;
        await target.pressSequentially(step.text.slice(0, -1));
        await pause(THINKING);
        since = performance.now();
        await target.press(step.text.slice(-1));
      }
    }
    const place = placeOf(page, task.read, number);
    const shown = 'cell' in task.read ? withoutUnit(number) : number;
    await place.waitFor({ state: 'visible', timeout: PATIENCE });
    scrolls += await bring(place);
    while (!(await inSight(place, shown)) && performance.now() - since < PATIENCE) await pause(10);
    stop();
    const text = (await place.innerText()).replace(/\s+/g, ' ').trim();
    // A cell is its number and no other; a sentence holds it.
    const right = 'cell' in task.read ? text === shown : text.includes(shown);
    return { waited, taps, scrolls, typed, read: right ? number : `“${text}”` };
  } catch (error) {
    const [said = ''] = error instanceof Error ? error.message.split('\n') : [];
    return { waited: Number.NaN, taps, scrolls, typed, read: `nothing, at ${page.url()}: ${said}` };
  }
}

const locate = (page: Page, step: Step): Locator => {
  const [role, name] = 'tap' in step ? step.tap : step.type;
  const within = step.within ? page.locator(step.within) : page;
  return within.getByRole(role, { name }).first();
};

/** A task once in a browser that was never here, and once more in the same browser. */
async function twice(
  browser: Browser,
  url: string,
  task: Task,
  number: string,
): Promise<readonly [cold: Run, again: Run]> {
  const page = await newPhone(browser, { hasTouch: true, isMobile: true, locale: 'en-GB' });
  const context = page.context();
  try {
    const cold = await perform(page, url, task, number);
    await page.close();
    return [cold, await perform(await reopened(context), url, task, number)];
  } finally {
    await context.close();
  }
}

const reopened = async (context: BrowserContext): Promise<Page> => {
  const page = await context.newPage();
  await slowDown(page);
  return page;
};

const seconds = (runs: readonly Run[]): string =>
  `${(median(runs.map(({ waited }) => waited)) / 1000).toFixed(1)} s`;

/** From a cold start to a read number, for each task; a number that is not the formula's own fails. */
export async function timeTasks(sheet: Sheet): Promise<void> {
  sheet.heading(
    `From a cold start on "phone" (${phone.saying}) to a number in sight, median of five; in brackets the second visit. ` +
      "Counted is waiting for the page: a person's second before each act, and typing up to the last letter, are not.",
  );
  await withSite(async (url, browser) => {
    for (const task of tasks) {
      const number = await numberOf(task);
      const cold: Run[] = [];
      const again: Run[] = [];
      while (cold.length < 5) {
        const [first, second] = await twice(browser, url, task, number);
        cold.push(first);
        again.push(second);
        if (first.read !== number) break;
      }
      const last = cold.at(-1);
      if (!last) throw new Error('No run was made.');
      const { taps, scrolls, typed, read } = last;
      sheet.line({
        pass: read === number && cold.length === 5,
        text: `${`“${task.asks}”`.padEnd(66)} ${number.padStart(9)}  ${seconds(cold)} (${seconds(again)})  taps ${taps}, scrolls ${scrolls}, typed ${typed}`,
      });
      if (read !== number)
        sheet.note(`looked for in ${JSON.stringify(task.read)}; there was ${read}`);
    }
  });
}
