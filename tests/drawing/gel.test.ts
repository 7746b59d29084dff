import { expect, it } from 'vitest';
import { draw } from '~/drawing/gel.ts';
import formula from '~/optics/light/gel.ts';
import { paths, sheetOf, texts } from './sheets.ts';

it('steps along a ruler in mired', () => {
  const { sheet } = sheetOf(formula, draw, {
    source: '5500K',
    'gel-shift': '109mired',
    transmission: '0.71',
  });
  // The ruler itself, from the places and numbers under its strokes.
  const at = (number: string): number => {
    const mark = sheet.marks.find((one) => one.kind === 'text' && one.text === number);
    return mark?.kind === 'text' ? mark.x : Number.NaN;
  };
  const mired = (x: number): number => 150 + ((x - at('150')) / (at('300') - at('150'))) * 150;
  const upright = (role: 'light' | 'emphasis'): number =>
    paths(sheet, role).find(([a, b]) => a !== undefined && a[0] === b?.[0])?.[0]?.[0] ?? Number.NaN;
  // A million over 5500 is 181.818; and 109 more.
  expect(mired(upright('light'))).toBeCloseTo(181.818, 2);
  expect(mired(upright('emphasis'))).toBeCloseTo(290.818, 2);
  expect(texts(sheet)).toEqual(expect.arrayContaining(['109 mired', 'loss 0.49 stops']));
});

it('fills as much of the bar as the gel lets through', () => {
  const { sheet } = sheetOf(formula, draw, { transmission: '0.25' });
  const bar = paths(sheet, 'object').find((ring) => ring.length === 4) ?? [];
  const lit = paths(sheet, 'light', true)[0] ?? [];
  const width = (ring: [number, number][]): number => (ring[1]?.[0] ?? 0) - (ring[0]?.[0] ?? 0);
  expect(width(lit) / width(bar)).toBeCloseTo(0.25, 6);
});
