import { beforeAll, describe, expect, it } from 'vitest';
import { lessons, pages, plates, pool, titled } from '../support/site.ts';
import { sightOf } from '../support/sight.ts';
import type { Sight } from '../support/sight.ts';

const withCalculators = [...lessons, ...plates];
const sights = new Map<string, Sight | Error>();

// Each page is opened once, and what was seen there is judged below.
beforeAll(async () => {
  await pool(pages, 3, async (page) => {
    const wholeWalk = withCalculators.includes(page);
    sights.set(
      page.path,
      await sightOf(page, { wholeWalk }).catch((error: unknown) => error as Error),
    );
  });
}, 900_000);

const sightAt = (path: string): Sight => {
  const found = sights.get(path);
  if (found === undefined) throw new Error(`/${path} was not looked at.`);
  if (found instanceof Error) throw found;
  return found;
};

describe.each(titled(pages))('%s', (_, { path }) => {
  it('is accessible to WCAG 2.2 AA, light and dark, at 390 and 1280 px', () => {
    const { axe } = sightAt(path);
    for (const { wrong, screen, passed } of axe) {
      expect(wrong, screen).toEqual([]);
      expect(passed, screen).toContain('color-contrast');
      expect(passed.length, screen).toBeGreaterThan(5);
    }
    expect(axe.map(({ screen }) => screen)).toEqual([
      'light, 390 px',
      'dark, 390 px',
      'light, 1280 px',
      'dark, 1280 px',
    ]);
  });

  it('fits phones of 390 and 320 px, with every control big enough for a finger', () => {
    const { sticksOut, tooSmall } = sightAt(path);
    expect(sticksOut['390 px'], '390 px').toEqual([]);
    expect(tooSmall).toEqual([]);
    expect(sticksOut['320 px'], '320 px').toEqual([]);
  });

  it('holds text of twice the size', () => {
    const { sticksOut, cutOff } = sightAt(path);
    expect(sticksOut['1280 px'], '1280 px').toEqual([]);
    expect(sticksOut['1280 px, text of twice the size']).toEqual([]);
    expect(cutOff).toEqual([]);
  });

  it('prints dark on white from the dark theme too, with nothing beyond the paper', () => {
    const { sticksOut, print } = sightAt(path);
    expect(sticksOut['paper']).toEqual([]);
    expect(print.paper).toBeGreaterThan(0.98);
    expect(print.inks.length).toBeGreaterThan(2);
    expect(Math.max(...print.inks)).toBeLessThan(0.45);
    expect(print.pdf.subarray(0, 5).toString()).toBe('%PDF-');
    expect(print.pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length).toBeGreaterThan(0);
  });

  it('lets the keyboard skip to its content', () => {
    const { href, arrives } = sightAt(path).skip;
    expect(href).toMatch(/#./);
    expect(arrives).toBe(true);
  });
});

describe.each(titled(withCalculators))('%s', (_, { path }) => {
  it('is gone through by keyboard: every control and link, in order, with focus in sight', () => {
    const { walk } = sightAt(path);
    if (walk === undefined) throw new Error(`/${path} was not gone through.`);
    expect(walk.wanted).toBeGreaterThan(10);
    expect(walk.missed).toEqual([]);
    expect(walk.dim).toEqual([]);
    expect(walk.reached).toEqual(walk.reached.toSorted((a, b) => a - b));
  });

  it('brings every calculator to life', () => {
    expect(sightAt(path).lifeless).toEqual([]);
  });

  it('keeps still for readers who ask for it', () => {
    expect(sightAt(path).moving).toEqual({ animations: 0, scroll: 'auto' });
  });

  it('keeps its fields and its drawing in forced colours', () => {
    const { active, bare, blank } = sightAt(path).forced;
    expect(active).toBe(true);
    expect(bare).toEqual([]);
    expect(blank).toBe(0);
  });
});
