import { expect, it } from 'vitest';
import { KNEE, onScreen, tone } from '~/drawing/lit-head/tone.ts';

it('shows a grey card in the key’s light as a grey card', () => {
  // sRGB by its standard: 255 x (1.055 x 0.18^(1/2.4) - 0.055) = 117.6.
  expect(tone(0.18)).toBe(0.18);
  expect(onScreen(0.18)).toBe(118);
  // A stop less: 0.09 gives 255 x (1.055 x 0.09^(1/2.4) - 0.055) = 84.6.
  expect(onScreen(0.09)).toBe(85);
});

it('bends over without a kink, and never reaches paper white', () => {
  const slope = (x: number): number => (tone(x + 1e-6) - tone(x - 1e-6)) / 2e-6;
  expect(slope(KNEE - 1e-3)).toBeCloseTo(1, 6);
  expect(slope(KNEE + 1e-3)).toBeCloseTo(1, 1.9);
  for (let x = 0; x < 8; x += 0.05) expect(tone(x + 0.05)).toBeGreaterThan(tone(x));
  expect(tone(1000)).toBeLessThan(1);
  expect(onScreen(-1)).toBe(0);
});
