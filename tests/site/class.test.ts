import { parse } from 'csv-parse/sync';
import { strFromU8, unzipSync } from 'fflate';
import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, inject, it } from 'vitest';
import { marked } from '../../src/exercises/marked.ts';
import { writeWork } from '../../src/exercises/result-file.ts';
import type { Tolerance } from '../../src/exercises/span.ts';
import { kept, studio } from '../support/kept.ts';
import { recordOf } from '../support/records.ts';
import { look, reader } from '../support/site.ts';
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
  nth,
  openFile,
  rawsOf,
  sheetOf,
  spaced,
  templateOf,
  textsOf,
  workAt,
  workIn,
} from '../support/student.ts';

const desktop = {
  viewport: { width: 1280, height: 900 },
  reducedMotion: 'reduce',
  acceptDownloads: true,
} as const;

/** Where each kind stands in the copy: the instructors’ list decides that, lesson by lesson, and two are numbers. */
const order = [KINDS.numeric, KINDS.numeric, ...ALL_KINDS.filter((id) => id !== KINDS.numeric)];
let link = '';
const place = (alias: string, id: string, nthOf = 0): number =>
  copyOf(link, alias).flatMap(({ template }, at) => (template.id === id ? [at + 1] : []))[nthOf] ??
  0;

/** What a student saw and saved. */
interface Handed {
  texts: readonly string[];
  file: string;
}
const handed: Record<'heron' | 'otter' | 'wren', Handed> = {
  heron: { texts: [], file: '' },
  otter: { texts: [], file: '' },
  wren: { texts: [], file: '' },
};
const aliases = { heron: 'Blue Heron', otter: 'otter', wren: 'Wren 2' } as const;

const answered = (page: Page, count: number): Promise<void> =>
  page.locator('.work-progress', { hasText: new RegExp(`^${count} of 7`) }).waitFor();

/** An instructor puts seven questions of six kinds together, and takes the link. */
async function compose(): Promise<string> {
  return look(`${inject('url')}assign/`, desktop, async (page) => {
    await page.locator('[data-compose][data-live]').waitFor();
    for (const id of ALL_KINDS)
      await page.locator(`[data-set="${id}"]`).getByRole('button', { name: /^One more/ }).click(); // prettier-ignore
    await page.locator(`[data-set="${KINDS.numeric}"]`).getByRole('textbox').press('ArrowUp');
    await page.getByLabel('each alias its own').check();
    await page.getByLabel('a tenth of the mark each').check();
    await page.getByLabel('Title').fill('The harbour set');
    await page.getByLabel('Due, in your own words').fill('Friday noon');
    return new URL((await page.locator('[data-link]').textContent()) ?? '').search.slice(1);
  });
}

/** After her first visit there is no signal, and all she does is right; one hint was taken. */
async function heron(): Promise<void> {
  const there = await studio();
  try {
    const page = await there.context.newPage();
    const heard = complaintsOf(page);
    await begin(page, workAt(link, there.site.url), `  blue  HERON`);
    await kept(page);
    await there.cutOff();
    // Begun anew, as the alias is written on the list.
    await page.goto('about:blank');
    await page.goto(workAt(link, there.site.url));
    await page.getByLabel('Alias', { exact: true }).fill(aliases.heron);
    await page.getByRole('button', { name: 'Begin' }).click();
    await page.locator('.work-summary').waitFor();
    const alias = 'blue heron';
    const copy = copyOf(link, alias);
    const at = (id: string, nthOf = 0): number => place(alias, id, nthOf);
    handed.heron.texts = await textsOf(page);
    await sheetOf(page, at(KINDS.reading)).locator('svg').waitFor();
    for (const number of [at(KINDS.numeric), at(KINDS.reading), at(KINDS.mistake)])
      await field(page, number).fill(`${keyTimes(nth(copy, number - 1))} m`);
    const second = at(KINDS.numeric, 1);
    await sheetOf(page, second).getByRole('button', { name: /^Hint 1/ }).click(); // prettier-ignore
    await field(page, second).fill(`${keyTimes(nth(copy, second - 1), 100)} cm`);
    for (const text of ['Step back, and crop', 'Have the stand-in turn its head'])
      await sheetOf(page, at(KINDS.choice)).getByLabel(text).check();
    await sheetOf(page, at(KINDS.mistake)).getByLabel('Behind the sensor nothing').check();
    const design = at(KINDS.design);
    await field(page, design, 'Focal length').fill('85 mm');
    await field(page, design, 'Subject distance').fill('2.21');
    await field(page, design, 'Backdrop distance').fill('1.5');
    const brief = at(KINDS.practical);
    await field(page, brief, 'Focal length').fill('85 mm');
    await field(page, brief, 'Frame height').fill('0.9 m');
    await sheetOf(page, brief).getByLabel('as you measured it').fill('2.2 m');
    await answered(page, 7);
    handed.heron.file = await fileOf(page);
    expect(heard).toEqual([]);
  } finally {
    await there.end();
  }
}

