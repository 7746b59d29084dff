import { describe, expect, it } from 'vitest';
import { lamp } from '~/drawing/lit-head/lamp.ts';
import { FINE, peak, ROUGH, shadow, type Care } from '~/drawing/lit-head/shadow.ts';
import { blank, type View } from '~/drawing/lit-head/view.ts';

const deg = Math.PI / 180;

/** A flat board towards the camera, with whatever stands on it: heights in millimetres by place in pixels. */
const board = (stands: (x: number, y: number) => number): View => {
  const view = blank(220);
  for (let y = 0; y < view.height; y++)
    for (let x = 0; x < view.width; x++) {
      const at = y * view.width + x;
      view.z[at] = stands(x, y);
      view.nz[at] = 1;
      view.kind[at] = 1;
    }
  return view;
};
const sees = (view: View, ...how: [number, number, number, Care]): Float32Array => {
  const [azimuth, elevation, size, care] = how;
  const out = new Float32Array(view.z.length);
  shadow(view, peak(view), lamp(azimuth * deg, elevation * deg, size * deg), care, out);
  return out;
};

describe.each([
  [45, 30],
  [30, 50],
  [-55, 20],
])('a nose on a flat face, its key %d° round and %d° up', (azimuth, elevation) => {
  it('throws the shadow of its tip where the formula says', () => {
    const n = 15;
    // A post two pixels wide at the middle of the board.
    const [px, py] = [110, 137];
    const view = board((x, y) => (Math.abs(x - px) <= 1 && Math.abs(y - py) <= 1 ? n : 0));
    const lit = sees(view, azimuth, elevation, 1, FINE);
    // n tan a to the side away from the key, n tan e / cos a down; pixels.
    const across = -n * Math.tan(azimuth * deg) * view.scale;
    const down = ((n * Math.tan(elevation * deg)) / Math.cos(azimuth * deg)) * view.scale;
    const length = Math.hypot(across, down);
    let farthest = 0;
    for (let y = 0; y < view.height; y++)
      for (let x = 0; x < view.width; x++) {
        if ((lit[y * view.width + x] ?? 1) > 0.5) continue;
        const [dx, dy] = [x - px, y - py];
        // Every dark pixel lies along the shadow's way, as broad as the post.
        expect(Math.abs(dx * down - dy * across) / length).toBeLessThan(2.5);
        farthest = Math.max(farthest, (dx * across + dy * down) / length);
      }
    expect(Math.abs(farthest - length)).toBeLessThan(2);
  });
});

describe('the edge of a shadow', () => {
  it.each([5, 12, 20])('is as wide as a source of %d° makes it', (size) => {
    // A wall across the left half, 24 mm high; a key straight from the left, half way up over the board.
    const view = board((x) => (x < 70 ? 24 : 0));
    const lit = sees(view, -45, 0, size, FINE);
    const row = 130 * view.width;
    const at = (wanted: number): number => {
      for (let x = 71; x < 215; x++) {
        const [a, b] = [lit[row + x] ?? 0, lit[row + x + 1] ?? 0];
        if (a < wanted && b >= wanted) return x + (wanted - a) / (b - a);
      }
      return Number.NaN;
    };
    // Light grazes the wall's edge at 45° give or take half the source: the shadow ends 24 mm / tan of that off.
    const end = (over: number): number => 24 / Math.tan((45 + over) * deg);
    // The last 3 % of a disc's area begin at 0.86 of its radius: (acos v - v sqrt(1 - v v)) / pi = 0.03.
    const [dark, full] = [end(0.43 * size), end(-0.43 * size)].map((mm) => mm * view.scale);
    // Half of the disc is over the edge where its middle is.
    expect(Math.abs(at(0.5) - 69.5 - end(0) * view.scale)).toBeLessThan(2);
    expect(Math.abs(at(0.03) - 69.5 - (dark ?? 0))).toBeLessThan(2);
    expect(Math.abs(at(0.97) - 69.5 - (full ?? 0))).toBeLessThan(2);
  });
});

it('throws no shadow on a bare board, whatever the key', () => {
  const view = board(() => 0);
  for (const [azimuth, elevation] of [
    [0, 0],
    [80, 5],
    [-30, 60],
  ] as const)
    // prettier-ignore
    expect(Math.min(...sees(view, azimuth, elevation, 20, ROUGH))).toBeGreaterThan(0.999);
});
