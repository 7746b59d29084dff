import { expect, it } from 'vitest';
import { meter, nameOf, PLACES, seenAt, spotAt, spotOf } from '~/drawing/lit-head/places.ts';
import { bust, light, look, unlit } from '~/drawing/lit-head/portrait.ts';
import { pairOf, sayStops } from '~/drawing/lit-head/says.ts';
import { FINE } from '~/drawing/lit-head/shadow.ts';
import formula from '~/optics/light/light-on-face.ts';
import { valuesOf } from '../sheets.ts';

const deg = Math.PI / 180;
const meshes = bust(15, 0.7);

it('reads the cosine of the slant at the forehead, wherever the head is turned', () => {
  for (const turn of [0, 20, -30]) {
    const view = look(meshes, 240, turn * deg);
    const lights = { azimuth: turn * deg, elevation: 0, size: 0.1, fillStops: Infinity };
    const lit = unlit(view, lights);
    light(view, lights, lit, FINE);
    const spot = spotOf('forehead', 15);
    // The key straight before the nose: the slant is the ellipsoid's own there.
    const [v, w] = [(spot[1] - 28) / 68 ** 2, (spot[2] + 8) / 88 ** 2];
    const cos = w / Math.hypot(v, w);
    expect(meter(view, lit.light, spot, turn * deg)).toBeCloseTo(Math.log2(cos), 1.5);
  }
});

it('says nothing of a place turned away, and finds a place again under the picture', () => {
  const turn = 60 * deg;
  const view = look(meshes, 240, turn);
  const dark = new Float32Array(view.z.length).fill(1);
  expect(meter(view, dark, spotOf('temple-right', 15), turn)).toBeUndefined();
  expect(meter(view, dark, spotOf('temple-left', 15), turn)).toBeCloseTo(0, 12);
  const cheek = spotOf('cheek-left', 15);
  const [x, y] = seenAt(cheek, turn);
  const found = spotAt(view, x, y, turn);
  expect(Math.hypot(...(found ?? [0, 0, 0]).map((one, i) => one - (cheek[i] ?? 0)))).toBeLessThan(
    2,
  );
  expect(spotAt(view, 95, 100, turn)).toBeUndefined();
});

it('names places', () => {
  for (const { id, name } of PLACES) expect(nameOf(spotOf(id, 15), 15)).toBe(name);
  expect(nameOf([5, 36, 80], 15)).toBe('near the forehead');
});

it('says readings as a photographer would', () => {
  expect(sayStops(-1.34)).toBe('1.3 stops under the key');
  expect(sayStops(0.04)).toBe('level with the key');
  expect(sayStops(1)).toBe('1.0 stop over the key');
  expect(sayStops(-2.05, { decimal: 'comma' })).toBe('2,1 stops under the key');
  expect(sayStops(-Infinity)).toBe('no light at all');
});

it('shows short and broad side by side', () => {
  const { both } = pairOf(
    valuesOf(formula, {
      'key-azimuth': '45deg',
      'key-elevation': '30deg',
      'head-turn': '30deg',
      'fill-stops': '2stop',
    }),
  );
  // Nose +30, key +45: the nose lies between camera and key, so the key lights the short side; mirrored, the broad.
  expect(both.map(({ name }) => name.split(':')[1]?.split(',')[0])).toEqual([' short', ' broad']);
  expect(both[0]?.says).toContain('45° to camera-right');
  expect(both[1]?.says).toContain('45° to camera-left');
});