/** On a phone, with a decimal comma: a wrong turn, half a choice, and one number that stays open. */
async function otter(): Promise<void> {
  const context = await reader({ ...desktop, viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, locale: 'de-DE' }); // prettier-ignore
  try {
    const page = await context.newPage();
    const heard = complaintsOf(page);
    const { otter: alias } = aliases;
    await begin(page, workAt(link), alias);
    const copy = copyOf(link, alias);
    handed.otter.texts = await textsOf(page);
    const first = place(alias, KINDS.numeric);
    const turn = nth(copy, first - 1).key?.turns[0];
    await field(page, first).fill(`${(turn?.value ?? 0).toPrecision(7).replace('.', ',')} m`);
    await field(page, place(alias, KINDS.numeric, 1)).fill('3,145');
    await sheetOf(page, place(alias, KINDS.choice)).getByLabel('Step back, and crop').tap();
    const reading = place(alias, KINDS.reading);
    await field(page, reading).fill(`${keyTimes(nth(copy, reading - 1)).replace('.', ',')} m`);
    await sheetOf(page, place(alias, KINDS.numeric, 1)).locator('.field-error button').first().waitFor(); // prettier-ignore
    await answered(page, 3);
    handed.otter.file = await fileOf(page);
    expect(heard).toEqual([]);
  } finally {
    await context.close();
  }
}

/** Saves, goes on, crashes; goes on from the file on another machine. */
async function wren(): Promise<void> {
  const { wren: alias } = aliases;
  const copy = copyOf(link, alias);
  const first = place(alias, KINDS.numeric);
  const right = `${keyTimes(nth(copy, first - 1))} m`;
  let file: string;
  const one = await reader(desktop);
  try {
    const page = await one.newPage();
    await begin(page, workAt(link), alias);
    handed.wren.texts = await textsOf(page);
    await field(page, first).fill(right);
    file = await fileOf(page);
    const crashed = page.waitForEvent('crash');
    const devtools = await one.newCDPSession(page);
    devtools.send('Page.crash').catch(() => undefined);
    await crashed;
  } finally {
    await one.close();
  }
  const other = await reader(desktop);
  try {
    const page = await other.newPage();
    const heard = complaintsOf(page);
    await page.goto(`${inject('url')}work/`);
    await openFile(page, file);
    await page.locator('.work-summary').waitFor();
    expect(await textsOf(page)).toEqual(handed.wren.texts);
    expect(await field(page, first).inputValue()).toBe(right);
    await field(page, place(alias, KINDS.numeric, 1)).fill('about so far');
    const mistake = place(alias, KINDS.mistake);
    await sheetOf(page, mistake).getByLabel('Behind the sensor nothing').check();
    await field(page, mistake).fill('99 m');
    const design = place(alias, KINDS.design);
    await field(page, design, 'Focal length').fill('85 mm');
    await field(page, design, 'Subject distance').fill('2.0 m');
    await field(page, design, 'Backdrop distance').fill('1.5 m');
    await answered(page, 3);
    handed.wren.file = await fileOf(page);
    expect(heard).toEqual([]);
  } finally {
    await other.close();
  }
}

beforeAll(async () => {
  link = await compose();
  await heron();
  await otter();
  await wren();
}, 180_000);

/** What the engine makes of a file, question by question; undefined where a person has to judge. */
const creditsOf = (text: string, tolerances: Readonly<Record<string, Tolerance>> = {}): readonly (number | undefined)[] => {
  const { answers, alias } = workIn(text);
  const raws = rawsOf(text);
  return copyOf(link, alias).map(({ question, template }, at) => {
    if (raws[at] === undefined) return 0;
    const { credit } = marked(template, question.seed, raws[at] as string, recordOf, { stored: true, tolerance: tolerances[template.id] }); // prettier-ignore
    const hints = answers.find((one) => one.template === question.template && one.seed === question.seed)?.hints ?? 0; // prettier-ignore
    return credit === undefined ? undefined : Math.max(0, credit - hints / 10);
  });
}; // prettier-ignore

