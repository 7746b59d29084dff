import { describe, expect, it } from 'vitest';
import { addressOf, look, lessons, plates, titled, wake } from '../support/site.ts';

describe.concurrent.each(titled([...lessons, ...plates]))('%s', (_, built) => {
  it('keeps still for readers who ask for it', async () => {
    await look(addressOf(built), { reducedMotion: 'reduce' }, async (page) => {
      await wake(page);
      const field = page.locator('[data-plate] input[type=range]').first();
      if ((await field.count()) > 0) {
        await field.focus();
        await page.keyboard.press('ArrowRight');
      }
      const moving = await page.evaluate(() => ({
        animations: document
          .getAnimations()
          .filter((one) => Number(one.effect?.getComputedTiming().duration ?? 0) > 1).length,
        scroll: getComputedStyle(document.documentElement).scrollBehavior,
      }));
      expect(moving).toEqual({ animations: 0, scroll: 'auto' });
    });
  });

  it('keeps its fields and its drawing in forced colours', async () => {
    const options = { forcedColors: 'active', colorScheme: 'dark' } as const;
    await look(addressOf(built), options, async (page) => {
      await wake(page);
      const seen = await page.evaluate(() => {
        const paper = getComputedStyle(document.body).backgroundColor;
        const edged = (element: Element): boolean => {
          const { borderTopWidth, borderBottomWidth, appearance } = getComputedStyle(element);
          return (
            appearance !== 'none' ||
            [borderTopWidth, borderBottomWidth].some((width) => parseFloat(width) > 0)
          );
        };
        const inked = (shape: Element): boolean => {
          const { fill, stroke } = getComputedStyle(shape);
          return [fill, stroke].some((colour) => colour !== 'none' && colour !== paper);
        };
        const all = (selector: string): Element[] => [...document.querySelectorAll(selector)];
        const shapes = 'path, line, rect, circle, polygon, polyline';
        return {
          bare: all('[data-plate] :is(input:not([type=range]), select)')
            .filter((field) => field.checkVisibility() && !edged(field))
            .map((field) => field.outerHTML.slice(0, 120)),
          drawings: all('[data-plate] svg').length,
          blank: all('[data-plate] svg').filter(
            (svg) => ![...svg.querySelectorAll(shapes)].some(inked),
          ).length,
        };
      });
      expect(seen.bare).toEqual([]);
      expect(seen.blank).toBe(0);
    });
  });
});
