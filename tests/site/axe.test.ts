import axe from 'axe-core';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { addressOf, look, pages, titled, wake } from '../support/site.ts';

const settings = {
  runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'],
  resultTypes: ['violations'],
};

/** What axe finds wrong with an open page, and how many of its rules had something to look at. */
async function judge(page: Page): Promise<{ wrong: string[]; passes: number }> {
  return page.evaluate(async (given) => {
    const { run } = (globalThis as unknown as { axe: typeof axe }).axe;
    const { violations, passes } = await run(document, given as axe.RunOptions);
    const where = (nodes: axe.NodeResult[]): string =>
      nodes
        .slice(0, 3)
        .map(({ html, failureSummary }) => `${html.slice(0, 160)} | ${failureSummary ?? ''}`)
        .join('\n');
    return {
      passes: passes.length,
      wrong: violations.map(({ id, help, nodes }) => `${id}: ${help}\n${where(nodes)}`),
    };
  }, settings);
}

describe.concurrent.each(titled(pages))('%s', { timeout: 180_000 }, (_, built) => {
  it('is accessible to WCAG 2.2 AA, light and dark, at 390 and 1280 px', async () => {
    const options = { reducedMotion: 'reduce' as const, viewport: { width: 390, height: 844 } };
    await look(addressOf(built), options, async (page) => {
      await wake(page);
      await page.evaluate(axe.source);
      for (const width of [390, 1280]) {
        await page.setViewportSize({ width, height: 900 });
        for (const colorScheme of ['light', 'dark'] as const) {
          await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
          const { wrong, passes } = await judge(page);
          expect(wrong, `${colorScheme}, ${width} px`).toEqual([]);
          expect(passes).toBeGreaterThan(5);
        }
      }
    });
  });
});
