import type { BrowserContextOptions, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { cutOff, sticksOut, tooSmall } from '../support/measure.ts';
import { addressOf, look, pages, titled, wake } from '../support/site.ts';

const screen = (width: number, height = 844): BrowserContextOptions => ({
  viewport: { width, height },
  reducedMotion: 'reduce',
});

const doubleText = (page: Page): Promise<void> =>
  page.evaluate(() => {
    document.documentElement.style.fontSize = '200%';
  });

describe.concurrent.each(titled(pages))('%s', (_, built) => {
  it('fits phones of 390 and 320 px, with every control big enough for a finger', async () => {
    await look(addressOf(built), screen(390), async (page) => {
      await wake(page);
      expect(await page.evaluate(sticksOut), '390 px').toEqual([]);
      expect(await page.evaluate(tooSmall)).toEqual([]);
      await page.setViewportSize({ width: 320, height: 640 });
      expect(await page.evaluate(sticksOut), '320 px').toEqual([]);
    });
  });

  it('holds text of twice the size', async () => {
    await look(addressOf(built), screen(1280, 900), async (page) => {
      await wake(page);
      expect(await page.evaluate(sticksOut), '1280 px').toEqual([]);
      await doubleText(page);
      expect(await page.evaluate(sticksOut)).toEqual([]);
      expect(await page.evaluate(cutOff)).toEqual([]);
    });
  });
});
