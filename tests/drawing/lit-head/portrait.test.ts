import { beforeAll, describe, expect, it } from 'vitest';
import { bust, develop, light, look, skinColour, unlit } from '~/drawing/lit-head/portrait.ts';
import { FINE } from '~/drawing/lit-head/shadow.ts';
import type { View } from '~/drawing/lit-head/view.ts';

const deg = Math.PI / 180;
const meshes = bust(15);
let view: View;
beforeAll(() => {
  view = look(meshes, 240, 0);
});

const keyed = (seen: View, azimuth: number, elevation: number, size = 3, fillStops = Infinity) => {
  const lights = {
    azimuth: azimuth * deg,
    elevation: elevation * deg,
    size: size * deg,
    fillStops,
  };
  const lit = unlit(seen, lights);
  light(seen, lights, lit, FINE);
  return { lights, lit };
};

describe('the form', () => {
  it('faces on the forehead and the temples as its ellipsoid does', () => {
    // Half axes 70, 68, 88 mm about (0, 28, -8): the outward normal is the place over each half axis squared.
    let worst = 1;
    for (const x of [-45, -34, -20, -10, 0, 10, 20, 34, 45])
      for (const y of [34, 40]) {
        const [u, v] = [x / 70, (y - 28) / 68];
        const w = Math.sqrt(1 - u * u - v * v);
        const normal = [u / 70, v / 68, w / 88];
        const long = Math.hypot(...normal);
        const at =
          Math.round(view.height / 2 - (y + 7) * view.scale - 0.5) * view.width +
          Math.round(view.width / 2 + x * view.scale - 0.5);
        const drawn = [view.nx[at] ?? 0, view.ny[at] ?? 0, view.nz[at] ?? 0];
        const cos = normal.reduce((sum, part, i) => sum + (part / long) * (drawn[i] ?? 0), 0);
        worst = Math.min(worst, cos);
      }
    // Within a degree, half a pixel of curvature included.
    expect(worst).toBeGreaterThan(Math.cos(1 * deg));
  });

  it('has a nose as long as asked for', () => {
    const tip = (n: number): number => {
      const seen = look(bust(n, 0.6), 200, 0);
      let most = 0;
      for (const z of seen.z) most = Math.max(most, z);
      return most;
    };
    expect(tip(20) - tip(10)).toBeGreaterThan(8);
    expect(tip(20) - tip(10)).toBeLessThan(11);
  });
});

describe('its light', () => {
  it('is the same on both sides for a key from either', () => {
    const [one, other] = [keyed(view, 40, 25, 20).lit.light, keyed(view, -40, 25, 20).lit.light];
    let [off, count] = [0, 0];
    for (let y = 0; y < view.height; y++)
      for (let x = 0; x < view.width; x++) {
        const [here, there] = [y * view.width + x, (y + 1) * view.width - 1 - x];
        if (view.kind[here] !== 1 || view.kind[there] !== 1) continue;
        off += Math.abs((one[here] ?? 0) - (other[there] ?? 0));
        count += 1;
      }
    expect(off / count).toBeLessThan(0.01);
  });

  it.each([
    [45, 30],
    [35, 40],
    [-60, 25],
  ])('is kept off where a ray to a small key at %d°, %d° meets the form', (azimuth, elevation) => {
    const { lit } = keyed(view, azimuth, elevation, 2);
    const towards = [
      Math.sin(azimuth * deg) * Math.cos(elevation * deg),
      Math.sin(elevation * deg),
      Math.cos(azimuth * deg) * Math.cos(elevation * deg),
    ] as const;
    const deep = (x: number, y: number): number => {
      const [i, j] = [Math.floor(x), Math.floor(y)];
      const z = (u: number, v: number): number => view.z[v * view.width + u] ?? -1e4;
      const [a, b] = [x - i, y - j];
      return (
        (z(i, j) * (1 - a) + z(i + 1, j) * a) * (1 - b) +
        (z(i, j + 1) * (1 - a) + z(i + 1, j + 1) * a) * b
      );
    };
    let [wrong, count] = [0, 0];
    // The face between brows and chin, every third pixel; a ray in steps of a quarter of a millimetre.
    for (let j = 112; j < 232; j += 2)
      for (let i = 64; i < 176; i += 2) {
        const at = j * view.width + i;
        const [nx, ny, nz] = [view.nx[at] ?? 0, view.ny[at] ?? 0, view.nz[at] ?? 0];
        if (nx * towards[0] + ny * towards[1] + nz * towards[2] < 0.15) continue;
        let blocked = false;
        for (let t = 1.5; t < 130 && !blocked; t += 0.25) {
          const [x, y] = [i + t * towards[0] * view.scale, j - t * towards[1] * view.scale];
          blocked = deep(x, y) > (view.z[at] ?? 0) + t * towards[2] + 0.3;
        }
        count += 1;
        if (blocked !== (lit.sees[at] ?? 0) < 0.5) wrong += 1;
      }
    expect(count).toBeGreaterThan(700);
    // At the very edges a pixel may fall either way.
    expect(wrong / count).toBeLessThan(0.03);
  });

  it('falls the same on every skin, and each skin shows its own part of it', () => {
    const { lights, lit } = keyed(view, 0, 0, 10, 1);
    const at = Math.round(view.height / 2 - 47 * view.scale) * view.width + view.width / 2;
    for (const reflectance of [0.05, 0.2, 0.36]) {
      const skin = skinColour(reflectance);
      expect(0.2126 * skin[0] + 0.7152 * skin[1] + 0.0722 * skin[2]).toBeCloseTo(reflectance, 12);
      const image = new Uint8ClampedArray(4 * view.z.length);
      develop(view, lights, lit, skin, image);
      const linear = [0, 1, 2].map((c) => {
        const v = (image[4 * at + c] ?? 0) / 255;
        return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
      });
      const [r = 0, g = 0, b = 0] = linear;
      // Forehead at 40 mm up: its ellipsoid leans 10.5 deg back (cos 0.983); half the key again by the fill.
      const y = (40 - 28) / 68;
      const normal = [y / 68, Math.sqrt(1 - y * y) / 88];
      const cos = (normal[1] ?? 0) / Math.hypot(...normal);
      if (r < 0.6)
        expect((0.2126 * r + 0.7152 * g + 0.0722 * b) / (reflectance * (cos + 0.5))).toBeCloseTo(
          1,
          1.3,
        );
    }
  });
});
