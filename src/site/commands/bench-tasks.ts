import type { Browser, BrowserContext, Locator, Page } from 'playwright-core';
import { evaluateText } from '../../formula/evaluate.ts';
import { formulas } from '../../formulas.ts';
import { tasks } from './bench-task-list.ts';
import type { Step, Task } from './bench-task-list.ts';
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
  /** The number that was read; undefined where it was not there. */
  readonly read: string | undefined;
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

/** Screens up or down to an element, moved; 0 where it is in sight already. */
const bring = (target: Locator): Promise<number> =>
  target.evaluate((element) => {
    const { top, bottom } = element.getBoundingClientRect();
    if (top >= 0 && bottom <= innerHeight) return 0;
    element.scrollIntoView({ block: 'center', behavior: 'instant' });
    return Math.max(1, Math.ceil(Math.abs(top - innerHeight / 2) / innerHeight));
  });

/** Whether a number stands in a place where it can be read: in the window, and under nothing. */
const inSight = (place: Locator, number: string): Promise<boolean> =>
  place.evaluate((element, wanted) => {
    const plain = (text: string | null): string => (text ?? '').replace(/\s+/g, ' ');
    if (!plain(element.textContent).includes(wanted)) return false;
    // The least element that holds all of it.
    let least = element;
    for (;;) {
      const inner = [...least.children].find((child) => plain(child.textContent).includes(wanted));
      if (!inner) break;
      least = inner;
    }
    const { left, right, top, bottom } = least.getBoundingClientRect();
    const seen = document.elementFromPoint(
      (left + right) / 2,
      Math.max(top + 1, (top + bottom) / 2),
    );
    return top >= 0 && bottom <= innerHeight && seen !== null && least.contains(seen);
  }, number);

/** Goes through a task's steps as a person would and reads the number. */
async function perform(page: Page, url: string, task: Task, number: string): Promise<Run> {
  let waited = 0;
  let [taps, scrolls, typed] = [0, 0, 0];
  /** The clock runs from an act until what comes next is in sight. */
  let since = performance.now();
  const stop = (): void => {
    waited += performance.now() - since;
  };
  const think = (): Promise<void> => pause(THINKING);

  await page.goto(url, { waitUntil: 'commit' });
  for (const step of task.steps) {
    const target = locate(page, step);
    await target.waitFor({ state: 'visible', timeout: PATIENCE });
    stop();
    await think();
    scrolls += await bring(target);
    if ('tap' in step) {
      taps += 1;
      since = performance.now();
      await target.tap({ noWaitAfter: true });
    } else {
      // A field is tapped once to type in it, and what stood there is typed over.
      taps += 1;
      await target.tap();
      await target.selectText();
      typed += step.text.length;
      await target.pressSequentially(step.text.slice(0, -1));
      await think();
      since = performance.now();
      await target.press(step.text.slice(-1));
    }
  }
  const place = page.locator(task.read).filter({ hasText: number }).first();
  try {
    await place.waitFor({ state: 'visible', timeout: PATIENCE });
    const moved = await bring(place);
    scrolls += moved;
    while (!(await inSight(place, number))) {
      if (performance.now() - since > PATIENCE) throw new Error('It is not in sight.');
      await pause(10);
    }
    stop();
    return { waited, taps, scrolls, typed, read: number };
  } catch {
    return { waited: Number.NaN, taps, scrolls, typed, read: undefined };
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
        if (first.read === undefined) break;
      }
      const [{ taps, scrolls, typed, read } = { taps: 0, scrolls: 0, typed: 0, read: undefined }] =
        cold;
      sheet.line({
        pass: read === number && cold.length === 5,
        text: `${`“${task.asks}”`.padEnd(66)} ${number.padStart(9)}  ${seconds(cold)} (${seconds(again)})  taps ${taps}, scrolls ${scrolls}, typed ${typed}`,
      });
      if (read === undefined) sheet.note(`${number} was not found in ${task.read}.`);
    }
  });
}
