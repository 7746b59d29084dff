import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { formulas } from '../../src/formulas.ts';
import { idOf, isChoice } from '../../src/formula/record.ts';
import { digitsOf, plateOn, saidAbout } from '../support/plate.ts';
import { addressOf, lessons, look, pages, wake, withPlates } from '../support/site.ts';

const still = { reducedMotion: 'reduce' } as const;
const noNumber = /NaN|Infinity|undefined|null|\[object/;

/** Opens a formula's own page, awake, and listens for what it should not say. */
async function open(
  id: string,
  query: string,
  use: (page: Page, plate: ReturnType<typeof plateOn>) => Promise<void>,
  options = {},
): Promise<void> {
  const built = pages.find(({ path }) => path === `plates/${id}/`);
  if (built === undefined) throw new Error(`There is no page /plates/${id}/.`);
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
    await page.goto(addressOf(built, query), { waitUntil: 'load' });
    await wake(page);
    await use(page, plateOn(page, id));
  });
  expect(faults).toEqual([]);
}

/** Until what the reader did has been set on the page, which happens at its next frame. */
const settle = (page: Page): Promise<void> =>
  page.evaluate(
    () =>
      new Promise<void>((done) => {
        requestAnimationFrame(() => {
          requestAnimationFrame(() => {
            done();
          });
        });
      }),
  );
/** The address follows when the reader pauses. */
const addressed = async (page: Page, before = ''): Promise<void> => {
  await page.waitForFunction((old) => location.search !== old, before);
};

describe.concurrent.each(Object.keys(formulas))('plate %s', { timeout: 120_000 }, (id) => {
  it('answers typing at once, keeps it in the address, and takes it back on reset', async ({
    expect: here,
  }) => {
    await open(id, '', async (page, { fields, whole, said }) => {
      const before = await said();
      expect(before).toMatch(/\d/);
      // Not every field bears on the result that is shown large: the first that does is enough here.
      let changed = before;
      for (let index = 0; index < (await fields.count()) && changed === before; index += 1) {
        const field = fields.nth(index);
        const typed = await field.inputValue();
        const number = /\d+(?:[.,]\d+)?/.exec(typed)?.[0];
        if (number === undefined || !(await field.isVisible())) continue;
        const other = String(Number((Number(number.replace(',', '.')) * 1.2).toPrecision(3)));
        await field.fill(typed.replace(number, other));
        await settle(page);
        changed = await said();
        if (changed === before) await field.fill(typed);
      }
      expect(changed).not.toBe(before);
      expect(changed).not.toMatch(noNumber);
      await addressed(page);
      await page.waitForTimeout(700);
      const shared = page.url();

      await whole.getByRole('button', { name: /reset/i }).first().click();
      await settle(page);
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
        await settle(page);
        expect(await field.inputValue(), typed).toBe(typed);
        expect(await field.getAttribute('aria-invalid'), typed).toBe('true');
        expect(await saidAbout(field), typed).toMatch(/\d/);
        expect(digitsOf(await said()), typed).toBe(digitsOf(before));
      }
      for (const typed of ['', '0', '\u202e5', '\u0661\u0662', '-1', 'x'.repeat(100_000)]) {
        await field.fill(typed);
        await settle(page);
        expect(await said()).toMatch(/\d/);
        expect(await said()).not.toMatch(noNumber);
      }
      await field.fill(good);
      await settle(page);
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
    const input = Object.values((await load()).default.inputs).find((one) => !isChoice(one));
    if (input === undefined) throw new Error(`${id} has no quantity.`);
    const name = idOf(input);
    await open(id, '', async (page, { whole, said }) => {
      const start = await said();
      await whole.getByRole('button', { name: /reset/i }).first().click();
      await addressed(page);
      // A plate's own address writes every input.
      const own = new URL(page.url());
      expect(own.searchParams.get(name)).toMatch(/\d/);
      const hostile = ['NaN', '-1e999m', '\0', '<script>alert(1)</script>', '9'.repeat(5000)];
      const queries = hostile.map((value) => {
        const query = new URLSearchParams(own.search);
        query.set(name, value);
        return `?${query.toString()}`;
      });
      queries.push(`${own.search}&${name}=1m`, `${own.search}&__proto__=1&constructor=2`);
      const notices = async (): Promise<string> =>
        (await page.locator('.result-notice').allTextContents()).join(' ').trim();
      for (const query of queries) {
        await page.goto(own.origin + own.pathname + query);
        await here.poll(notices, { timeout: 10_000, message: query.slice(0, 300) }).toMatch(/\w/);
        expect(await said(), query.slice(0, 300)).toBe(start);
      }
      await page.goto(`${own.origin}${own.pathname}?a=%E0%A4%A&=&&`);
      await settle(page);
      expect(await said()).toMatch(/\d/);
      expect(await said()).not.toMatch(noNumber);
    });
  });

  it('loads a published case at one press, without leaving the page', async () => {
    await open(id, '', async (page, { whole, said }) => {
      await page.evaluate(() => Object.assign(globalThis, { stayed: true }));
      const cases = whole.locator('a[data-load]');
      expect(await cases.count()).toBeGreaterThan(0);
      const seen = new Set<string>();
      for (const one of await cases.all()) {
        if (!(await one.isVisible())) continue;
        const before = new URL(page.url()).search;
        await one.click();
        if (seen.size === 0) await addressed(page, before);
        else await page.waitForTimeout(700);
        seen.add(page.url());
        expect(await said()).toMatch(/\d/);
      }
      expect(await page.evaluate(() => 'stayed' in globalThis)).toBe(true);
      expect(seen.size).toBeGreaterThan(0);
      expect([...seen].every((url) => url.includes('?'))).toBe(true);
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
      await settle(page);
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
      await settle(page);
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
      await settle(page);
      expect(await said()).toBe(before);
    });
  });

  it.each([
    ['en-GB', 'Europe/London'],
    ['de-DE', 'Pacific/Auckland'],
    ['ar-EG', 'America/St_Johns'],
  ])('says the same numbers in %s (%s)', async (locale, timezoneId) => {
    const first = await firstResult(id);
    await open(
      id,
      '',
      async (_page, { said }) => {
        expect(digitsOf(await said())).toBe(digitsOf(first));
      },
      { locale, timezoneId },
    );
  });
});

const results = new Map<string, Promise<string>>();
const firstResult = (id: string): Promise<string> => {
  const known = results.get(id);
  if (known !== undefined) return known;
  const built = pages.find(({ path }) => path === `plates/${id}/`);
  if (built === undefined) throw new Error(`There is no page /plates/${id}/.`);
  const asked = look(addressOf(built), { javaScriptEnabled: false }, (page) =>
    plateOn(page, id).said(),
  );
  results.set(id, asked);
  return asked;
};

it('comes alive on every lesson that has a plate', async () => {
  const teaching = withPlates.filter((page) => lessons.includes(page));
  expect(teaching.length).toBeGreaterThan(5);
  for (const built of teaching) {
    await look(addressOf(built), still, async (page) => {
      await wake(page);
      const plates = page.locator('[data-plate]');
      for (let index = 0; index < (await plates.count()); index += 1) {
        const text = (await plates.nth(index).locator('.result').first().textContent()) ?? '';
        expect(text, built.path).toMatch(/\d/);
      }
    });
  }
});
