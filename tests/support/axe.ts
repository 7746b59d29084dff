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
/** The rules of these that look at colours, places and sizes. All others read the markup and whether it is shown. */
const LOOKS = [
  'color-contrast',
  'link-in-text-block',
  'scrollable-region-focusable',
  'target-size',
];

/**
 * Asks axe about a page on screens of 390 and 1280 px, light and dark.
 *
 * Every rule is asked wherever the page shows something else, or has other markup, than on any screen before. Where both
 * are the same the rules that read nothing but these could only repeat themselves, and those on looks alone are asked.
 */
export async function judge(page: Page): Promise<Judgement[]> {
  await page.evaluate(axe.source);
  const judgements: Judgement[] = [];
  const shown = new Set<string>();
  for (const width of [390, 1280]) {
    await page.setViewportSize({ width, height: 900 });
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      const now = await page.evaluate(whatIsShown);
      const runOnly = shown.has(now) ? LOOKS : WCAG;
      shown.add(now);
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
      }, runOnly);
      judgements.push({ screen: `${colorScheme}, ${width} px`, ...found });
    }
  }
  return judgements;
}

/** The markup of a page, and which of its elements are not shown. Runs in the page. */
function whatIsShown(): string {
  const hidden = [...document.querySelectorAll('*')].flatMap((element, index) =>
    element.checkVisibility({ visibilityProperty: true }) ? [] : [index],
  );
  return `${document.documentElement.outerHTML} ${hidden.join(' ')}`;
}
