import { readFile } from 'node:fs/promises';
import type { Locator, Page } from 'playwright-core';
import { expect, inject } from 'vitest';
import {
  questionsOf,
  readAssignment,
  writeAssignment,
  type Assignment,
  type Question,
} from '../../src/exercises/assignment.ts';
import { readWork, type Work } from '../../src/exercises/result-file.ts';
import type { Template } from '../../src/exercises/template.ts';
import { keyOf, variantOf, type Key, type Variant } from '../../src/exercises/variant.ts';
import { bank } from './bank.ts';
import { recordOf } from './records.ts';

/** A student at the page where assignments are worked on, and what the engine says of the same copy. */

/** One exercise of each kind. */
export const KINDS = {
  numeric: 'step-back-for-the-frame',
  choice: 'what-changes-the-nose',
  reading: 'quay-from-the-drawing',
  mistake: 'room-reckoned-short',
  design: 'hide-the-top-edge',
  practical: 'tape-and-frame',
} as const satisfies Record<Template['kind'], string>;
export const ALL_KINDS = Object.values(KINDS);

export const templateOf = (id: string): Template => {
  const found = bank.find(({ template }) => template.id === id)?.template;
  if (!found) throw new Error(`The exercise ${id} is gone.`);
  return found;
};

/** A link to some exercises, one of each or as many as said. */
export const linkTo = (
  exercises: readonly (string | readonly [id: string, count: number])[],
  more: Partial<Assignment> = {},
): string =>
  writeAssignment({
    title: 'Light & room, 50 %',
    due: 'Friday, before the set is built',
    seeds: 'alias',
    hints: 'free',
    draw: 7,
    items: exercises.map((one) => {
      const [id, count] = typeof one === 'string' ? [one, 1] : one;
      return { template: id, version: templateOf(id).version, count };
    }),
    ...more,
  });

/** One question of a copy, as the engine has it. */
export interface Copied {
  readonly question: Question;
  readonly template: Template;
  readonly variant: Variant;
  /** As it is read on the page. */
  readonly text: string;
  /** Where a number is asked for. */
  readonly key: Key | undefined;
}

export const spaced = (text: string): string => text.replaceAll(/[\s\u00a0\u202f]+/g, ' ').trim();

export const copyOf = (link: string, alias: string): readonly Copied[] => {
  const read = readAssignment(link);
  if (!read.ok) throw new Error(read.why);
  return questionsOf(read.value, alias).map((question) => {
    const template = templateOf(question.template);
    const variant = variantOf(template, recordOf, question.seed);
    return {
      question,
      template,
      variant,
      text: spaced(variant.say(template.text)),
      key: 'ask' in template ? keyOf(variant as Parameters<typeof keyOf>[0], recordOf) : undefined,
    };
  });
};

/** One of a copy; a question that is not there is the test’s mistake. */
export const nth = (copy: readonly Copied[], at: number): Copied => {
  const found = copy[at];
  if (!found) throw new Error(`The copy has no question ${at + 1}.`);
  return found;
};

/** The key in metres, or whatever the answer is asked in, times something. */
export const keyTimes = ({ key }: Copied, factor = 1): string => {
  if (!key) throw new Error('There is no number to ask for.');
  return (key.value * factor).toPrecision(7);
};

export const workAt = (link: string, base = inject('url')): string => `${base}work/?${link}`;

export const begin = async (page: Page, url: string, alias: string): Promise<void> => {
  await page.goto(url);
  await page.getByLabel('Alias', { exact: true }).fill(alias);
  await page.getByRole('button', { name: 'Begin' }).click();
  await page.locator('.work-summary').waitFor();
};
export const sheetOf = (page: Page, number: number): Locator => page.locator(`#question-${number}`);
/** A field by its label; without one, the field for the number that is asked for. */
export const field = (page: Page, number: number, label?: string): Locator =>
  label === undefined
    ? sheetOf(page, number).locator('input[type="text"]')
    : sheetOf(page, number).getByLabel(label, { exact: true });
export const textsOf = async (page: Page): Promise<string[]> =>
  (await page.locator('.question-sheet > p:first-of-type').allTextContents()).map(spaced);
export const stateOf = (page: Page, number: number): Locator =>
  page
    .locator('.work-list > li')
    .nth(number - 1)
    .locator('.work-state');
export const progress = (page: Page): Promise<string | null> =>
  page.locator('.work-progress').textContent();

/** Waits for what comes of a press, a timer or another window. */
export const eventually = <T>(see: () => Promise<T>) => expect.poll(see, { timeout: 15_000 });

/** Presses save and reads what was saved. */
export const fileOf = async (page: Page): Promise<string> => {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save the file to hand in' }).click(),
  ]);
  return readFile(await download.path(), 'utf8');
};
export const workIn = (text: string): Work => {
  const read = readWork(text);
  if (!read.ok) throw new Error(read.why);
  return read.value;
};
/** Answers of a file in the order of the copy, undefined where there is none. */
export const rawsOf = (text: string): readonly unknown[] => {
  const { answers, alias, link } = workIn(text);
  return copyOf(link, alias).map(
    ({ question }) =>
      answers.find((one) => one.template === question.template && one.seed === question.seed)?.raw,
  );
};

export const json = (name: string, text: string) => ({
  name,
  mimeType: 'application/json',
  buffer: Buffer.from(text),
});
export const openFile = (page: Page, text: string, name = 'work.json'): Promise<void> =>
  page.locator('[data-work-file]').setInputFiles(json(name, text));

/** Whatever a page complains of, or asks in a box of its own. */
export const complaintsOf = (page: Page): string[] => {
  const heard: string[] = [];
  page.on('pageerror', ({ message }) => heard.push(message));
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) heard.push(message.text());
  });
  page.on('dialog', (dialog) => {
    heard.push(`a dialog: ${dialog.type()} ${dialog.message()}`);
    void dialog.accept();
  });
  return heard;
};
