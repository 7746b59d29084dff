import { describe, expect, it } from 'vitest';
import adapt, { WHITES } from 'colorjs.io/src/adapt.js';
import 'colorjs.io/src/CATs.js';
import { planckian } from '~/optics/colour/planck.ts';
import { onScreen } from '~/widgets/gel/screen.ts';

const xy = ([X, Y, Z]: readonly [number, number, number]) => ({
  x: X / (X + Y + Z),
  y: Y / (X + Y + Z),
});
const D65 = { x: 0.3127, y: 0.329 };

describe('glowing bodies, beside the library’s own white points', () => {
  it('has illuminant A at 2856 K', () => {
    // CIE 15 prints 0.44758, 0.40745; the library works from four digits of them.
    const { x, y } = planckian(2856);
    expect(x).toBeCloseTo(0.44758, 3);
    expect(y).toBeCloseTo(0.40745, 3);
    const library = xy(WHITES['A'] ?? [0, 0, 0]);
    expect(Math.hypot(x - library.x, y - library.y)).toBeLessThan(3e-4);
  });

  it('runs past the daylights, a little on their purple side', () => {
    for (const [name, kelvin] of [
      ['D50', 5003],
      ['D55', 5503],
      ['D65', 6504],
      ['D75', 7504],
    ] as const) {
      // prettier-ignore
      const { x, y } = planckian(kelvin);
      const day = xy(WHITES[name] ?? [0, 0, 0]);
      expect(Math.hypot(x - day.x, y - day.y)).toBeLessThan(0.012);
      expect(y, name).toBeLessThan(day.y);
    }
  });
});

describe('a light on the screen', () => {
  it('is grey where the camera takes it for white', () => {
    for (const kelvin of [2856, 3200, 5500, 10000]) {
      const source = planckian(kelvin);
      const { light, within } = onScreen(source, 0.5, { white: source, source });
      for (const part of light) expect(part).toBeCloseTo(0.5, 3);
      expect(within).toBe(true);
    }
  });

  it('is sRGB’s own red where it has red’s place', () => {
    // sRGB's red primary is at 0.64, 0.33 and has 0.2126 of white's luminance.
    const { light } = onScreen({ x: 0.64, y: 0.33 }, 0.2126, { white: D65, source: D65 });
    expect(light[0]).toBeCloseTo(1, 2);
    expect(light[1]).toBeCloseTo(0, 2);
    expect(light[2]).toBeCloseTo(0, 2);
  });

  it('goes orange under a camera balanced bluer, blue under one balanced warmer', () => {
    const [warm, cool] = [planckian(3200), planckian(5500)];
    const orange = onScreen(warm, 0.5, { white: cool, source: cool }).light;
    expect(orange[0]).toBeGreaterThan(orange[2] * 2);
    const blue = onScreen(cool, 0.5, { white: warm, source: cool }).light;
    expect(blue[2]).toBeGreaterThan(blue[0] * 2);
  });

  it('keeps its luminance by Bradford’s matrix, worked by hand', () => {
    // A to D65 by Bradford, as printed widely: the X row is 0.8446965, -0.1179225, 0.3948108.
    const white = WHITES['A'];
    if (!white) throw new Error('The library lost its illuminant A.');
    const [X] = adapt(white, 'D65', [0.5, 0.4, 0.3]);
    expect(X).toBeCloseTo(0.8446965 * 0.5 - 0.1179225 * 0.4 + 0.3948108 * 0.3, 2.5);
  });

  it('says when the screen lacks a colour, and stays on the screen', () => {
    const source = planckian(5500);
    // A pure green, far outside sRGB.
    const { light, within } = onScreen({ x: 0.196, y: 0.712 }, 0.1, { white: source, source });
    expect(within).toBe(false);
    expect(Math.min(...light)).toBeGreaterThanOrEqual(0);
    expect(light[1]).toBeGreaterThan(light[0]);
    expect(light[1]).toBeGreaterThan(light[2]);
  });
});
