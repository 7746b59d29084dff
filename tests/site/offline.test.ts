import { createHash } from 'node:crypto';
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { startOwnChromium } from '../../src/site/commands/browser.ts';
import { LIMIT, writeCopy } from '../../src/site/offline/copy.ts';
import { filesUnder, root } from '../support/files.ts';
import { kept, studio, type Studio } from '../support/kept.ts';
import { kilobytes, pages, wake } from '../support/site.ts';
import {
  begin,
  copyOf,
  field,
  fileOf,
  json,
  keyTimes,
  KINDS,
  linkTo,
  nth,
  progress,
  sheetOf,
  workAt,
} from '../support/student.ts';

/** What a reader without a signal does without: where hosts and crawlers look, the worker itself, pictures of the README. */
const LEFT_OUT = /^(_headers|robots\.txt|sw\.js|workbox-[0-9a-f]+\.js|tour\/.+)$/;
const files = filesUnder('dist').map((file) => file.slice('dist/'.length));
const carried = files.filter((file) => !LEFT_OUT.test(file));
const addressOf = (file: string): string => file.replace(/(^|\/)index\.html$/, '$1');
const digest = (file: string): string =>
  createHash('sha256')
    .update(readFileSync(join(root, 'dist', file)))
    .digest('hex');

/** Waits for what a worker or another window is to bring about. */
const eventually = <T>(see: () => Promise<T>) => expect.poll(see, { timeout: 20_000 });

/** Notes whatever a page asks for in vain. */
function failures(page: Page): string[] {
  const failed: string[] = [];
  page.on('requestfailed', (request) => failed.push(request.url()));
  page.on('response', (answer) => {
    if (answer.status() >= 400) failed.push(`${answer.status()} ${answer.url()}`);
  });
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) failed.push(message.text());
  });
  page.on('pageerror', (error) => failed.push(error.message));
  return failed;
}

describe('the copy', () => {
  it('is every file of the site but what no reader asks for, and at most 3 MB of gzip', () => {
    const sum = carried
      .map((file) => kilobytes(readFileSync(join(root, 'dist', file))))
      .reduce((all, one) => all + one, 0);
    expect(sum).toBeLessThanOrEqual(LIMIT / 1000);
    const edition = JSON.parse(readFileSync(join(root, 'dist/edition.json'), 'utf8')) as unknown;
    expect(edition).toMatchObject({ files: carried.length });
    const worker = readFileSync(join(root, 'dist/sw.js'), 'utf8');
    expect(worker).not.toMatch(/sourceMappingURL|localhost/);
    // Below whatever base the site is put: no address begins at the root.
    const urls = [...worker.matchAll(/"url":"([^"]*)"/g)].map(([, url]) => url ?? '');
    expect(urls.map((url) => url.replace(/^\.\/$/, '')).toSorted()).toEqual(
      carried.map(addressOf).toSorted(),
    );
  });
});

