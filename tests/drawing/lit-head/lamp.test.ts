import { describe, expect, it } from 'vitest';
import { lamp, received } from '~/drawing/lit-head/lamp.ts';

const deg = Math.PI / 180;

it('points where azimuth and elevation say', () => {
  const [x, y, z] = lamp(45 * deg, 30 * deg, 0.1).towards;
  // cos 30 x sin 45 = 0.61237; sin 30 = 0.5.
  expect(x).toBeCloseTo(0.61237, 5);
  expect(y).toBeCloseTo(0.5, 12);
  expect(z).toBeCloseTo(0.61237, 5);
});

describe('what a surface receives', () => {
  it.each([1, 5, 20, 32])('is the cosine while a disc of %d° half is above its horizon', (half) => {
    const share = received(half * deg);
    for (let slant = 0; slant < 90 - half - 1; slant += 7)
      expect(share(Math.cos(slant * deg))).toBeCloseTo(Math.cos(slant * deg), 2.5);
  });

  it('is what is left of a disc that has half set', () => {
    // A small disc of tangent t, its middle on the horizon: the mean of t v over the upper half, shared by the
    // whole: t x (2/3)/pi.
    const t = Math.tan(2 * deg);
    expect(received(2 * deg)(0) / ((t * 2) / (3 * Math.PI))).toBeCloseTo(1, 1.5);
  });

  it('is nothing of a disc that has set, and never falls as the surface turns towards it', () => {
    const share = received(20 * deg);
    expect(share(Math.cos(111 * deg))).toBe(0);
    for (let slant = 180; slant > 0; slant -= 1)
      expect(share(Math.cos((slant - 1) * deg))).toBeGreaterThanOrEqual(
        share(Math.cos(slant * deg)) - 1e-6,
      );
  });
});
