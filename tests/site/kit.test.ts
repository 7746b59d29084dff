import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { BrowserContextOptions, Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { root } from '../support/files.ts';
import { addressOf, look, pages, type Built } from '../support/site.ts';

const page = (path: string): Built => {
  const found = pages.find((one) => one.path === path);
  if (!found) throw new Error(`The built site has no page ${path}.`);
  return found;
};

const KEY = 'sbn:kit:v1';
const golden = join(root, 'tests/golden/kit-v1.json');
const goldenKit = (JSON.parse(readFileSync(golden, 'utf8')) as { kept: Record<string, unknown> })
  .kept[KEY];
const mine = JSON.stringify(goldenKit);

/** Opens a page for a reader in whose browser something is kept, and fails on what the browser complains of. */
async function kept(
  path: string,
  text: string | undefined,
  use: (tab: Page) => Promise<void>,
  { query = '', ...options }: BrowserContextOptions & { query?: string } = {},
): Promise<void> {
  const complaints: string[] = [];
  await look(
    addressOf(page('404.html')),
    { viewport: { width: 1280, height: 900 }, ...options },
    async (tab) => {
      await tab.evaluate(
        ([key, kit]) => {
          if (kit !== undefined) localStorage.setItem(key, kit);
        },
        [KEY, text] as const,
      );
      tab.on('console', (message) => complaints.push(message.text()));
      tab.on('pageerror', (error) => complaints.push(error.message));
      await tab.goto(addressOf(page(path), query), { waitUntil: 'load' });
      await use(tab);
    },
  );
  expect(complaints).toEqual([]);
}

const plate = (tab: Page, id: string): Locator => tab.locator(`#plate-${id}`);
const input = (tab: Page, id: string, name: string): Locator =>
  plate(tab, id).locator(`[data-id="${name}"] input[type=text]`).first();
const number = (tab: Page, id: string): Locator => plate(tab, id).locator('.result-number');
const line = (tab: Page, id: string): Locator => plate(tab, id).locator('.kit-line');
const tool = (tab: Page, id: string, name: string): Locator =>
  plate(tab, id).getByRole('button', { name, exact: true });
const reads = (what: Locator, text: string | RegExp): Promise<void> =>
  typeof text === 'string'
    ? expect.poll(() => what.textContent(), { timeout: 5000 }).toBe(text)
    : expect.poll(() => what.textContent(), { timeout: 5000 }).toMatch(text);
const stored = (tab: Page): Promise<string | null> =>
  tab.evaluate((key) => localStorage.getItem(key), KEY);
const status = (tab: Page): Locator => tab.locator('[data-kit-page] [role=status]');
const lens = (tab: Page, at: number, name: string): Locator =>
  tab.locator('[data-lens]').nth(at).locator(`[data-cell="${name}"]`);

describe('the kit’s page', () => {
  it('keeps what was typed once Keep is pressed, and not before', async () => {
    await kept('kit/', undefined, async (tab) => {
      await reads(status(tab), 'No kit is kept in this browser.');
      await tab.getByLabel('Format', { exact: true }).selectOption('23.6x15.8');
      await lens(tab, 0, 'focal').fill('56');
      await lens(tab, 0, 'widest').fill('f/1,2');
      await tab.getByRole('button', { name: 'Add a lens' }).click();
      await lens(tab, 1, 'focal').fill('3.5 cm');
      await tab.getByLabel('Room length').fill('13\'9"');
      await reads(tab.locator('#kit-room-length-note'), 'read as 4.191 m');
      await reads(tab.locator('[data-lens]').nth(1).locator('[data-note]'), 'read as 35 mm');
      expect(await stored(tab)).toBeNull();
      await tab.getByRole('button', { name: 'Keep this kit' }).click();
      await reads(status(tab), /^Kept in this browser, on this device only/);
      expect(JSON.parse((await stored(tab)) ?? '')).toEqual({
        format: '23.6x15.8',
        lenses: [{ 'focal-length': '35 mm' }, { 'focal-length': '56 mm', 'f-number': 'f/1.2' }],
        'room-length': '4.191 m',
      });
      await tab.goto(addressOf(page('plates/framing-distance/')));
      // 56 · (1 + 900/23.6) = 2192 mm
      await reads(number(tab, 'framing-distance'), '2.19 m');
    });
  });

  it('says beside a field what is wrong, keeps what was typed, and keeps nothing in the browser', async () => {
    await kept('kit/', undefined, async (tab) => {
      const ceiling = tab.getByLabel('Ceiling');
      await ceiling.fill('two');
      await lens(tab, 0, 'widest').fill('2');
      await reads(
        tab.locator('#kit-ceiling-note'),
        /^Ceiling must be between 0\.5 m and 100 m; “two” is not a number/,
      );
      await reads(tab.locator('[data-lens] [data-note]').first(), /^Which lens opens so wide/);
      await tab.getByRole('button', { name: 'Keep this kit' }).click();
      await reads(status(tab), /^Nothing was kept or saved/);
      expect(await ceiling.inputValue()).toBe('two');
      expect(await ceiling.getAttribute('aria-invalid')).toBe('true');
      expect(await stored(tab)).toBeNull();
      await ceiling.fill('');
      await lens(tab, 0, 'widest').fill('');
      await tab.getByRole('button', { name: 'Save it as a file' }).click();
      await reads(status(tab), /^There is nothing to keep yet/);
    });
  });

  it('shows what is kept in either unit without losing a digit, and erases it', async () => {
    const kit = JSON.stringify({ lenses: [], 'room-length': '4.191 m', ceiling: '2.44 m' });
    await kept('kit/', kit, async (tab) => {
      await reads(status(tab), 'This is the kit kept in this browser.');
      const length = tab.getByLabel('Room length');
      expect(await length.inputValue()).toBe('4.191');
      await tab.getByLabel('imperial').check();
      // 4.191 m is 13 ft 9 in; 2.44 m is 8.005 ft
      await expect.poll(() => length.inputValue()).toBe('13.75');
      expect(await tab.getByLabel('Ceiling').inputValue()).toBe('8.005');
      await tab.getByLabel('metric', { exact: true }).check();
      await expect.poll(() => length.inputValue()).toBe('4.191');
      await tab.getByRole('button', { name: 'Keep this kit' }).click();
      await reads(status(tab), /^Kept/);
      expect(JSON.parse((await stored(tab)) ?? '')).toEqual({
        ...(JSON.parse(kit) as object),
        system: 'metric',
      });
      await tab.getByRole('button', { name: 'Erase the kit' }).click();
      await reads(status(tab), 'Erased. No kit is kept in this browser.');
      expect(await stored(tab)).toBeNull();
      expect(await length.inputValue()).toBe('');
      await tab.goto(addressOf(page('plates/framing-distance/')));
      await reads(number(tab, 'framing-distance'), '2.21 m');
      expect(await line(tab, 'framing-distance').isVisible()).toBe(false);
    });
  });

  it('saves a file that brings the same kit back, and refuses one that is none', async () => {
    let saved = '';
    await kept('kit/', mine, async (tab) => {
      const coming = tab.waitForEvent('download');
      await tab.getByRole('button', { name: 'Save it as a file' }).click();
      const file = await coming;
      expect(file.suggestedFilename()).toBe('sitting-by-numbers-kit.json');
      saved = readFileSync(await file.path(), 'utf8');
      expect(JSON.parse(saved)).toEqual(JSON.parse(readFileSync(golden, 'utf8')));
    });
    await kept('kit/', undefined, async (tab) => {
      const file = tab.locator('input[type=file]');
      const give = (text: string): Promise<void> =>
        file.setInputFiles({
          name: 'kit.json',
          mimeType: 'application/json',
          buffer: Buffer.from(text),
        });
      await give(
        '{"sitting-by-numbers":1,"kept":{"sbn:kit:v1":{"lenses":[{"focal-length":"-1 mm"}]}}}',
      );
      await reads(status(tab), 'There is nothing in that file for this version of the site.');
      await give('not ours');
      await reads(status(tab), 'That file was not saved from here, so nothing was changed.');
      expect(await stored(tab)).toBeNull();
      await give(saved);
      await reads(status(tab), 'Read, and kept in this browser.');
      expect(await lens(tab, 1, 'focal').inputValue()).toBe('56');
      expect(await tab.getByLabel('Backdrop height').inputValue()).toBe('2.2');
      expect(JSON.parse((await stored(tab)) ?? '')).toEqual(goldenKit);
    });
  });

  it('comes with everything else that is kept, out of one file: the day’s timetable too', async () => {
    await kept('', undefined, async (tab) => {
      await tab.getByText('Your progress').click();
      await tab
        .locator('[data-progress-import]')
        .setInputFiles(join(root, 'tests/golden/everything-v1.json'));
      await reads(tab.locator('[data-progress-said]').first(), 'Read, and kept in this browser.');
      expect(await tab.evaluate(() => Object.keys(localStorage).sort())).toEqual([
        'sbn:checklist:v1', 'sbn:day-plan:v1', 'sbn:kit:v1', 'sbn:progress:v1', 'sbn:theme:v1',
      ]); // prettier-ignore
      await tab.goto(addressOf(page('day-plan/')));
      await reads(tab.locator('[data-said]').first(), 'A day is kept in this browser.');
      await tab.getByRole('button', { name: 'Open the kept day' }).click();
      expect(await tab.locator('[data-cell="alias"]').first().inputValue()).toBe('Rabbit');
    });
  });

  it('says once that a browser keeps nothing, and still saves the file', async () => {
    await kept('kit/', undefined, async (tab) => {
      await tab.evaluate(() => {
        Object.defineProperty(Storage.prototype, 'setItem', {
          configurable: true,
          value: () => {
            throw new DOMException('full', 'QuotaExceededError');
          },
        });
      });
      await lens(tab, 0, 'focal').fill('50');
      await tab.getByRole('button', { name: 'Keep this kit' }).click();
      await reads(
        status(tab),
        /^This browser would not keep it: its storage is full or switched off/,
      );
      const coming = tab.waitForEvent('download');
      await tab.getByRole('button', { name: 'Save it as a file' }).click();
      expect(readFileSync(await (await coming).path(), 'utf8')).toContain('"50 mm"');
    });
  });

  it('says what it would do where scripts are off', async () => {
    await look(addressOf(page('kit/')), { javaScriptEnabled: false }, async (tab) => {
      expect(await tab.getByText('With scripts switched off nothing can be kept').isVisible()).toBe(
        true,
      );
      expect(await tab.getByRole('button', { name: 'Keep this kit' }).isVisible()).toBe(false);
    });
  });
});

describe('plates of a reader with a kit', () => {
  it('start from it, say so, and go without it; nothing else on the page does', async () => {
    const rest = (tab: Page): Promise<string[]> =>
      tab.locator('.plate-checks, .quick, .prose > p, .prose > table').allTextContents();
    let before: string[] = [];
    await kept('focal-length/framing-distance/', undefined, async (tab) => {
      before = await rest(tab);
      expect(before.length).toBeGreaterThan(3);
    });
    await kept('focal-length/framing-distance/', mine, async (tab) => {
      await reads(
        line(tab, 'framing-distance'),
        'Starts from your kit: 23.6\u00a0×\u00a015.8\u00a0mm, 90\u00a0mm. The text here speaks of the harbour set. Change the kit · Without it',
      );
      // The 90 mm is nearer to 85 mm than the 56 mm. 90 · (1 + 900/23.6) = 3522 mm
      await reads(number(tab, 'framing-distance'), '3.52 m');
      // (2210 − 90)/90 · 23.6 = 556 mm
      await reads(number(tab, 'frame-size'), '0.556 m');
      expect(await rest(tab)).toEqual(before);
      expect(new URL(tab.url()).search).toBe('');

      await tool(tab, 'framing-distance', 'Without it').click();
      await reads(number(tab, 'framing-distance'), '2.21 m');
      await reads(line(tab, 'framing-distance'), /^Starts without your kit\./);
      await reads(number(tab, 'frame-size'), '0.556 m');
      await input(tab, 'framing-distance', 'focal-length').fill('50');
      await reads(number(tab, 'framing-distance'), '1.30 m');
      await tool(tab, 'framing-distance', 'Reset').click();
      await reads(number(tab, 'framing-distance'), '2.21 m');

      await tool(tab, 'framing-distance', 'With the kit').click();
      await reads(number(tab, 'framing-distance'), '3.52 m');
      await input(tab, 'framing-distance', 'focal-length').fill('50');
      await tool(tab, 'framing-distance', 'Reset').click();
      await reads(number(tab, 'framing-distance'), '3.52 m');
      await expect.poll(() => new URL(tab.url()).searchParams.get('focal-length')).toBe('90mm');
    });
  });

  it('translate into another format than the one that is owned', async () => {
    await kept('plates/equivalence/', mine, async (tab) => {
      // Diagonals: 43.267/28.401 = 1.5234; 90 mm · 1.5234 = 137.1 mm
      await reads(number(tab, 'equivalence'), '137 mm');
      const to = plate(tab, 'equivalence').locator('[data-id="to-format"] select');
      await expect.poll(() => to.inputValue()).toBe('36x24');
    });
  });

  it('offer the lenses that are owned, and set one at a press', async () => {
    await kept('plates/framing-distance/', mine, async (tab) => {
      const presets = plate(tab, 'framing-distance').locator('[data-id="focal-length"] [data-put]');
      await expect.poll(() => presets.allTextContents()).toEqual(['35', '56', '90']);
      await presets.nth(1).click();
      // 56 · (1 + 900/23.6) = 2192 mm
      await reads(number(tab, 'framing-distance'), '2.19 m');
      await expect.poll(() => presets.nth(1).getAttribute('aria-pressed')).toBe('true');
    });
  });

  it('show a link’s numbers where a link is for them, and go to the kit on reset', async () => {
    const query =
      '?format=36x24&orientation=portrait&print-aspect=none&focal-length=50mm&frame-height=0.9m#plate-framing-distance';
    await kept(
      'focal-length/framing-distance/',
      mine,
      async (tab) => {
        await reads(number(tab, 'framing-distance'), '1.30 m');
        await reads(line(tab, 'framing-distance'), /^Shows the link’s numbers, not your kit’s\./);
        await reads(number(tab, 'frame-size'), '0.556 m');
        await tool(tab, 'framing-distance', 'Reset').click();
        await reads(number(tab, 'framing-distance'), '3.52 m');
        await reads(line(tab, 'framing-distance'), /^Starts from your kit/);
        await plate(tab, 'framing-distance').locator('a[data-load]').first().click();
        await expect
          .poll(() => input(tab, 'framing-distance', 'focal-length').inputValue())
          .not.toBe('90');
      },
      { query },
    );
  });

  it('keep what was typed before the kit came, and fill the rest from it', async () => {
    await kept('404.html', mine, async (tab) => {
      let letThrough = (): void => undefined;
      const typed = new Promise<void>((done) => {
        letThrough = done;
      });
      await tab.route(/_astro\/kit\..*js$/, async (route) => {
        await typed;
        await route.continue();
      });
      const asked = tab.waitForRequest(/_astro\/kit\..*js$/);
      await tab.goto(addressOf(page('plates/framing-distance/')), { waitUntil: 'commit' });
      await asked;
      await input(tab, 'framing-distance', 'frame-height').fill('1.2');
      await input(tab, 'framing-distance', 'focal-length').fill('100');
      letThrough();
      // 100 · (1 + 1200/23.6) = 5185 mm
      await reads(number(tab, 'framing-distance'), '5.18 m');
      expect(await input(tab, 'framing-distance', 'focal-length').inputValue()).toBe('100');
      await tab.unroute(/_astro\/kit\..*js$/);
    });
  });

  it.each([390, 1280])('move nothing while it comes in, %d wide', async (width) => {
    for (const path of ['plates/equivalence/', 'plates/room-fill/', 'aperture/keeping-focus/'])
      await kept(
        '404.html',
        mine,
        async (tab) => {
          let letThrough = (): void => undefined;
          const measured = new Promise<void>((done) => {
            letThrough = done;
          });
          await tab.route(/_astro\/kit\..*js$/, async (route) => {
            await measured;
            await route.continue();
          });
          const asked = tab.waitForRequest(/_astro\/kit\..*js$/);
          await tab.goto(addressOf(page(path)), { waitUntil: 'commit' });
          await asked;
          const tops = (): Promise<number[]> =>
            tab.evaluate(async () => {
              await document.fonts.ready;
              return [
                ...document.querySelectorAll(
                  '.plate-island > *, .field, .plate-part, .plate-formula, .prose > *',
                ),
              ].map((part) => Math.round(part.getBoundingClientRect().top + scrollY));
            });
          const before = await tops();
          letThrough();
          await expect
            .poll(() => tab.locator('.kit-line').allTextContents())
            .toEqual(expect.arrayContaining([expect.stringMatching(/^Starts from your kit/)]));
          await tab.evaluate(
            () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))),
          );
          expect(await tops(), path).toEqual(before);
          await tab.unroute(/_astro\/kit\..*js$/);
        },
        { viewport: { width, height: 844 } },
      );
  });

  it('start from their own where the kit’s numbers do not go with them, and say why', async () => {
    const kit = JSON.stringify({ lenses: [{ 'focal-length': '2300 mm' }] });
    await kept('plates/frame-size/', kit, async (tab) => {
      await reads(
        line(tab, 'frame-size'),
        /^Your kit’s numbers do not go with this plate’s others: .*It shows its own start\. Change the kit$/,
      );
      await reads(number(tab, 'frame-size'), '0.900 m');
    });
  });

  it.each(['{"lenses":7}', 'no JSON', '[]', `{"lenses":[],"format":"${'<b>'.repeat(9)}"}`])(
    'say once that a damaged kit is not used: %s',
    async (damaged) => {
      await kept('focal-length/framing-distance/', damaged, async (tab) => {
        await expect
          .poll(() => tab.locator('.kit-line').allTextContents())
          .toEqual([
            'The kit kept in this browser is damaged, and no plate uses it. Change the kit',
            '',
          ]);
        await reads(number(tab, 'framing-distance'), '2.21 m');
        await tab.getByRole('link', { name: 'Change the kit' }).click();
        await reads(status(tab), /^The kit kept in this browser is damaged/);
      });
    },
  );
});

