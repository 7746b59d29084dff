import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formulas } from '~/formulas.ts';
import { filesUnder } from '../support/files.ts';
import { anyLegal, sheetOf, valuesOf, written, type Draw } from './sheets.ts';
import type { Sheet } from '~/drawing/sheet.ts';

const ids = Object.keys(formulas).filter((id) =>
  filesUnder('src/drawing').includes(`src/drawing/${id}.ts`),
);
const load = async (id: string) => ({
  formula: (await (formulas[id] as (typeof formulas)[string])()).default,
  draw: ((await import(`../../src/drawing/${id}.ts`)) as { draw: Draw }).draw,
});

/** A letter at 13 units is no wider than this on average; the same room the drawings leave. */
const LETTER = 6.5;

const faults = (sheet: Sheet): string[] => {
  const found: string[] = [];
  const { width, height } = sheet;
  for (const mark of sheet.marks) {
    if (mark.kind === 'path') {
      if (!/^M[-\d.MLHAaZ ]+$/.test(mark.d)) found.push(`odd path ${mark.d.slice(0, 80)}`);
      // Numbers of an arc's flags stay small, so every number can be held to the sheet.
      const worst = Math.max(...(mark.d.match(/-?[\d.]+/g) ?? []).map((x) => Math.abs(Number(x))));
      if (!(worst < 3 * width))
        found.push(`far off the sheet: ${mark.role} ${mark.d.slice(0, 80)}`);
      continue;
    }
    const room =
      mark.text.length * LETTER * { start: 0, middle: 0.5, end: 1 }[mark.anchor ?? 'start'];
    const [left, right] = [mark.x - room, mark.x - room + mark.text.length * LETTER];
    if (!(left >= 0 && right <= width)) found.push(`${mark.text} from ${left} to ${right}`);
    if (!(mark.y >= 9 && mark.y <= height)) found.push(`${mark.text} at height ${mark.y}`);
  }
  const words = [sheet.says, ...sheet.table.head, ...sheet.table.rows.flat()].join(' ');
  if (/NaN|undefined|Infinity|\[object/.test(words)) found.push(words);
  if (sheet.table.rows.some((row) => row.length !== sheet.table.head.length))
    found.push('ragged table');
  return found;
};

it('draws every formula of the focal-length unit', () => {
  expect(ids.length).toBeGreaterThanOrEqual(8);
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