describe('without a signal, after one visit', () => {
  let there: Studio;
  let page: Page;

  beforeAll(async () => {
    there = await studio();
    page = await there.context.newPage();
    await page.goto(`${there.site.url}plates/room-fit/`);
    await kept(page);
    await there.cutOff();
  });
  afterAll(() => there.end());

  it('has every file as it was published, whatever stands in the query', async () => {
    const found = await page.evaluate(async (addresses) => {
      const answers: Record<string, string> = {};
      for (const address of addresses) {
        const answer = await fetch(
          new URL(`${address}?f=85mm&x`, document.baseURI.replace(/plates\/.*$/, '')),
        );
        const sum = await crypto.subtle.digest('SHA-256', await answer.arrayBuffer());
        answers[address] = [...new Uint8Array(sum)]
          .map((byte) => byte.toString(16).padStart(2, '0'))
          .join('');
      }
      return answers;
    }, carried.map(addressOf));
    expect(found).toEqual(
      Object.fromEntries(carried.map((file) => [addressOf(file), digest(file)])),
    );
  });

  it('searches', async () => {
    const window = await there.context.newPage();
    const failed = failures(window);
    await window.goto(`${there.site.url}search/?q=f-stop`);
    await eventually(() => window.locator('[data-search-results] a').count()).toBeGreaterThan(0);
    expect(failed).toEqual([]);
    await window.close();
  });

  it.each([
    '',
    'focal-length/',
    'focal-length/angle-of-view/',
    'plates/',
    'plates/depth-of-field/?aperture=2.8',
    'check-values/',
    'glossary/',
    'checklists/props/',
    'day-plan/',
    'assign/',
    'practise/',
    'work/',
    'marking/',
    'about/',
    'offline/',
    'tables/',
    'tables/depth-of-field/',
    'tables/own/',
    'tables/card/',
    'kit/',
    'search/?q=f-stop',
  ])('opens /%s with all it needs', async (address) => {
    const window = await there.context.newPage();
    const failed = failures(window);
    await window.goto(`${there.site.url}${address}`);
    await wake(window);
    const built = pages.find(({ path }) => path === address.replace(/\?.*/, ''));
    const [, title] =
      /<title>([^<]*)/.exec(readFileSync(join(root, built?.file ?? ''), 'utf8')) ?? [];
    expect(await window.title()).toBe(title);
    expect(await window.locator('h1').count()).toBe(1);
    await window.evaluate(() => document.fonts.ready);
    expect(await window.evaluate(() => document.fonts.check('1em "Source Sans 3"'))).toBe(true);
    expect(failed).toEqual([]);
    await window.close();
  });

  it('computes, and fetches what a plate fetches late: its link, a size of one’s own, the other way round', async () => {
    const window = await there.context.newPage();
    const failed = failures(window);
    await window.goto(`${there.site.url}plates/angle-of-view/?focal-length=50mm`);
    const plate = window.locator('[data-plate]');
    const number = plate.locator('.result-number');
    const field = plate.locator('[data-id="focal-length"] input').first();
    await eventually(() => field.inputValue()).toBe('50');
    const at50 = await number.textContent();
    await field.fill('35');
    await eventually(() => number.textContent()).not.toBe(at50);

    await plate.locator('[data-id="format"] select').selectOption('custom');
    await eventually(() => plate.locator('.field-custom input').first().isVisible()).toBe(true);
    await plate.getByText('Ask the other way round').click();
    await plate.getByLabel('of', { exact: true }).fill('30');
    await plate.getByRole('button', { name: 'Work it out' }).click();
    await eventually(() => plate.locator('[data-ask] + p').textContent()).toMatch(/\d/);
    await window.locator('[data-theme-switch]').click();
    await eventually(() => window.evaluate(() => document.documentElement.dataset['theme'])).toBe(
      'light',
    );
    expect(failed).toEqual([]);
    await window.close();
  });

  it('draws an exercise with its drawing, and marks the answer', async () => {
    const window = await there.context.newPage();
    const failed = failures(window);
    await window.goto(`${there.site.url}practise/?exercise=${KINDS.reading}&seed=3`);
    await window.locator('.question-sheet svg path').first().waitFor();
    await window.locator('.question-sheet input[type="text"]').fill('99 m');
    await window.getByRole('button', { name: 'Check' }).click();
    await eventually(() => window.locator('.verdict').textContent()).toMatch(/Not right/);
    await window.getByRole('button', { name: 'Another exercise' }).click();
    await eventually(() => Promise.resolve(new URL(window.url()).search)).not.toContain(
      KINDS.reading,
    );
    await window.locator('.question-sheet').waitFor();
    expect(failed).toEqual([]);
    await window.close();
  });

  it('takes an assignment from its first word to the file, and marks it', async () => {
    const link = linkTo([KINDS.numeric, KINDS.reading]);
    const window = await there.context.newPage();
    const failed = failures(window);
    await begin(window, workAt(link, there.site.url), 'wren');
    const copy = copyOf(link, 'wren');
    await sheetOf(window, 2).locator('svg path').first().waitFor();
    await field(window, 1).fill(`${keyTimes(nth(copy, 0))} m`);
    await eventually(() => progress(window)).toMatch(/^1 of 2/);
    // Closed, and gone on with in another window.
    await window.close();
    const again = await there.context.newPage();
    const failedLater = failures(again);
    await again.goto(workAt(link, there.site.url));
    await again.getByRole('button', { name: 'Go on as wren' }).click();
    await field(again, 2).fill(`${keyTimes(nth(copy, 1))} m`);
    await eventually(() => progress(again)).toMatch(/^2 of 2/);
    const file = await fileOf(again);
    await again.goto(`${there.site.url}marking/`);
    await again.locator('[data-desk-files]').setInputFiles(json('wren.json', file));
    const marks = again.getByRole('region', { name: 'The class' }).getByRole('button');
    await eventually(() => marks.allTextContents()).toEqual(['100', '100']);
    expect([...failed, ...failedLater]).toEqual([]);
    await again.close();
  });

  it('says what is kept', async () => {
    const window = await there.context.newPage();
    await window.goto(`${there.site.url}offline/`);
    const state = window.locator('[data-offline-state]');
    await eventually(() => state.textContent()).toMatch(`Yes: ${carried.length} files, `);
    await eventually(() => window.locator('.signal .kept').isVisible()).toBe(true);
    expect(await window.locator('.signal .not-kept').isVisible()).toBe(false);
    await window.locator('[data-offline-look]').click();
    await eventually(() => window.locator('[data-offline-said]').textContent()).toMatch(
      /no signal here/,
    );
    await window.close();
  });

  it('opens an address that lacks its last slash, or names the file', async () => {
    const window = await there.context.newPage();
    for (const address of ['plates?x=1', 'plates/index.html']) {
      await window.goto(`${there.site.url}${address}`);
      expect(await window.locator('h1').textContent()).toBe('Plates');
    }
    await window.close();
  });

  it('says so where it has no page', async () => {
    const window = await there.context.newPage();
    await window.goto(`${there.site.url}plates/not-yet-written/`);
    expect(await window.locator('h1').textContent()).toBe('There is no page here');
    await window.close();
  });
});

