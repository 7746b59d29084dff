import { expect, it } from 'vitest';
import { draw } from '~/drawing/f-stop.ts';
import { showResult } from '~/formula/show.ts';
import formula from '~/optics/aperture/f-stop.ts';
import { discs } from './path-parts.ts';
import { paths, scaleOf, sheetOf, texts, wide } from './sheets.ts';

it.each([
  [85, 4, 5.6],
  [50, 8, 2],
  [135, 2.8, 22],
])('draws the pupils of %s mm at f/%s and f/%s to one scale of millimetres', (f, from, to) => {
  const { sheet, results } = sheetOf(formula, draw, {
    from: `f/${from}`,
    to: `f/${to}`,
    'focal-length': `${f}mm`,
  });
  const scale = scaleOf(sheet);
  const [one, other] = discs(sheet, 'light', true);
  expect(((one?.radius ?? 0) * 2) / scale).toBeCloseTo(f / from / 1000, 6);
  expect(((other?.radius ?? 0) * 2) / scale).toBeCloseTo(f / to / 1000, 6);
  // The first is laid over the second, so that the light between them can be seen.
  expect(discs(sheet, 'hidden')[0]).toEqual({ ...one, x: other?.x });
  for (const key of ['fromPupil', 'toPupil', 'stops'] as const)
    expect(texts(sheet)).toContain(showResult(formula.outputs[key], results[key]));
});

it('sets both on a scale of stops, a halving of the light as far as the next', () => {
  const { sheet } = sheetOf(formula, draw, { from: 'f/2', to: 'f/16' });
  const [a = [], b = []] = paths(sheet, 'emphasis');
  // Six stops apart; full marks are 13 units long strokes of the same weight as the line.
  const marks = paths(sheet, 'object').filter((line) => wide(line) < 1e-6);
  const places = marks.map(([point]) => point?.[0] ?? 0);
  const step = (places[1] ?? 0) - (places[0] ?? 0);
  expect(((b[0]?.[0] ?? 0) - (a[0]?.[0] ?? 0)) / step).toBeCloseTo(6, 5);
});

it('keeps silent about millimetres where no lens is given', () => {
  const { sheet } = sheetOf(formula, draw, { 'focal-length': '' });
  const [one, other] = discs(sheet, 'light', true);
  expect((one?.radius ?? 0) / (other?.radius ?? 1)).toBeCloseTo(5.6 / 4, 6);
  expect(texts(sheet).join(' ')).not.toContain('mm');
});
