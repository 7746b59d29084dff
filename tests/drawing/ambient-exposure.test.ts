import { expect, it } from 'vitest';
import { draw } from '~/drawing/ambient-exposure.ts';
import { showResult } from '~/formula/show.ts';
import formula from '~/optics/aperture/ambient-exposure.ts';
import { placeOf } from './path-parts.ts';
import { paths, sheetOf, texts } from './sheets.ts';

const top = (points: [number, number][]): number => Math.min(...points.map(([, y]) => y));

it('stands flash and ambient on one scale of stops, with the margin', () => {
  // 500 lx at f/8, 1/160 s, ISO 100, C 250: 5.68 stops under.
  const { sheet, results } = sheetOf(formula, draw, { 'f-number': 'f/8', margin: '5stop' });
  const rung = placeOf(sheet, '−1').y - placeOf(sheet, '0').y;
  const zero = top(paths(sheet, 'light', true)[0] ?? []);
  expect(placeOf(sheet, '0').y - 4).toBeCloseTo(zero, 4);
  const ambient = top(paths(sheet, 'shade', true)[0] ?? []);
  expect((zero - ambient) / rung).toBeCloseTo(Math.log2((500 * 100) / 160 / (250 * 64)), 4);
  expect((zero - top(paths(sheet, 'hidden')[0] ?? [])) / rung).toBeCloseTo(-5, 6);
  expect(texts(sheet)).toContain(showResult(formula.outputs.over, results['over']));
  expect(texts(sheet)).toContain('under the margin');
});

it('moves the ambient alone with the shutter, and says which setting moves which', () => {
  const heights = (shutter: string): number[] => {
    const { sheet } = sheetOf(formula, draw, { shutter });
    const rung = placeOf(sheet, '−1').y - placeOf(sheet, '0').y;
    const zero = placeOf(sheet, '0').y - 4;
    return ([['light'], ['shade']] as const).map(
      ([role]) => (zero - top(paths(sheet, role, true)[0] ?? [])) / rung,
    );
  };
  const [flash = 0, ambient = 0] = heights('1/160s');
  const [flashAfter = 0, ambientAfter = 0] = heights('1/80s');
  expect(flashAfter).toBeCloseTo(flash, 6);
  expect(ambientAfter - ambient).toBeCloseTo(1, 4);
  const { sheet } = sheetOf(formula, draw);
  const row = (text: string): string[] =>
    sheet.marks.flatMap((mark) =>
      mark.kind === 'text' && mark.y === placeOf(sheet, text).y && mark.text !== text
        ? [mark.text]
        : [],
    );
  expect(row('shutter 1/160 s')).toEqual(['ambient only']);
  expect(row('aperture f/4')).toEqual(['moves both']);
  expect(row('ISO 100')).toEqual(['moves both']);
  expect(row('flash power')).toEqual(['flash only']);
  // Two arrows for what moves both, one for the rest, each of two heads.
  const heads = (role: 'light' | 'shade'): number =>
    paths(sheet, role).filter((line) => line.length === 3).length;
  expect([heads('light'), heads('shade')]).toEqual([8, 6]);
});

it('takes a metered EV in place of the illuminance', () => {
  const { sheet } = sheetOf(formula, draw, { 'metered-ev': '14EV', margin: '0stop' });
  const rung = placeOf(sheet, '+1').y - placeOf(sheet, '+2').y;
  const zero = placeOf(sheet, '0').y - 4;
  const over = (zero - top(paths(sheet, 'shade', true)[0] ?? [])) / rung;
  expect(over).toBeCloseTo(14 - Math.log2(16 * 160), 4);
  expect(texts(sheet)).toContain('over the margin');
});