describe('a newer edition', () => {
  let there: Studio;
  const mark = (page: Page): Promise<string> =>
    page.locator('footer').getByText('code MIT').innerText();
  const line = (page: Page) => page.locator('[data-edition]');

  /** Every page is one letter different, a page is new, and a script that old pages fetch late is gone. */
  const publish = async (): Promise<void> => {
    for (const file of filesUnder('dist').filter((one) => one.endsWith('.html'))) {
      const path = join(there.folder, file.slice('dist/'.length));
      writeFileSync(path, readFileSync(path, 'utf8').replace('code MIT', 'Code MIT'));
    }
    writeFileSync(join(there.folder, 'new.html'), '<!doctype html><h1>Published later</h1>');
    const late = files.filter((file) => file.startsWith('_astro/theme.'));
    expect(late).toHaveLength(1);
    for (const file of late) rmSync(join(there.folder, file));
    await writeCopy(there.folder);
  };

  beforeAll(async () => {
    there = await studio();
  });
  afterAll(() => there.end());

  it('waits until a reader asks for it, and leaves other windows in theirs', async () => {
    const { context, site } = there;
    const one = await context.newPage();
    await one.goto(`${site.url}about/`);
    await kept(one);
    const other = await context.newPage();
    await other.goto(`${site.url}plates/angle-of-view/`);
    const field = other.locator('[data-id="focal-length"] input').first();
    const number = other.locator('.result-number');
    const before = await number.textContent();
    await field.fill('35');
    await eventually(() => number.textContent()).not.toBe(before);
    const at35 = await number.textContent();
    expect(await line(one).textContent()).toBe('');

    await publish();
    await one.reload();
    await eventually(() => line(one).textContent()).toMatch(/newer edition is ready/);
    await eventually(() => line(other).textContent()).toMatch(/newer edition is ready/);
    // It stands at the foot of the window, and nothing else has moved.
    const box = await line(one).boundingBox();
    expect((box?.y ?? 0) + (box?.height ?? 0)).toBeCloseTo(844, 0);

    // Nothing has changed hands: pages still come from the edition in use, and what is newer from the network.
    await one.goto(`${site.url}safety/`);
    expect(await mark(one)).toContain('code MIT');
    await one.goto(`${site.url}new.html`);
    expect(await one.locator('h1').textContent()).toBe('Published later');
    await one.goto(`${site.url}about/`);
    await eventually(() => line(one).textContent()).toMatch(/newer edition is ready/);
    expect(await number.textContent()).toBe(at35);

    await one.getByRole('button', { name: 'Use it now' }).click();
    await eventually(() => mark(one)).toContain('Code MIT');
    expect(await line(one).textContent()).toBe('');

    // The other window is told, goes on, and still gets the parts of its own edition.
    await eventually(() => line(other).textContent()).toMatch(/of an older edition/);
    expect(await mark(other)).toContain('code MIT');
    expect(await field.inputValue()).toBe('35');
    await field.fill('50');
    await eventually(() => number.textContent()).not.toBe(at35);
    await other.locator('[data-theme-switch]').click();
    await eventually(() => other.evaluate(() => document.documentElement.dataset['theme'])).toBe(
      'light',
    );
    await other.getByRole('button', { name: 'Read it anew' }).click();
    await eventually(() => mark(other)).toContain('Code MIT');
    expect(await line(other).textContent()).toBe('');
  });
});

it('can be put among a device’s own programs', async () => {
  const context = await startOwnChromium(inject('chromium'));
  try {
    const page = await context.newPage();
    await page.goto(inject('url'));
    await kept(page);
    const devtools = await context.newCDPSession(page);
    const { errors, url } = await devtools.send('Page.getAppManifest');
    expect(url).toBe(`${inject('url')}manifest.webmanifest`);
    expect(errors).toEqual([]);
    const { installabilityErrors } = await devtools.send('Page.getInstallabilityErrors');
    expect(installabilityErrors).toEqual([]);
  } finally {
    await context.close();
  }
});