/** Drops files on the desk as a hand with a mouse does. */
const drop = async (page: Page, files: readonly (readonly [name: string, text: string])[]) => {
  const data = await page.evaluateHandle(
    (all) => {
      const transfer = new DataTransfer();
      for (const [name = '', text = ''] of all)
        transfer.items.add(new File([text], name, { type: 'application/json' }));
      return transfer;
    },
    files.map((pair) => [...pair]),
  );
  for (const kind of ['dragover', 'drop'])
    await page.dispatchEvent('[data-desk-drop]', kind, { dataTransfer: data });
};
const table = (page: Page) => page.getByRole('region', { name: 'The class' });
const cell = (page: Page, alias: string, number: number) =>
  table(page).getByRole('button', { name: new RegExp(`^${alias}, question ${number}:`) });

/** Marks by alias and question, as the desk hands them on. */
const marksOf = async (page: Page): Promise<Record<string, { marks: (number | undefined)[]; row: Record<string, string> }>> => {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Marks as CSV', exact: true }).click(),
  ]);
  const rows: Record<string, string>[] = parse(await readFile(await download.path(), 'utf8'), { bom: true, columns: true }); // prettier-ignore
  return Object.fromEntries(
    rows.map((row) => [
      row['alias'] ?? '',
      {
        marks: Object.entries(row)
          .filter(([name]) => name.endsWith(': mark'))
          .map(([, mark]) => (mark === '' ? undefined : Number(mark))),
        row,
      },
    ]),
  );
}; // prettier-ignore
const rounded = (credits: readonly (number | undefined)[]): (number | undefined)[] =>
  credits.map((credit) => (credit === undefined ? undefined : Number(credit.toFixed(3))));

