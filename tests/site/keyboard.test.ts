import { describe, expect, it } from 'vitest';
import { addressOf, lessons, look, pages, plates, titled, wake } from '../support/site.ts';

describe.concurrent.each(titled([...lessons, ...plates]))('%s by keyboard', (_, built) => {
  it('reaches every control and link, in order, with focus in sight', async () => {
    await look(
      addressOf(built),
      { reducedMotion: 'reduce', viewport: { width: 1280, height: 900 } },
      async (page) => {
        await wake(page);
        const wanted = await page.evaluate(() => {
          scrollTo(0, 0);
          const all =
            'a[href], button, input:not([type=hidden]), select, summary, textarea, [tabindex="0"]';
          const reachable = [...document.querySelectorAll<HTMLInputElement>(all)].filter(
            (one) =>
              one.checkVisibility({ visibilityProperty: true }) &&
              !one.disabled &&
              one.tabIndex >= 0,
          );
          // Of a group of radio buttons the keyboard stops at one; arrows do the rest.
          const groups = new Set<string>();
          const stops = reachable.filter((one) => {
            if (one.type !== 'radio') return true;
            const first = !groups.has(one.name);
            groups.add(one.name);
            return first;
          });
          for (const stop of stops) stop.dataset['stop'] = stop.type === 'radio' ? stop.name : '';
          return stops.length;
        });
        expect(wanted).toBeGreaterThan(10);

        const reached = new Set<string>();
        const dim: string[] = [];
        for (let press = 0; press < wanted * 1.5 + 20; press += 1) {
          await page.keyboard.press('Tab');
          const at = await page.evaluate(() => {
            const element = document.activeElement as HTMLInputElement | null;
            if (element === null || element === document.body) return null;
            const group = element.type === 'radio' ? `[type=radio][name="${element.name}"]` : '';
            const mark =
              group === '' ? element : document.querySelector<HTMLElement>(`${group}[data-stop]`);
            const index = [...document.querySelectorAll('[data-stop]')].indexOf(mark ?? element);
            const { outlineStyle, outlineWidth, boxShadow } = getComputedStyle(element);
            const ringed =
              (outlineStyle !== 'none' && parseFloat(outlineWidth) >= 1) || boxShadow !== 'none';
            return {
              index,
              ringed,
              name: `${element.tagName} ${element.id} ${element.textContent.trim().slice(0, 30)}`,
            };
          });
          if (at === null) {
            if (reached.size > 0) break;
            continue;
          }
          if (at.index >= 0 && reached.has(String(at.index)) && reached.size >= wanted) break;
          reached.add(String(at.index));
          if (!at.ringed) dim.push(at.name);
        }
        reached.delete('-1');
        const missed = await page.evaluate(
          (found) =>
            [...document.querySelectorAll('[data-stop]')]
              .filter((_one, index) => !found.includes(String(index)))
              .map((one) => one.outerHTML.slice(0, 120)),
          [...reached],
        );
        expect(missed).toEqual([]);
        expect([...new Set(dim)]).toEqual([]);
      },
    );
  });
});

it.each(titled(pages))('%s lets the keyboard skip to its content', async (_, built) => {
  await look(addressOf(built), { reducedMotion: 'reduce' }, async (page) => {
    await page.keyboard.press('Tab');
    const first = page.locator(':focus');
    expect(await first.getAttribute('href')).toMatch(/#./);
    await page.keyboard.press('Enter');
    expect(
      await page.evaluate(() => document.querySelector(location.hash)?.closest('main')),
    ).not.toBeNull();
  });
});
