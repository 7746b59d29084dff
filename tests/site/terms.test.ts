import { expect, it } from 'vitest';
import { addressOf, look, markupOf, pages, type Built } from '../support/site.ts';

const pageAt = (path: string): Built => {
  const found = pages.find((one) => one.path === path);
  if (!found) throw new Error(`The built site has no page ${path}.`);
  return found;
};

it('opens the note of a term by a tap, inside a phone’s window, and closes it outside and by Escape', async () => {
  // Terms in paragraphs, lists, a caution and a table.
  const page = pageAt('lighting/key-and-face/');
  await look(addressOf(page), { hasTouch: true, colorScheme: 'dark' }, async (window) => {
    const terms = window.locator('.term');
    const { width, height } = window.viewportSize() ?? { width: 0, height: 0 };
    await window.evaluate(() => {
      for (const one of document.querySelectorAll('details')) one.open = true;
    });
    // Those in a table or a caution, and the first few.
    const tried = await terms.evaluateAll((all) =>
      all.flatMap((one, index) => (index < 3 || one.closest('th, td, .caution') ? [index] : [])),
    );
    expect(tried.length).toBeGreaterThan(5);
    for (const index of tried) {
      const term = terms.nth(index);
      const id = (await term.getAttribute('popovertarget')) ?? '';
      const note = window.locator(`#${id}`);
      const open = () => note.evaluate((one) => one.matches(':popover-open'));
      await term.evaluate((one) => {
        one.scrollIntoView({ block: 'center' });
      });
      await term.tap();
      expect(await open(), id).toBe(true);
      const at = await note.boundingBox();
      expect(at?.x, id).toBeGreaterThanOrEqual(0);
      expect((at?.x ?? 0) + (at?.width ?? Infinity), id).toBeLessThanOrEqual(width);
      expect(at?.y, id).toBeGreaterThanOrEqual(0);
      expect((at?.y ?? 0) + (at?.height ?? Infinity), id).toBeLessThanOrEqual(height);
      if (index % 2 === 0) await window.keyboard.press('Escape');
      else await window.touchscreen.tap(4, 120);
      expect(await open(), id).toBe(false);
    }
  });
});

it('explains a term once on a page, and leads to its place in the glossary', () => {
  const known = new Set(
    [...markupOf(pageAt('glossary/')).matchAll(/ id="([^"]+)"/g)].map(([, id]) => id),
  );
  for (const page of pages) {
    const markup = markupOf(page);
    const ids = [...markup.matchAll(/popovertarget="term-([^"]+)"/g)].map(([, id]) => id);
    expect(
      ids.filter((id, index) => ids.indexOf(id) !== index),
      page.path,
    ).toEqual([]);
    expect(
      ids.filter((id) => !known.has(id)),
      page.path,
    ).toEqual([]);
  }
});

it('has the symbols of every plate in the glossary, each with a place of its own', () => {
  const markup = markupOf(pageAt('glossary/'));
  const ids = [...markup.matchAll(/ id="(symbol-[^"]+)"/g)].map(([, id]) => id);
  expect(new Set(ids).size).toBe(ids.length);
  expect(ids).toEqual(expect.arrayContaining(['symbol-N', 'symbol-n', 'symbol-f', 'symbol-theta']));
  const linked = new Set(
    [...markup.matchAll(/href="[^"]*\/(plates\/[^"/]+\/)"/g)].map(([, path]) => path),
  );
  const alone = pages.map(({ path }) => path).filter((path) => /^plates\/[^/]+\/$/.test(path));
  expect(alone.filter((path) => !linked.has(path))).toEqual([]);
});
