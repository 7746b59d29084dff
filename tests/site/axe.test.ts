import axe from 'axe-core';
import { describe, expect, it } from 'vitest';
import { addressOf, look, pages, titled, wake } from '../support/site.ts';

const settings = {
  runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'],
  resultTypes: ['violations'],
};

describe.concurrent.each(titled(pages))('%s', (_, built) => {
  it.each([
    ['light', 390],
    ['light', 1280],
    ['dark', 390],
    ['dark', 1280],
  ] as const)('is accessible (%s, %i px)', async (colorScheme, width) => {
    const options = {
      colorScheme,
      viewport: { width, height: 900 },
      reducedMotion: 'reduce' as const,
    };
    const found = await look(addressOf(built), options, async (page) => {
      await wake(page);
      await page.evaluate(axe.source);
      return page.evaluate(async (given) => {
        const { run } = (globalThis as unknown as { axe: typeof axe }).axe;
        const { violations, passes } = await run(document, given as axe.RunOptions);
        return {
          passes: passes.length,
          violations: violations.map(({ id, help, nodes }) => ({
            rule: `${id}: ${help}`,
            where: nodes
              .slice(0, 3)
              .map(({ html, failureSummary }) => `${html.slice(0, 160)} | ${failureSummary ?? ''}`),
          })),
        };
      }, settings);
    });
    expect(found.violations).toEqual([]);
    expect(found.passes).toBeGreaterThan(5);
  });
});
