import type { Page } from 'playwright-core';

/** What a reader meets who goes through a page with the Tab key alone. */
export interface Walk {
  /** Stops there should be: controls and links. */
  readonly wanted: number;
  /** Stops in the order they were first reached, by their place in the page. */
  readonly reached: readonly number[];
  /** Stops never reached. */
  readonly missed: readonly string[];
  /** What showed no ring when it had focus. */
  readonly dim: readonly string[];
}

interface Watched {
  reached: number[];
  dim: string[];
}

/** Goes through a page where nothing has had focus yet, from its top until every stop is reached or the keys run out. */
export async function walk(page: Page): Promise<Walk> {
  const wanted = await page.evaluate(watchFocus);
  const seen = (): Promise<Watched> =>
    page.evaluate(() => (globalThis as unknown as { focusSeen: Watched }).focusSeen);
  let { reached, dim } = await seen();
  for (let press = 0; press < wanted * 1.5 + 20 && reached.length < wanted;) {
    // A look now and then: asking after each key would cost more than pressing it.
    for (const end = press + Math.max(5, wanted - reached.length); press < end; press += 1) {
      await page.keyboard.press('Tab');
    }
    ({ reached, dim } = await seen());
  }
  const missed = await page.evaluate(
    (found) =>
      [...document.querySelectorAll('[data-stop]')]
        .filter((_one, index) => !found.includes(index))
        .map((one) => one.outerHTML.slice(0, 120)),
    reached,
  );
  return { wanted, reached, missed, dim };
}

/** Marks every stop, and from now on notes which of them get focus and whether they show it. Runs in the page. */
function watchFocus(): number {
  const all =
    'a[href], button, input:not([type=hidden]), select, summary, textarea, [tabindex="0"]';
  const reachable = [...document.querySelectorAll<HTMLInputElement>(all)].filter(
    (one) =>
      one.checkVisibility({ visibilityProperty: true }) && !one.disabled && one.tabIndex >= 0,
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

  const seen: Watched = { reached: [], dim: [] };
  Object.assign(globalThis, { focusSeen: seen });
  document.addEventListener('focusin', ({ target }) => {
    const element = target as HTMLInputElement;
    const group = element.type === 'radio' ? `[type=radio][name="${element.name}"]` : '';
    const mark =
      group === '' ? element : document.querySelector<HTMLElement>(`${group}[data-stop]`);
    const index = stops.indexOf((mark ?? element) as HTMLInputElement);
    if (index >= 0 && !seen.reached.includes(index)) seen.reached.push(index);
    const { outlineStyle, outlineWidth, boxShadow } = getComputedStyle(element);
    // A handle in a drawing has its ring drawn: a stroke that is there only while it has the focus.
    const drawn = element.querySelector(':scope > .handle-target');
    const { stroke = 'none', strokeWidth = '0' } = drawn ? getComputedStyle(drawn) : {};
    const ringed =
      (outlineStyle !== 'none' && parseFloat(outlineWidth) >= 1) ||
      boxShadow !== 'none' ||
      (stroke !== 'none' && parseFloat(strokeWidth) >= 2);
    const name = `${element.tagName} ${element.id} ${element.textContent.trim().slice(0, 30)}`;
    if (!ringed && !seen.dim.includes(name)) seen.dim.push(name);
  });
  return stops.length;
}

/** Where the first stop of a page leads, and whether it takes the reader into the content. */
export async function skip(page: Page): Promise<{ href: string | null; arrives: boolean }> {
  const first = page.locator(':focus');
  const href = await first.getAttribute('href');
  await page.keyboard.press('Enter');
  const arrives = await page.evaluate(
    () =>
      location.hash !== '' &&
      document.querySelector(location.hash)?.closest('main') instanceof Element,
  );
  return { href, arrives };
}
