import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, inject, it } from 'vitest';
import { compute } from '../../src/formula/compute.ts';
import { complete } from '../../src/formula/read.ts';
import { startsOf } from '../../src/formula/starts.ts';
import depthOfField from '../../src/optics/aperture/depth-of-field.ts';
import { find } from '../../src/search/find.ts';
import { openIndex, type IndexFile } from '../../src/search/index.ts';
import { root } from '../support/files.ts';
import { addressOf, kilobytes, look, markupOf, pages } from '../support/site.ts';
import { queries } from '../search/queries.json' with { type: 'json' };

const text = readFileSync(join(root, 'dist/search-index.json'), 'utf8');
const index = openIndex(JSON.parse(text) as IndexFile);
const built = pages.find(({ path }) => path === 'search/');
if (!built) throw new Error('There is no search page.');
/** Until something holds, on however busy a machine. */
const until: typeof expect.poll = (see) => expect.poll(see, { timeout: 20_000 });
const SCRIPT = 12;
const INDEX = 60;

const status = (page: Page) => page.locator('[data-search-status]');
const hits = (page: Page) => page.locator('[data-search-results] a');
const asked = (question: string): string =>
  addressOf(built, `?${new URLSearchParams({ q: question }).toString()}`);
/** Opens the page with a question in its address and waits for the answer. */
const search = <T>(question: string, use: (page: Page) => Promise<T>): Promise<T> =>
  look(asked(question), {}, async (page) => {
    await until(() => status(page).textContent()).toMatch(/^\d+ results?$|^No results$/);
    return use(page);
  });