describe('a class', () => {
  it('has numbers of its own for each alias, and the same wherever and however it is typed', () => {
    expect(workIn(handed.heron.file).alias).toBe('blue HERON');
    const plain = (text: string): string => text.replaceAll(/(?<=\d),(?=\d)/g, '.');
    for (const [name, alias] of Object.entries(aliases))
      expect(handed[name as keyof typeof handed].texts.map(plain)).toEqual(
        copyOf(link, alias.toUpperCase()).map(({ text }) => text),
      );
    expect(new Set(Object.values(handed).map(({ texts }) => plain(texts.join()))).size).toBe(3);
    expect(handed.otter.texts.join()).toMatch(/\d,\d/);
    expect(copyOf(link, 'x').map(({ template }) => template.id).toSorted()).toEqual(order.toSorted()); // prettier-ignore
  });

  it('has answer keys and solutions on paper with the numbers of its pages', () =>
    look(`${inject('url')}assign/?${link}`, desktop, async (page) => {
      await page.locator('[data-compose][data-live]').waitFor();
      await page.evaluate(() => (window.print = () => undefined));
      await page.getByLabel('Aliases, one a line').fill(Object.values(aliases).join('\n'));
      const made = async (part: string): Promise<string[]> => {
        await page.getByLabel(part, { exact: true }).check();
        await page.getByRole('button', { name: 'Print', exact: true }).click();
        await page.locator('.sheets[data-whole]').waitFor();
        return (await page.locator('.sheet').allTextContents()).map(spaced);
      };
      const [keys, solutions] = [await made('answer key'), await made('worked solutions')];
      for (const [at, alias] of [aliases.heron, aliases.wren].entries()) {
        const sheet = at === 0 ? 0 : 2;
        const { texts } = handed[at === 0 ? 'heron' : 'wren'];
        for (const text of texts) expect(solutions[sheet]).toContain(text);
        for (const { template, variant } of copyOf(link, alias))
          if ('ask' in template)
            expect(keys[sheet]).toContain(`${spaced(variant.say(`{${template.ask}}`))}. Taken:`);
      }
    })); // prettier-ignore

  it('is marked from its answers, by the engine and by hand, and handed on', () =>
    look(`${inject('url')}marking/`, desktop, async (page) => {
      const heard = complaintsOf(page);
      await drop(page, Object.entries(handed).map(([name, { file }]) => [`${name}.json`, file] as const)); // prettier-ignore
      await table(page).waitFor();
      await eventually(() => table(page).getByRole('row').count()).toBe(4);
      let now = await marksOf(page);
      expect(Object.keys(now).toSorted()).toEqual(['Wren 2', 'blue HERON', 'otter']);
      for (const { file } of Object.values(handed))
        expect(now[workIn(file).alias]?.marks).toEqual(rounded(creditsOf(file)));

      // As the students meant it: right, but for a hint; a known wrong turn; half of a choice; what cannot be read is nought.
      const of = (alias: string, id: string, nthOf = 0) => now[alias]?.marks[place(alias, id, nthOf) - 1]; // prettier-ignore
      expect([KINDS.numeric, KINDS.choice, KINDS.reading, KINDS.mistake, KINDS.design].map((id) => of('blue HERON', id))).toEqual([1, 1, 1, 1, 1]); // prettier-ignore
      expect(of('blue HERON', KINDS.numeric, 1)).toBe(0.9);
      expect(of('blue HERON', KINDS.practical)).toBeUndefined();
      expect([of('otter', KINDS.numeric), of('otter', KINDS.numeric, 1), of('otter', KINDS.choice), of('otter', KINDS.reading), of('otter', KINDS.design)]).toEqual([0.5, 0, 0.5, 1, 0]); // prettier-ignore
      expect([of('Wren 2', KINDS.numeric), of('Wren 2', KINDS.numeric, 1), of('Wren 2', KINDS.mistake), of('Wren 2', KINDS.design)]).toEqual([1, 0, 0.5, 0.75]); // prettier-ignore

      const brief = place('heron', KINDS.practical);
      await cell(page, 'blue HERON', brief).click();
      await page.getByLabel('Mark, of 100').fill('80');
      await page.getByLabel('Note to the student').fill('A second distance, "next time"; =1+1');
      await page.getByRole('button', { name: 'Set this mark' }).click();
      await eventually(() => cell(page, 'blue HERON', brief).textContent()).toBe('80*');
      const numeric = place('otter', KINDS.numeric);
      await page.getByLabel(`Tolerance of question ${numeric}`, { exact: true }).fill('50 %');
      await page.getByLabel(`Tolerance of question ${numeric}`, { exact: true }).press('Tab');
      await eventually(() => cell(page, 'otter', numeric).textContent()).toBe('100');
      now = await marksOf(page);
      const wide = { [KINDS.numeric]: { relative: 0.5, absolute: 0 } };
      for (const { file } of Object.values(handed)) {
        const { alias } = workIn(file);
        const credits = creditsOf(file, wide).map((credit, at) => (alias === 'blue HERON' && at === brief - 1 ? 0.8 : credit)); // prettier-ignore
        expect(now[alias]?.marks).toEqual(rounded(credits));
        expect(Number(now[alias]?.row['total'])).toBeCloseTo(credits.reduce<number>((sum, one) => sum + (one ?? 0), 0), 2); // prettier-ignore
        expect(now[alias]?.row['assignment']).toBe('The harbour set');
      }
      expect(Object.values(now['blue HERON']?.row ?? {})).toContain('A second distance, "next time"; =1+1'); // prettier-ignore

      const [download] = await Promise.all([
        page.waitForEvent('download'),
        page.getByRole('button', { name: 'Save a marked copy for each' }).click(),
      ]);
      const files = unzipSync(await readFile(await download.path()));
      expect(Object.keys(files)).toHaveLength(3);
      const copies = Object.entries(files).map(([name, bytes]) => [name, strFromU8(bytes)] as const);
      const mine = copies.find(([name]) => /heron/i.test(name))?.[1] ?? '';
      expect(mine).toContain('A second distance, &quot;next time&quot;');
      for (const [, copy] of copies.filter(([name]) => !/heron/i.test(name)))
        expect(copy).not.toContain('A second distance');
      expect(heard).toEqual([]);
    })); // prettier-ignore

  it('gets nothing from a file that was changed but what its answers say', () =>
    look(`${inject('url')}marking/`, desktop, async (page) => {
      const { otter: alias } = aliases;
      const number = place(alias, KINDS.numeric);
      const one = nth(copyOf(link, alias), number - 1);
      const work = workIn(handed.otter.file);
      const answers = work.answers.map((answer) =>
        answer.template === one.question.template && answer.seed === one.question.seed
          ? { ...answer, raw: `${keyTimes(one)} m` }
          : answer,
      );
      const { checksum } = JSON.parse(handed.otter.file) as { checksum: string };
      const changed = JSON.stringify({
        ...(JSON.parse(writeWork({ ...work, answers })) as object),
        answers: answers.map((answer) => ({ ...answer, credit: 1, mark: 100 })),
        checksum,
        marks: [1, 1, 1, 1, 1, 1, 1],
        total: 99,
      });
      await drop(page, [['otter.json', changed], ['heron.json', handed.heron.file]]); // prettier-ignore
      await eventually(() => table(page).getByRole('row').count()).toBe(3);
      expect(await page.locator('[data-desk]').textContent()).toMatch(/sum does not fit in otter\.json/); // prettier-ignore
      const { marks } = (await marksOf(page))['otter'] ?? {};
      const before = creditsOf(handed.otter.file);
      expect(before[number - 1]).toBe(0.5);
      expect(marks).toEqual(rounded(before.map((credit, at) => (at === number - 1 ? 1 : credit))));
      expect(templateOf(KINDS.numeric).kind).toBe('numeric');
    })); // prettier-ignore
});
