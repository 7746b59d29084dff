import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { filesUnder } from '../support/files.ts';
import { anyLegal, faults, sheetOf, valuesOf, written, type Draw } from './sheets.ts';
import type { Formula } from '~/formula/record.ts';

// Every record that has a drawing of its name, whether or not a page shows it yet.
const nameOf = (file: string): string => file.replace(/^.*\/|\.ts$/g, '');
const records = new Map(
  filesUnder('src/optics').map((file) => [nameOf(file), file.split('/')[2]] as const),
);
const ids = filesUnder('src/drawing')
  .map(nameOf)
  .filter((id) => records.has(id));
const load = async (id: string) => ({
  formula: (
    (await import(`../../src/optics/${records.get(id) ?? ''}/${id}.ts`)) as { default: Formula }
  ).default,
  draw: ((await import(`../../src/drawing/${id}.ts`)) as { draw: Draw }).draw,
});

it('draws every formula of both units', () => {
  expect(ids.length).toBeGreaterThanOrEqual(18);
});

describe.each(ids)('%s', (id) => {
  it('is drawn whole and on its sheet for any legal input, in any style', async () => {
    const { formula, draw } = await load(id);
    const style = fc.record({
      system: fc.constantFrom('metric' as const, 'imperial' as const),
      decimal: fc.constantFrom('point' as const, 'comma' as const),
    });
    fc.assert(
      fc.property(anyLegal(formula), style, ({ given, results }, how) => {
        expect(faults(draw(given, results, how))).toEqual([]);
      }),
    );
  });

  it('draws the same sheet from the same values', async () => {
    const { formula, draw } = await load(id);
    const given = valuesOf(formula);
    const { sheet, results } = sheetOf(formula, draw);
    expect(draw(given, results, {})).toEqual(sheet);
  });

  it('says what it shows, with the main result in it', async () => {
    const { formula, draw } = await load(id);
    const { sheet } = sheetOf(formula, draw);
    expect(sheet.says).toMatch(/\d/);
    expect(sheet.says.split(/[.!?] /).length).toBeLessThanOrEqual(4);
    expect(sheet.table.rows.length).toBeGreaterThan(1);
  });

  it('looks as it was last looked at', async () => {
    const { formula, draw } = await load(id);
    expect(written(sheetOf(formula, draw).sheet)).toMatchSnapshot();
  });
});
