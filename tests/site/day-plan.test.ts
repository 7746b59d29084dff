import axe from 'axe-core';
import ICAL from 'ical.js';
import type { Page } from 'playwright-core';
import { readFile } from 'node:fs/promises';
import { describe, expect, inject, it } from 'vitest';
import { sticksOut, tooSmall } from '../support/measure.ts';
import { look } from '../support/site.ts';

const address = (query = ''): string => `${inject('url')}day-plan/${query}`;
const still = { reducedMotion: 'reduce', acceptDownloads: true } as const;

/** The timetable on an open page, as a reader meets it. */
const on = (page: Page) => {
  const press = (name: string): Promise<void> =>
    page.getByRole('button', { name, exact: true }).click();
  const said = async (): Promise<string> =>
    ((await page.locator('[data-result]').textContent()) ?? '').replace(/\s+/g, ' ').trim();
  return {
    press,
    said,
    /** Waits for the result to say something. */
    says: (words: string): Promise<void> => expect.poll(said).toContain(words),
    told: (): Promise<string | null> => page.locator('[data-said]').textContent(),
    field: (name: string) => page.getByLabel(name, { exact: true }),
    row: (n: number) => page.getByRole('group', { name: `Booking ${n}`, exact: true }),
    rows: page.locator('[data-rows] > [data-row]'),
    conflicts: page.locator('[data-conflicts] li'),
    kept: () =>
      page.evaluate(() => JSON.stringify(Object.fromEntries(Object.entries(localStorage)))),
  };
};

/** What the browser saves when a button is pressed, by another parser. */
const saved = async (page: Page, button: string) => {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: button }).click(),
  ]);
  const text = await readFile(await download.path(), 'utf8');
  const calendar = new ICAL.Component(ICAL.parse(text) as never);
  const events = calendar.getAllSubcomponents('vevent').map((one) => new ICAL.Event(one));
  return { name: download.suggestedFilename(), text, calendar, events };
};

interface Watched {
  readonly shifts: { readonly value: number; readonly what: string }[];
}

/** Notes what moves by itself, and what it was. Runs in the page before its own scripts. */
function watchShifts(): void {
  const shifts: Watched['shifts'] = [];
  Object.assign(globalThis, { shifts });
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) {
      const { value, sources } = entry as PerformanceEntry & {
        value: number;
        sources: { node: Node | null }[];
      };
      const what = sources.map(({ node }) => node?.textContent?.trim().slice(0, 30) ?? '?');
      shifts.push({ value, what: what.join(', ') });
    }
  }).observe({ type: 'layout-shift', buffered: true });
}

