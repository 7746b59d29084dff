import { expect, it } from 'vitest';
import { planckian } from '../../../src/optics/colour/planck.ts';

// Illuminant A is a black body, of 2856 K by today's second radiation constant.
it('puts illuminant A where the CIE does', () => {
  const { x, y } = planckian(2855.5);
  expect(Math.abs(x - 0.44758)).toBeLessThan(5e-5);
  expect(Math.abs(y - 0.40745)).toBeLessThan(5e-5);
});

it('grows bluer with temperature and ends where an endlessly hot body would stand', () => {
  let last = 1;
  for (const temperature of [1500, 2500, 3500, 5500, 10000, 50000, Infinity]) {
    const { x } = planckian(temperature);
    expect(x).toBeLessThan(last);
    last = x;
  }
  // The blue end of the locus is published as about (0.240, 0.234).
  const { x, y } = planckian(Infinity);
  expect(Math.abs(x - 0.24)).toBeLessThan(0.001);
  expect(Math.abs(y - 0.234)).toBeLessThan(0.001);
});
