import { expect, it } from 'vitest';
import { gelSpots, profile, GEL_COLOURS } from '~/drawing/gel-spots.ts';
import { compute } from '~/formula/compute.ts';
import { coloursFor } from '~/optics/colour/gels.ts';
import formula from '~/optics/light/gel.ts';
import { valuesOf } from './sheets.ts';

const given = valuesOf(formula, { source: '5500K', 'gel-shift': '109mired', transmission: '0.71' });
const shown = gelSpots(given, compute(formula, given), { colour: 'red', balance: '3200' });

it('falls to half at the beam’s edge, by the cosine’s power and the cloth’s own slant', () => {
  // 20 deg at 2.0 m: the edge is 2 tan 10 deg = 0.35265 m off; half there, times cos^3 10 deg = 0.95511 for the cloth.
  expect(profile(0)).toBe(1);
  expect(profile(0.35265)).toBeCloseTo(0.5 * 0.95511, 4);
  expect(profile(2)).toBeLessThan(1e-6);
});

it('gives each spot its share of the light and its place in the diagram', () => {
  expect(shown.spots.map(({ through }) => through)).toEqual([1, 0.71, 0.11]);
  // As printed for the red gel in daylight.
  expect(shown.spots[2]?.coordinates).toBe('x\u00a00.670, y\u00a00.313');
  expect(shown.spots[2]?.measured).toMatchObject({ x: 0.31006, y: 0.31616 });
  // 182 + 109 mired is 3439 K.
  expect(shown.spots[1]?.name).toMatch(/34[34]0 K/);
  expect(shown.spots[1]?.says).toContain('0.5 stops less light');
});

it('takes what was measured in the light nearest to the source', () => {
  const red = (kelvin: number): number =>
    coloursFor(kelvin).find(({ id }) => id === 'red')?.through ?? Number.NaN;
  expect(red(5500)).toBe(0.11);
  expect(red(3000)).toBe(0.15);
});

it('offers every coloured gel, whatever the source', () => {
  for (const kelvin of [1000, 3200, 5500, 100000])
    expect(coloursFor(kelvin).map(({ id }) => id)).toEqual(GEL_COLOURS.map(({ id }) => id));
});