describe('how numbers are written over a page', () => {
  it('follows a country’s comma in plates and kit, and a point that is typed over all plates', async () => {
    await kept(
      'focal-length/framing-distance/',
      mine,
      async (tab) => {
        await reads(number(tab, 'framing-distance'), '3,52 m');
        expect(await input(tab, 'framing-distance', 'frame-height').inputValue()).toBe('0,9');
        await reads(number(tab, 'frame-size'), '0,556 m');
        expect(await plate(tab, 'frame-size').locator('.plate-checks').textContent()).toMatch(
          /\d\.\d/,
        );
        await input(tab, 'framing-distance', 'frame-height').fill('0.8');
        // 90 · (1 + 800/23.6) = 3141 mm
        await reads(number(tab, 'framing-distance'), '3.14 m');
        await reads(number(tab, 'frame-size'), '0.556 m');
        expect(await input(tab, 'frame-size', 'subject-distance').inputValue()).toBe('2.21');
        await tab.goto(addressOf(page('kit/')));
        await expect.poll(() => tab.getByLabel('Room width').inputValue()).toBe('3,1');
      },
      { locale: 'de-DE' },
    );
  });

  it('turns every plate to the units chosen on one', async () => {
    await kept('focal-length/framing-distance/', undefined, async (tab) => {
      await tool(tab, 'frame-size', 'imperial').click();
      // 2.21 m is 87.0 in
      await reads(number(tab, 'framing-distance'), '7′ 3″');
      await expect
        .poll(() => tool(tab, 'framing-distance', 'imperial').getAttribute('aria-pressed'))
        .toBe('true');
      await tool(tab, 'framing-distance', 'metric').click();
      await reads(number(tab, 'frame-size'), '0.900 m');
    });
  });

  it('starts in the units of the kit', async () => {
    const kit = JSON.stringify({ lenses: [], system: 'imperial' });
    await kept('plates/framing-distance/', kit, async (tab) => {
      await reads(number(tab, 'framing-distance'), '7′ 3″');
      await reads(line(tab, 'framing-distance'), /^Your kit has no number for this plate/);
      await tab.goto(addressOf(page('plates/perspective/')));
      // Of no number on this plate is one in a kit, but it has lengths: 0.10 m is 31.496 eighths of an inch.
      await reads(plate(tab, 'perspective').locator('.result'), /an equal thing 3⅞″ behind it/);
    });
  });

  it('reads Arabic-Indic digits and answers in the digits of the formulas', async () => {
    await kept(
      'plates/framing-distance/',
      undefined,
      async (tab) => {
        await reads(number(tab, 'framing-distance'), '2.21 m');
        await input(tab, 'framing-distance', 'frame-height').fill('٠٫٨');
        // 85 · (1 + 800/36) = 1974 mm
        await reads(number(tab, 'framing-distance'), '1.97 m');
      },
      { locale: 'ar-EG' },
    );
  });
});
