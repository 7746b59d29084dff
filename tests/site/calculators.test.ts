import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { formulas } from '../../src/formulas.ts';
import { digitsOf, plateOn, saidAbout } from '../support/plate.ts';
import { hostileQueries } from '../support/hostile.ts';
import { attribute, elementsIn, elementsOf, visibleText } from '../support/markup.ts';
import { addressOf, look, markupOf, nextFrames, pages, wake } from '../support/site.ts';
import type { Built } from '../support/site.ts';

const still = { reducedMotion: 'reduce' } as const;
const noNumber = /NaN|Infinity|undefined|null|\[object/;

const pageOf = (id: string): Built => {
  const built = pages.find(({ path }) => path === `plates/${id}/`);
  if (built === undefined) throw new Error(`There is no page /plates/${id}/.`);
  return built;
};

/** Opens a formula's own page, awake, and listens for what it should not say. */
async function open(
  id: string,
  query: string,
  use: (page: Page, plate: ReturnType<typeof plateOn>) => Promise<void>,
  options = {},
): Promise<void> {
  const faults: string[] = [];
  await look('about:blank', { ...still, ...options }, async (page) => {
    page.on('console', (message) => {
      if (['error', 'warning'].includes(message.type())) faults.push(message.text());
    });
    page.on('pageerror', (error) => faults.push(error.message));
    page.on('dialog', (dialog) => {
      faults.push(`dialog: ${dialog.message()}`);
      void dialog.dismiss();
    });
    await page.goto(addressOf(pageOf(id), query), { waitUntil: 'load' });
    await wake(page);
    await use(page, plateOn(page, id));
  });
  expect(faults).toEqual([]);
}

/** What a plate says in the page as it was built. */
const builtResult = (id: string): string => {
  const plate = elementsOf(markupOf(pageOf(id))).find(
    (element) => attribute(element, 'data-plate') === id,
  );
  const result =
    plate &&
    elementsIn(plate).find((element) =>
      (attribute(element, 'class') ?? '').split(' ').includes('result'),
    );
  if (result === undefined) throw new Error(`The built page of ${id} has no result.`);
  return visibleText(result).replace(/\s+/g, ' ').trim();
};

describe.concurrent.each(Object.keys(formulas))('plate %s', { timeout: 120_000 }, (id) => {
  it('answers typing at once, keeps it in the address, and takes it back on reset', async ({
    expect: here,
  }) => {
    await open(id, '', async (page, { fields, whole, said }) => {
      const before = await said();
      expect(before).toMatch(/\d/);
      const spoken = async (): Promise<string> =>
        ((await whole.locator('[role=status]').textContent()) ?? '').replace(/\s+/g, ' ').trim();
      // Not every field bears on the result that is shown large: the first that does is enough here.
      let changed = before;
      for (let index = 0; index < (await fields.count()) && changed === before; index += 1) {
        const field = fields.nth(index);
        const typed = await field.inputValue();
        const number = /\d+(?:[.,]\d+)?/.exec(typed)?.[0];
        if (number === undefined || !(await field.isVisible())) continue;
        const other = String(Number((Number(number.replace(',', '.')) * 1.2).toPrecision(3)));
        await field.fill(typed.replace(number, other));
        await nextFrames(page);
        changed = await said();
        if (changed === before) await field.fill(typed);
      }
      expect(changed).not.toBe(before);
      expect(changed).not.toMatch(noNumber);
      // The result is spoken when the reader pauses, and the address is written just before.
      await here.poll(spoken, { timeout: 10_000 }).toBe(changed);
      const shared = page.url();
      expect(new URL(shared).search).not.toBe('');

      await whole.getByRole('button', { name: /reset/i }).first().click();
      await nextFrames(page);
      expect(await said()).toBe(before);
      await page.goto(shared);
      await wake(page);
      await here.poll(said, { timeout: 10_000 }).toBe(changed);
    });
  });

  it('keeps bad typing, says what is allowed beside it, and never shows a result that is none', async () => {
    await open(id, '', async (page, { fields, said }) => {
      const field = fields.first();
      const good = await field.inputValue();
      const before = await said();
      const bad = ['abc', '.', ',', '-', '1e309', 'NaN', '1/0', '<b>1</b>', '9'.repeat(65)];
      for (const typed of bad) {
        await field.fill(typed);
        await nextFrames(page);
        expect(await field.inputValue(), typed).toBe(typed);
        expect(await field.getAttribute('aria-invalid'), typed).toBe('true');
        expect(await saidAbout(field), typed).toMatch(/\d/);
        expect(digitsOf(await said()), typed).toBe(digitsOf(before));
      }
      for (const typed of ['', '0', '\u202e5', '\u0661\u0662', '-1', 'x'.repeat(100_000)]) {
        await field.fill(typed);
        await nextFrames(page);
        expect(await said()).toMatch(/\d/);
        expect(await said()).not.toMatch(noNumber);
      }
      await field.fill(good);
      await nextFrames(page);
      expect(await field.getAttribute('aria-invalid')).not.toBe('true');
      // What was typed last may have had a decimal comma, and results are then written so too.
      expect(digitsOf(await said())).toBe(digitsOf(before));
    });
  });

  it('falls back to its first values, with a notice, on a hostile address', async ({
    expect: here,
  }) => {
    const load = formulas[id];
    if (load === undefined) throw new Error(`There is no formula ${id}.`);
    // Every plate is opened on one of these addresses, all of them on several plates; what is read from each address for
    // each formula is tested without a browser, in tests/widgets/link.test.ts.
    const queries = hostileQueries((await load()).default);
    const query = queries[Object.keys(formulas).indexOf(id) % queries.length] ?? '';
    await open(id, query, async (page, { said }) => {
      const notices = async (): Promise<string> =>
        (await page.locator('.result-notice').allTextContents()).join(' ').trim();
      await here.poll(notices, { timeout: 10_000, message: query.slice(0, 300) }).toMatch(/\w/);
      expect(await said(), query.slice(0, 300)).toBe(builtResult(id));
    });
  });

  it('loads a published case at one press, without leaving the page', async () => {
    await open(id, '', async (page, { whole, said }) => {
      // Notes each time the address is written, which a page that was left forgets.
      await page.evaluate(() => {
        const write = history.replaceState.bind(history);
        const noted = { written: 0 };
        Object.assign(globalThis, { noted });
        history.replaceState = (...given) => {
          write(...given);
          noted.written += 1;
        };
      });
      const cases = whole.locator('a[data-load]');
      expect(await cases.count()).toBeGreaterThan(0);
      let pressed = 0;
      for (const one of await cases.all()) {
        if (!(await one.isVisible())) continue;
        const asked = new URLSearchParams(
          /\?([^#]*)/.exec((await one.getAttribute('href')) ?? '')?.[1] ?? '',
        );
        await one.click();
        pressed += 1;
        await page.waitForFunction(
          (times) =>
            (globalThis as unknown as { noted: { written: number } }).noted.written >= times,
          pressed,
        );
        const written = new URL(page.url()).searchParams;
        // An input that the others put out of play is not written again.
        const kept = [...asked].filter(([key]) => written.has(key));
        expect(kept.length).toBeGreaterThan(0);
        for (const [key, text] of kept) {
          expect(written.get(key)?.replace(/\s/g, ''), key).toBe(text.replace(/\s/g, ''));
        }
        expect(await said()).toMatch(/\d/);
      }
      expect(pressed).toBeGreaterThan(0);
    });
  });

  it('moves with its slider by arrow keys', async () => {
    await open(id, '', async (page, { sliders, whole }) => {
      expect(await sliders.count()).toBeGreaterThan(0);
      const slider = sliders.first();
      const fields = whole.locator('input:is([type=text], :not([type]))');
      const texts = (): Promise<string[]> =>
        fields.evaluateAll((all) => all.map((one) => (one as HTMLInputElement).value));
      const before = await texts();
      await slider.focus();
      for (let press = 0; press < 3; press += 1) await page.keyboard.press('ArrowRight');
      await nextFrames(page);
      expect(await texts()).not.toEqual(before);
    });
  });

  it('turns to feet and inches and back', async () => {
    // Settings and stops read alike in either system: what is checked is that a length changes where there is one.
    const { default: formula } = await (formulas[id] ?? (() => Promise.reject(new Error(id))))();
    const long = [...Object.values(formula.inputs), ...Object.values(formula.outputs)].some(
      (one) => 'unit' in one && (one.unit === 'm' || one.unit === 'cm'),
    );
    await open(id, '', async (page, { whole, said }) => {
      const before = await said();
      const imperial = whole.getByText(/^imperial$/i).first();
      await imperial.click();
      await nextFrames(page);
      const texts = await whole
        .locator('input:is([type=text], :not([type])), .unit')
        .evaluateAll((all) =>
          all.map((one) => ('value' in one ? String(one.value) : one.textContent)),
        );
      const words = `${await said()} ${texts.join(' ')} ${(await whole.textContent()) ?? ''}`;
      if (long) expect(words).toMatch(/\d\s?(ft|in)\b|\bft\b|[′″]/);
      await whole
        .getByText(/^metric$/i)
        .first()
        .click();
      await nextFrames(page);
      expect(await said()).toBe(before);
    });
  });
});

// One after another, so that each country needs one window.
describe.each([
  ['en-GB', 'Europe/London'],
  ['de-DE', 'Pacific/Auckland'],
  ['ar-EG', 'America/St_Johns'],
])('in %s (%s)', (locale, timezoneId) => {
  it.each(Object.keys(formulas))('plate %s says the same numbers', async (id) => {
    await open(
      id,
      '',
      async (_page, { said }) => {
        expect(digitsOf(await said())).toBe(digitsOf(builtResult(id)));
      },
      { locale, timezoneId },
    );
  });
});