describe('the day’s timetable', () => {
  it('takes a booking in and out, and the focus is never lost', async () => {
    await look(address(), still, async (page) => {
      const day = on(page);
      await day.says('9 sittings fit in this day; 9 are booked, with no conflict.');
      await day.press('Add a booking');
      await day.says('10 are booked, with 1 conflict.');
      expect(await day.row(10).getByLabel('Alias').inputValue()).toBe('Sitting 10');
      await expect
        .poll(() =>
          day
            .row(10)
            .getByLabel('Alias')
            .evaluate((one) => one === document.activeElement),
        )
        .toBe(true);
      expect(await page.getByRole('row', { name: /no slot Sitting 10/ }).count()).toBe(1);
      await day.press('Remove Sitting 3');
      await day.says('9 are booked, with no conflict.');
      expect(await day.rows.count()).toBe(9);
      expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toBe(
        'Remove Sitting 4',
      );
      expect(await day.told()).toContain('Sitting 3 is removed.');
      await day.press('Add a booking');
      expect(await day.row(10).getByLabel('Alias').inputValue()).toBe('Sitting 3');
      while ((await day.rows.count()) > 0) await day.rows.first().getByRole('button').click();
      await day.says('9 sittings fit in this day; nobody is booked.');
      expect(await page.evaluate(() => document.activeElement?.textContent.trim())).toBe(
        'Add a booking',
      );
    });
  });

  it('shows a conflict in words, in the drawing and in the table, and takes it back', async () => {
    await look(address(), still, async (page) => {
      const day = on(page);
      await day.field('Start').fill('12:30');
      await day.field('End').fill('13:30');
      await day.field('Breaks').fill('');
      await day.rows.nth(8).getByRole('button').click();
      while ((await day.rows.count()) > 1) await day.rows.nth(1).getByRole('button').click();
      await day.field('End').fill('13:00');
      await day.says('1 sitting fits in this day; 1 is booked, with 1 conflict.');
      expect(await day.conflicts.allTextContents()).toEqual([
        'Sitting 1 sits from 12:30 to 13:00, in its usual nap from 12:30 to 14:30.',
      ]);
      const drawing = page.locator('.day-plan .drawing svg');
      expect(await drawing.locator('text', { hasText: /^nap$/ }).count()).toBe(1);
      // The box, and the two strokes of the cross.
      expect(await drawing.locator('path.d-emphasis').count()).toBe(3);
      expect(
        await page.getByRole('row', { name: '12:30–13:00 Sitting 1' }).textContent(),
      ).toContain('nap');
      await day.row(1).getByLabel('Usual naps').fill('9–10');
      await day.says('with no conflict');
      expect(await day.conflicts.count()).toBe(0);
      expect(await drawing.locator('path.d-emphasis').count()).toBe(0);
    });
  });

  it('keeps what was typed and says beside it what is wrong', async () => {
    await look(address(), still, async (page) => {
      const day = on(page);
      const before = await day.said();
      for (const text of ['', '.', '-', '1e309', 'NaN', '25:00', '9'.repeat(5000)]) {
        await day.field('Start').fill(text);
        const note = page.locator('#day-start-note');
        await expect.poll(() => note.textContent()).toContain('is no time of day');
        expect(await day.field('Start').inputValue()).toBe(text);
        expect(await day.field('Start').getAttribute('aria-invalid')).toBe('true');
        expect(await page.locator('[data-result]').getAttribute('data-stale')).not.toBeNull();
        expect(await day.said()).toBe(before);
        expect(await page.evaluate(sticksOut)).toEqual([]);
      }
      await day.field('Start').fill('٩:٣٠');
      await expect.poll(() => page.locator('[data-result]').getAttribute('data-stale')).toBeNull();
      expect(await day.field('Start').getAttribute('aria-invalid')).toBeNull();
      await day.row(2).getByLabel('Age, months').fill('two');
      const note = day.row(2).locator('[data-note]');
      await expect.poll(() => note.textContent()).toContain('whole number of months');
      const described = await day.row(2).getByLabel('Age, months').getAttribute('aria-describedby');
      expect(described).toBe(await note.getAttribute('id'));
      await day.press('Save the calendar file');
      expect(await day.told()).toContain('A field has to be put right first');
      await expect
        .poll(() => page.locator('.day-plan [role=status]').textContent())
        .toContain('put right');
    });
  });

  it('saves a calendar file that another parser reads: aliases and times, no age and no nap', async () => {
    await look(address(), { ...still, timezoneId: 'Australia/Sydney' }, async (page) => {
      const day = on(page);
      await day
        .row(1)
        .getByLabel('Alias')
        .fill('Robbe; „Möwe“, 🦭 and a long tail of signs to fold');
      await day.field('Date').fill('2026-10-04');
      await day.says('9 are booked');
      const floating = await saved(page, 'Save the calendar file');
      expect(floating.name).toBe('sittings-2026-10-04.ics');
      expect(floating.events).toHaveLength(9);
      expect(floating.events[0]?.summary).toBe(
        'Robbe; „Möwe“, 🦭 and a long tail of signs to fold',
      );
      expect(floating.events[0]?.startDate.toString()).toBe('2026-10-04T09:30:00');
      expect(floating.calendar.getFirstSubcomponent('vtimezone')).toBeNull();
      expect(floating.text).not.toMatch(/nap|month|1230/i);
      for (const line of floating.text.split('\r\n'))
        expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
      const zone = page.getByLabel('with', { exact: true });
      await zone.focus();
      expect(await zone.locator('option').nth(1).textContent()).toBe('Australia/Sydney');
      await zone.selectOption('Australia/Sydney');
      const zoned = await saved(page, 'Save the calendar file');
      const rules = zoned.calendar.getFirstSubcomponent('vtimezone');
      const start = zoned.events[0]?.startDate;
      if (!rules || !start) throw new Error('There is no zone or no event.');
      start.zone = new ICAL.Timezone(rules);
      // Eleven hours ahead since that night.
      expect(new Date(start.toUnixTime() * 1000).toISOString()).toBe('2026-10-03T22:30:00.000Z');
      expect(zoned.events.map(({ uid }) => uid)).toEqual(floating.events.map(({ uid }) => uid));
      expect(await day.told()).toContain('no ages and no naps');
    });
  });

  it('puts nothing about a child into the address, whatever is done', async () => {
    await look(
      address(),
      { ...still, permissions: ['clipboard-read', 'clipboard-write'] },
      async (page) => {
        const day = on(page);
        const asked: string[] = [];
        page.on('request', (request) => asked.push(request.url()));
        await day.row(1).getByLabel('Alias').fill('Grey-seal');
        await day.row(1).getByLabel('Age, months').fill('17');
        await day.row(1).getByLabel('Usual naps').fill('11:11–12:22');
        await day.row(1).getByLabel('Would like').fill('13:33');
        await day.field('Slot').fill('25');
        await day.press('Copy a link to the day’s frame');
        await expect.poll(day.told).toContain('Link copied.');
        const link = await page.evaluate(() => navigator.clipboard.readText());
        expect(link).toBe(
          `${address()}?start=09:30&end=16:30&slot=25min&buffer=10min&breaks=12:10-13:00#day-plan`,
        );
        expect(page.url()).toBe(address());
        expect(
          asked.filter((url) => /seal|17|11|12:22|13/.test(url.replace(inject('url'), ''))),
        ).toEqual([]);
        expect(
          await page.evaluate(() =>
            JSON.stringify([history.state, document.cookie, document.title]),
          ),
        ).not.toMatch(/seal/i);
        expect(await day.kept()).toBe('{}');
        await page.goto(link.replace('#', '&alias=Mary#'));
        await expect.poll(() => day.field('Slot').inputValue()).toBe('25');
        expect(await page.locator('.day-plan .result-notice').textContent()).toContain(
          '“alias”, which this timetable does not know',
        );
        expect(await day.row(1).getByLabel('Alias').inputValue()).toBe('Sitting 1');
      },
    );
  });

  it('is kept only when the reader presses, opened again on a press, and erased at once', async () => {
    await look(address(), still, async (page) => {
      const day = on(page);
      await day.row(1).getByLabel('Alias').fill('Grey seal');
      await day.says('9 are booked');
      await page.waitForTimeout(700);
      expect(await day.kept()).toBe('{}');
      await day.press('Open the kept day');
      expect(await day.told()).toBe('Nothing of this day is kept in this browser.');
      await day.press('Keep this day in this browser');
      expect(await day.told()).toContain('Kept in this browser, on this device only');
      expect(await day.kept()).toContain('Grey seal');
      expect(Object.keys(JSON.parse(await day.kept()) as object)).toEqual(['sbn:day-plan:v1']);

      await page.reload();
      expect(await day.told()).toBe('A day is kept in this browser.');
      expect(await day.row(1).getByLabel('Alias').inputValue()).toBe('Sitting 1');
      await day.press('Open the kept day');
      expect(await day.row(1).getByLabel('Alias').inputValue()).toBe('Grey seal');
      await day.press('Erase everything');
      expect(await day.told()).toBe(
        'Erased: no booking stands here. Nothing of this day is kept in this browser.',
      );
      expect(await day.kept()).toBe('{}');
      expect(await day.rows.count()).toBe(0);
      expect(await page.locator('body').textContent()).not.toContain('Grey seal');
      await day.press('Reset');
      await day.says('9 are booked, with no conflict.');
      await page.evaluate(() =>
        localStorage.setItem('sbn:day-plan:v1', '{"texts":{"rows":"<img src=x>"}}'),
      );
      await day.press('Open the kept day');
      expect(await day.told()).toBe('Nothing of this day is kept in this browser.');
    });
  });

  it('says so where the browser keeps nothing', async () => {
    await look('about:blank', still, async (page) => {
      await page.addInitScript(() => {
        Storage.prototype.setItem = () => {
          throw new DOMException('full', 'QuotaExceededError');
        };
      });
      await page.goto(address());
      const day = on(page);
      await day.press('Keep this day in this browser');
      expect(await day.told()).toContain('This browser would not keep it');
    });
  });

  it('stands whole without script: drawing, result, fields and timetable', async () => {
    await look(address(), { javaScriptEnabled: false }, async (page) => {
      const day = on(page);
      expect(await day.said()).toBe('9 sittings fit in this day; 9 are booked, with no conflict.');
      expect(await page.locator('.day-plan .drawing svg path').count()).toBeGreaterThan(40);
      expect(await page.locator('[data-timetable] tbody tr').count()).toBe(11);
      expect(await day.field('Start').inputValue()).toBe('09:30');
      expect(await page.getByRole('button', { name: 'Save the calendar file' }).count()).toBe(0);
    });
  });

  it('shows with script what it showed without', async () => {
    const state = (page: Page): Promise<string> =>
      page
        .locator('.day-plan')
        .evaluate((plan) =>
          [
            ...plan.querySelectorAll(
              'svg path, svg text, [data-timetable] td, [data-timetable] th, [data-result]',
            ),
          ]
            .map(
              (one) =>
                `${one.getAttribute('class') ?? ''} ${one.getAttribute('d') ?? ''} ${one.textContent.replace(/\s+/g, ' ').trim()}`,
            )
            .join('\n'),
        );
    const still1 = await look(address(), { javaScriptEnabled: false }, state);
    const alive = await look(
      address(),
      { ...still, locale: 'de-DE', timezoneId: 'Europe/Berlin' },
      async (page) => {
        await on(page).says('9 sittings');
        return state(page);
      },
    );
    expect(alive).toBe(still1);
  });

  it.each([
    ['en-US', '9:30 AM', '9:30 AM–10:00 AM'],
    ['ar-EG', '٩:٣٠ ص', '٩:٣٠ ص–١٠:٠٠ ص'],
    ['de-DE', '09:30', '09:30–10:00'],
  ])(
    'writes times as a reader in %s does, and moves nothing for it',
    async (locale, typed, shown) => {
      for (const width of [390, 1280])
        await look(
          'about:blank',
          { ...still, locale, viewport: { width, height: 900 } },
          async (page) => {
            await page.addInitScript(watchShifts);
            // The script comes late, so that what it moves is not taken for the fonts’ doing.
            await page.route('**/*astro_type_script*', async (route) => {
              await new Promise((done) => setTimeout(done, 1500));
              await route.continue();
            });
            await page.goto(address(), { waitUntil: 'commit' });
            await page.waitForSelector('.colophon');
            await page.evaluate(async () => {
              await Promise.all([...document.fonts].map((face) => face.load()));
              await new Promise((done) => setTimeout(done, 200));
              (globalThis as unknown as Watched).shifts.length = 0;
            });
            const plain = (text: string): string =>
              text.replace(/[\u202f\u00a0]/g, ' ').replace(/[\u200e\u200f]/g, '');
            await expect
              .poll(async () => plain(await on(page).field('Start').inputValue()), {
                timeout: 10_000,
              })
              .toBe(typed);
            await expect
              .poll(
                async () =>
                  plain(
                    (await page.locator('[data-timetable] tbody th').first().textContent()) ?? '',
                  ),
                { timeout: 10_000 },
              )
              .toBe(shown);
            await page.waitForTimeout(300);
            const shifts = await page.evaluate(() => (globalThis as unknown as Watched).shifts);
            const moved = shifts.reduce((sum, { value }) => sum + value, 0);
            expect(moved, `${width} px ${shifts.map(({ what }) => what).join('; ')}`).toBeLessThan(
              0.0001,
            );
          },
        );
    },
  );

  it('prints on one sheet of A4, the timetable alone where that was pressed', async () => {
    await look(address(), still, async (page) => {
      const day = on(page);
      const pages = async (): Promise<number> => {
        await page.emulateMedia({ media: 'print' });
        const pdf = await page.pdf({ format: 'A4', preferCSSPageSize: true });
        await page.emulateMedia({ media: 'screen' });
        return pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length ?? 0;
      };
      expect(await pages()).toBe(1);
      // A day as full as they come: twenty-four bookings, most of them with two naps.
      for (let n = 10; n <= 24; n += 1) {
        await day.press('Add a booking');
        await day.row(n).getByLabel('Usual naps').fill('9:30–10:15; 13:00–14:30');
      }
      await day.field('Slot').fill('10');
      await day.field('Buffer').fill('5');
      await day.says('24 are booked');
      await page.evaluate(() => {
        window.print = () => undefined;
      });
      await day.press('Print the timetable');
      await page.emulateMedia({ media: 'print' });
      const seen = await page.evaluate(() =>
        [
          '.masthead',
          '.colophon',
          '.frame',
          '.bookings',
          '.out',
          '.words',
          'h1',
          '.day-plan .drawing',
          '[data-timetable]',
          '[data-date]',
        ].filter((one) => document.querySelector(one)?.checkVisibility() === true),
      );
      expect(seen).toEqual(['h1', '.day-plan .drawing', '[data-timetable]', '[data-date]']);
      expect(await page.locator('[data-date]').textContent()).toMatch(
        /^Saturday,? 28 November 2026$/,
      );
      expect(await pages()).toBe(1);
      // Once printed the page is as it was.
      await page.emulateMedia({ media: 'screen' });
      await page.evaluate(() => dispatchEvent(new Event('afterprint')));
      expect(await page.locator('.masthead').isVisible()).toBe(true);
    });
  });

  it('breaks no rule of accessibility with a conflict, an error and a row of its own, and fits a phone', async () => {
    await look(address(), { ...still, viewport: { width: 390, height: 844 } }, async (page) => {
      const day = on(page);
      await day.press('Add a booking');
      await day.row(1).getByLabel('Age, months').fill('x');
      await day.field('Slot').fill('x');
      await expect.poll(() => page.locator('#day-slot-note').textContent()).not.toBe('');
      await page.evaluate(axe.source);
      for (const width of [390, 1280])
        for (const colorScheme of ['light', 'dark'] as const) {
          await page.setViewportSize({ width, height: 900 });
          await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
          const wrong = await page.evaluate(async () => {
            const { run } = (globalThis as unknown as { axe: typeof axe }).axe;
            const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
            const { violations } = await run('.day-plan', { runOnly: tags });
            return violations.map(({ id, nodes }) => `${id} ${nodes[0]?.html ?? ''}`);
          });
          expect(wrong, `${colorScheme} ${width}`).toEqual([]);
        }
      await page.setViewportSize({ width: 320, height: 640 });
      expect(await page.evaluate(sticksOut)).toEqual([]);
      expect(await page.evaluate(tooSmall)).toEqual([]);
    });
  });

  it('can be filled in and read by keyboard alone, and speaks its result', async () => {
    await look(address(), still, async (page) => {
      const day = on(page);
      await day.field('Start').focus();
      await page.keyboard.press('Control+A');
      await page.keyboard.type('10');
      await expect
        .poll(() => page.locator('.day-plan [role=status]').textContent())
        .toContain('8 sittings fit in this day; 9 are booked, with 1 conflict.');
      await page.keyboard.press('Tab');
      expect(await page.evaluate(() => document.activeElement?.id)).toBe('day-end');
      const add = page.getByRole('button', { name: 'Add a booking' });
      await add.focus();
      await page.keyboard.press('Enter');
      await day.says('10 are booked');
      await page.keyboard.type('Heron');
      await page.keyboard.press('Tab');
      await page.keyboard.type('20');
      await page.keyboard.press('Tab');
      await page.keyboard.type('1 pm to 2 pm');
      await expect.poll(() => page.locator('[data-timetable]').textContent()).toContain('Heron');
      await expect
        .poll(() => page.locator('.day-plan .drawing desc').textContent())
        .toMatch(/8 slots/);
    });
  });
});