describe('what is looked for', () => {
  it('was asked by us and by others, and some of it misspelt', () => {
    const strangers = queries.filter(({ by }) => by === 'a stranger');
    expect(queries.length).toBeGreaterThanOrEqual(45);
    expect(queries.filter(({ misspelt }) => misspelt).length).toBeGreaterThanOrEqual(10);
    expect(strangers.length).toBeGreaterThanOrEqual(15);
    expect(new Set(queries.map(({ query }) => query)).size).toBe(queries.length);
  });

  it.each(queries.map(({ query, expects }) => [query, expects]))(
    '“%s” leads to %s among the first three',
    (query, expects) => {
      const first = find(index, query).map(({ entry }) => entry.address.replace(/\?.*/, ''));
      const right = [expects].flat();
      expect(first.slice(0, 3).filter((address) => right.includes(address))).not.toEqual([]);
    },
  );

  it('is everything that has an address here', () => {
    const known = new Set(index.entries.map(({ address }) => address.slice(1)));
    const lost = pages
      .map(({ path }) => path)
      .filter((path) => !/^(404\.html|search\/|)$|^check-values\/.+|^tables\/(own|card)?\/?$|^kit\/$/.test(path))
      .filter((path) => !known.has(path)); // prettier-ignore
    expect(lost).toEqual([]);
    const dead = index.entries.filter(({ address }) => {
      const [path = '', hash] = address.slice(1).split('#');
      const page = pages.find((one) => one.path === path);
      return !page || (hash !== undefined && !markupOf(page).includes(`id="${hash}"`));
    });
    expect(dead.map(({ address }) => address)).toEqual([]);
  });

  it('has its answer beside it', () => {
    const says = (kind: string) =>
      index.entries.filter((entry) => entry.kind === kind).map((entry) => entry.says);
    expect(says('Plate').filter((said) => !/\d/.test(said))).toEqual([]);
    expect(says('Word').filter((said) => said.length < 20)).toEqual([]);
    expect(text).not.toMatch(/NaN|undefined|null|\[object/);
  });
});

describe('the page', () => {
  it('fetches little before its first use, then the search within its budget', async () => {
    await look(addressOf(built), {}, async (page) => {
      const sizes: Record<string, number> = {};
      const waits: Promise<void>[] = [];
      page.on('response', (response) => {
        const kind = /\.(js|json)$/.exec(new URL(response.url()).pathname)?.[1];
        if (!kind) return;
        waits.push(
          response.body().then((body) => {
            sizes[kind] = (sizes[kind] ?? 0) + kilobytes(body);
          }),
        );
      });
      const counted = async () => {
        await Promise.all(waits);
        return { js: sizes['js'] ?? 0, json: sizes['json'] ?? 0 };
      };
      await page.reload({ waitUntil: 'networkidle' });
      const before = await counted();
      expect(before.js).toBeLessThan(4);
      expect(before.js).toBeGreaterThan(0.1);
      expect(before.json).toBe(0);
      await page.locator('input[type=search]').pressSequentially('bokeh');
      await until(() => status(page).textContent()).toMatch(/results/);
      const after = await counted();
      expect(after.js - before.js).toBeLessThan(SCRIPT);
      expect(after.js - before.js).toBeGreaterThan(3);
      expect(after.json).toBeLessThan(INDEX);
      expect(after.json).toBeGreaterThan(20);
    });
  });

  it('shows results as one types, says how many, and keeps the question in the address', async () => {
    await look(addressOf(built), {}, async (page) => {
      await page.locator('input[type=search]').pressSequentially('fstop');
      await until(() => status(page).textContent()).toMatch(/^\d+ results$/);
      expect(await status(page).getAttribute('role')).toBe('status');
      const [said = ''] = (await status(page).textContent())?.match(/\d+/) ?? [];
      expect(await hits(page).count()).toBe(Number(said));
      const first = await hits(page).first().innerText();
      expect(first).toMatch(/^Word\n(aperture|f-number)\n/);
      expect(first).toMatch(/The (opening inside the lens|focal length divided)/);
      await until(() => page.url()).toMatch(/\?q=fstop$/);
      expect(await page.locator('[data-search-ways]').isVisible()).toBe(false);
      await page.locator('input[type=search]').fill('');
      await until(() => page.locator('[data-search-ways]').isVisible()).toBe(true);
      await until(() => page.url()).not.toContain('?');
      expect(await hits(page).count()).toBe(0);
    });
  });

  it('is gone through with the arrow keys, Enter and Escape', async () => {
    await search('depth of field', async (page) => {
      const field = page.locator('input[type=search]');
      const focused = () => page.evaluate(() => document.activeElement?.getAttribute('href') ?? document.activeElement?.tagName); // prettier-ignore
      const [first, second] = await hits(page).evaluateAll((all) =>
        all.map((one) => one.getAttribute('href')),
      );
      await field.focus();
      await page.keyboard.press('ArrowDown');
      await until(focused).toBe(first);
      await page.keyboard.press('ArrowDown');
      expect(await focused()).toBe(second);
      await page.keyboard.press('ArrowUp');
      await page.keyboard.press('ArrowUp');
      expect(await focused()).toBe('INPUT');
      await page.keyboard.press('Enter');
      await until(focused).toBe(first);
      await page.keyboard.press('Escape');
      expect(await focused()).toBe('INPUT');
      await page.keyboard.press('Escape');
      expect(await field.inputValue()).toBe('');
      await until(() => hits(page).count()).toBe(0);
      await field.fill('depth of field');
      await until(() => hits(page).count()).toBeGreaterThan(1);
      await page.keyboard.press('Enter');
      await until(focused).toBe(first);
      await page.keyboard.press('Enter');
      await page.waitForURL((url) => url.pathname.endsWith(first ?? '?') || url.href.endsWith(first ?? '?')); // prettier-ignore
      await page.goBack();
      await until(() => status(page).textContent()).toMatch(/results/);
      expect(await field.inputValue()).toBe('depth of field');
    });
  });

  it('has results for a thumb, at 320 px too, and nothing sticks out', async () => {
    await look(asked('light'), { viewport: { width: 320, height: 700 } }, async (page) => {
      await until(() => hits(page).count()).toBeGreaterThan(3);
      const heights = await hits(page).evaluateAll((all) =>
        all.map((one) => one.getBoundingClientRect().height),
      );
      expect(Math.min(...heights)).toBeGreaterThanOrEqual(44);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(
        320,
      );
    });
  });

  it('without script says so, and lists where to look', async () => {
    await look(addressOf(built), { javaScriptEnabled: false }, async (page) => {
      expect(await page.locator('form[role=search]').isVisible()).toBe(false);
      expect(await page.locator('noscript').textContent()).toMatch(/script/);
      const links = await page
        .locator('[data-search-ways] a')
        .evaluateAll((all) => all.map((one) => (one as HTMLAnchorElement).href));
      expect(links.filter((link) => link.includes('/plates/')).length).toBeGreaterThan(35);
      expect(links.filter((link) => link.includes('/glossary/#')).length).toBeGreaterThan(15);
    });
  });

  it('says it in a sentence when the index cannot be fetched, and tries again', async () => {
    await look(addressOf(built), {}, async (page) => {
      await page.route('**/search-index.json', (route) => route.abort(), { times: 1 });
      const field = page.locator('input[type=search]');
      await field.fill('bokeh');
      await until(() => status(page).textContent()).toMatch(/could not be fetched/);
      await field.blur();
      await field.focus();
      await until(() => status(page).textContent()).toMatch(/results/);
      await page.unrouteAll();
    });
  });

  it('names what is near where nothing is found', async () => {
    await search('catchlghtzz', async (page) => {
      expect(await status(page).textContent()).toBe('No results');
      const near = page.locator('[data-search-none] a');
      expect(await near.allInnerTexts()).toContain('catchlight');
      await near.filter({ hasText: 'catchlight' }).click();
      await until(() => hits(page).first().innerText()).toMatch(/^Word\ncatchlight/);
    });
  });
});

describe('numbers in a question', () => {
  const answered = (question: string) =>
    search(question, async (page) => {
      const first = hits(page).first();
      return {
        text: (await first.innerText()).replaceAll('\u00a0', ' '),
        href: (await first.getAttribute('href')) ?? '',
      };
    });

  it('are given to the plate that fits, and its link opens with them', async () => {
    const { text, href } = await answered('85mm f4 2.2 m depth of field');
    // The page's own record, asked by another way than the search.
    const given = { ...startsOf(depthOfField), f: 0.085, N: 4, s: 2.2 };
    const { near, far } = compute(depthOfField, complete(depthOfField, given));
    expect(text).toMatch(/^Plate 2\.3\nDepth of field\n/);
    expect(text).toContain(`from ${(near as number).toFixed(3)} m to ${(far as number).toFixed(3)} m`);
    expect(text).toContain('With focal length 85 mm, f/4, subject distance 2.20 m; the rest as the plate starts.');
    await look(new URL(href, inject('url')).href, {}, async (page) => {
      await until(() => page.locator('.result').first().textContent())
        .toContain(`${(near as number).toFixed(3)}\u00a0m`);
      const field = page.locator('[data-field=s] input').first();
      expect(await field.inputValue()).toBe('2.2');
    });
  }); // prettier-ignore

  it.each([
    ['framing distance 50mm', /^Plate 1\.2\n.*\n.*50 mm must be 1\.30 m[\s\S]*With focal length 50 mm/],
    ['depth of field 2,2 m 85 mm f/4', /2,128 m to 2,277 m/],
    ['depth of field 7 ft 85mm f4', /6′ \d+.*″[\s\S]*subject distance 7′/],
    ['ambient 1/200 f4 iso 400', /With 1\/200 s|shutter 1\/200 s/],
    ['depth of field f/0.1', /F-number must be between .*; you typed f\/0\.1/],
    ['depth of field 1.250 m', /could be 1\.25 m or 1250 m/],
    ['fall-off 1 m 2 m', /With near 1\.00 m, far 2\.00 m/],
    ['framing distance 50 mm 300 K', /Not used: 300|50 mm/],
    ['depth of field 85mm f4 7 kg', /Not used: 7 kg\./],
  ])('“%s” is answered, or refused in a sentence', async (question, expected) => {
    const { text } = await answered(question);
    expect(text).toMatch(expected);
    expect(text).not.toMatch(/NaN|Infinity|undefined/);
  }); // prettier-ignore
});

describe('a hostile question', () => {
  it.each([
    ['a megabyte', 'aperture '.repeat(500)],
    ['direction marks', '\u202Efield of depth\u202C \u200Fdof'],
    ['markup', '<img src=x onerror=alert(1)><script>alert(1)</script>'],
    ['a prototype', '__proto__ constructor toString'],
    ['numbers without end', '9'.repeat(100) + 'mm f/' + '9'.repeat(100)],
    ['signs', '=N #1 "\' \\ %00 & ? /'],
  ])('of %s is only a question', async (_name, question) => {
    await search(question, async (page) => {
      const problems: string[] = [];
      page.on('pageerror', (error) => problems.push(error.message));
      page.on('dialog', (dialog) => {
        problems.push(dialog.message());
        void dialog.dismiss();
      });
      const main = page.locator('main');
      expect(await main.locator('img, script:not([type=module])').count()).toBe(0);
      expect(await main.innerText()).not.toMatch(/NaN|undefined|Infinity/);
      await page.locator('input[type=search]').fill('depth of field');
      await until(() => hits(page).first().innerText()).toMatch(/[Dd]epth of field/);
      expect(problems).toEqual([]);
      expect(new URL(page.url()).search.length).toBeLessThan(800);
    });
  });

  it('typed whole is cut, and never freezes the page', async () => {
    await look(addressOf(built), {}, async (page) => {
      await page.locator('input[type=search]').evaluate((field) => {
        (field as HTMLInputElement).value = 'aperture '.repeat(120_000);
        field.dispatchEvent(new Event('input', { bubbles: true }));
      });
      await until(() => status(page).textContent()).toMatch(/results/);
      await until(() => new URL(page.url()).search.length).toBeGreaterThan(3);
      expect(page.url().length).toBeLessThan(500);
    });
  });
});
