import axe from 'axe-core';
import type { Page } from 'playwright-core';

/** What axe finds wrong with an open page, and the rules that had something to look at and found it right. */
export interface Judgement {
  /** The screen it was looked at on. */
  readonly screen: string;
  readonly wrong: readonly string[];
  readonly passed: readonly string[];
}

const WCAG = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/** Asks axe about a page on screens of 390 and 1280 px, light and dark. */
export async function judge(page: Page): Promise<Judgement[]> {
  await page.evaluate(axe.source);
  const judgements: Judgement[] = [];
  for (const width of [390, 1280]) {
    await page.setViewportSize({ width, height: 900 });
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      const found = await page.evaluate(async (only) => {
        const { run } = (globalThis as unknown as { axe: typeof axe }).axe;
        const { violations, passes } = await run(document, {
          runOnly: only,
          resultTypes: ['violations'],
        });
        const where = (nodes: axe.NodeResult[]): string =>
          nodes
            .slice(0, 3)
            .map(({ html, failureSummary }) => `${html.slice(0, 160)} | ${failureSummary ?? ''}`)
            .join('\n');
        return {
          passed: passes.map(({ id }) => id),
          wrong: violations.map(({ id, help, nodes }) => `${id}: ${help}\n${where(nodes)}`),
        };
      }, WCAG);
      judgements.push({ screen: `${colorScheme}, ${width} px`, ...found });
    }
  }
  return judgements;
}
