import { formulas } from '../../src/formulas.ts';
import { describe, expect, it } from 'vitest';
import { addressOf, lessons, look, plates, titled, withPlates } from '../support/site.ts';

it('has lessons with calculators to look at', () => {
  expect(plates).toHaveLength(Object.keys(formulas).length);
  expect(withPlates.filter((page) => lessons.includes(page)).length).toBeGreaterThan(5);
});

/** How many drawings each page was seen with. */
const drawings = new Map<string, number>();

describe.concurrent.each(titled(withPlates))('%s without script', (_, built) => {
  it('shows the first result, the formula and the published values of each plate', async () => {
    const shown = await look(addressOf(built), { javaScriptEnabled: false }, (page) =>
      page.locator('[data-plate]').evaluateAll((all) =>
        all.map((plate) => ({
          id: plate.getAttribute('data-plate') ?? '',
          result: plate.querySelector('.result')?.textContent.trim() ?? '',
          formulas: plate.querySelectorAll('math').length,
          checks: plate.querySelectorAll('table tbody tr').length,
          drawing: plate.querySelectorAll('svg').length,
          fields: plate.querySelectorAll('input, select').length,
          labels: [...plate.querySelectorAll('input:not([type=range]), select')].filter(
            (field) =>
              (field as HTMLInputElement).labels?.length === 0 && !field.hasAttribute('aria-label'),
          ).length,
        })),
      ),
    );
    expect(shown.length).toBeGreaterThan(0);
    drawings.set(
      built.path,
      shown.reduce((sum, { drawing }) => sum + drawing, 0),
    );
    for (const { id, result, formulas, checks, fields, labels } of shown) {
      expect(result, id).toMatch(/\d/);
      expect(result, id).not.toMatch(/NaN|Infinity|undefined|null/);
      expect(formulas, `formulas of ${id}`).toBeGreaterThan(0);
      expect(checks, `published values of ${id}`).toBeGreaterThan(1);
      expect(fields, `fields of ${id}`).toBeGreaterThan(1);
      expect(labels, `fields of ${id} without a label`).toBe(0);
    }
  });
});

describe.each(titled(plates))('%s without script', (_, { path }) => {
  it('is drawn to scale in the page itself', () => {
    expect(drawings.get(path)).toBeGreaterThan(0);
  });
});
