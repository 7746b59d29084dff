import { describe, expect, it } from 'vitest';
import { deg, m } from '../../../src/formula/quantities.ts';
import { direction } from '../../../src/optics/light/direction.ts';
import face from '../../../src/optics/light/light-on-face.ts';
import softness, { solidAngle } from '../../../src/optics/light/softness.ts';
import { expectClose } from '../../support/close.ts';
import { run, value } from '../aperture/support.ts';

const lit = (azimuth: number, elevation: number, more = ''): string =>
  `key-azimuth=${azimuth}deg, key-elevation=${elevation}deg, nose-length=15mm${more}`;
const degrees = (line: string, result: string): number =>
  (value(face, line, result) * 180) / Math.PI;

describe('light on the face', () => {
  it('a key 45 degrees round and 30 up gives a surface facing the camera 0.612, −0.71 stop', () => {
    // cos 45° cos 30°
    const cos = Math.cos(value(face, lit(45, 30), 'incidence-forehead'));
    expectClose(cos, Math.SQRT1_2 * (Math.sqrt(3) / 2));
    expect(Math.log2(cos).toFixed(2)).toBe('-0.71');
  });

  it('lights cheeks 45 and nose sides 60 degrees round, camera-right by a key at camera-right', () => {
    expectClose(degrees(lit(45, 0), 'incidence-cheek-right'), 0, 0, 1e-6);
    expectClose(degrees(lit(45, 0), 'incidence-cheek-left'), 90);
    expectClose(degrees(lit(45, 0), 'incidence-nose-right'), 15, 1e-9);
    expectClose(degrees(lit(45, 0), 'incidence-nose-left'), 105);
    // The head turned takes the planes along.
    expectClose(degrees(lit(45, 0, ', head-turn=45deg'), 'incidence-forehead'), 0, 0, 1e-6);
  });

  it('the shadow of a 15 mm nose falls 15 mm sideways and 12.2 mm down', () => {
    expectClose(value(face, lit(45, 30), 'nose-shadow-across'), 0.015);
    // 15 × tan 30° / cos 45° = 15 × 0.8165
    expect(run(face, lit(45, 30)).results['nose-shadow-down']?.text).toBe('12.2 mm');
    expectClose(value(face, lit(-45, 30), 'nose-shadow-across'), -0.015);
    expect(value(face, lit(30, -20), 'nose-shadow-down')).toBeLessThan(0);
  });

  it('from level with the face back the nose throws no shadow on it', () => {
    for (const azimuth of [90, 120, 180])
      expect(run(face, lit(azimuth, 30)).results['nose-shadow-down']?.text).toBe('∞');
    expect(run(face, lit(-90, 0)).results['nose-shadow-across']?.text).toBe('−∞');
    expect(value(face, lit(90, 0), 'nose-shadow-down')).toBe(0);
  });

  it('puts the catchlight 51 degrees past twelve, 0.44 of a radius out, whichever way the head is turned', () => {
    for (const turn of ['', ', head-turn=30deg']) {
      const x = value(face, lit(45, 30, turn), 'catchlight-x');
      const y = value(face, lit(45, 30, turn), 'catchlight-y');
      expectClose(Math.hypot(x, y), 0.44, 1e-3);
      expectClose((Math.atan2(x, y) * 180) / Math.PI, 50.8, 1e-3);
    }
  });

  it('mirrors the key to the lens: the angles to both are the same', () => {
    const [x, y] = ['catchlight-x', 'catchlight-y'].map((id) => value(face, lit(-70, 20), id));
    const normal = [x ?? 0, y ?? 0, Math.sqrt(1 - (x ?? 0) ** 2 - (y ?? 0) ** 2)];
    const key = direction(deg(-70), deg(20));
    const toKey = key.reduce((sum, one, i) => sum + one * (normal[i] ?? 0), 0);
    expectClose(toKey, normal[2] ?? 0);
  });

  it.each([
    [45, 30, 'short'],
    [20, 30, 'broad'],
    [-45, 30, 'broad'],
    [30, 30, 'neither'],
  ])('with the nose at +30 a key at %s is %s', (azimuth, turn, side) => {
    expect(value(face, lit(azimuth, 20, `, head-turn=${turn}deg`), 'side')).toBe(side);
  });

  it('is neither short nor broad when the nose points at the lens', () => {
    expect(value(face, lit(45, 30), 'side')).toBe('neither');
  });

  // Quarter of the nose: atan 1/4 = 14.0°. R/(R + n) = 52.5/67.5: 51.06°. Split from 77°.
  it.each([
    [0, 'butterfly'],
    [14, 'butterfly'],
    [14.1, 'loop'],
    [45, 'loop'],
    [51, 'loop'],
    [51.1, 'rembrandt'],
    [-76.9, 'rembrandt'],
    [77, 'split'],
    [-90, 'split'],
    [150, 'split'],
  ])('calls a key at %s degrees %s', (azimuth, pattern) => {
    expect(value(face, lit(azimuth, 30), 'pattern')).toBe(pattern);
  });

  it('lets a longer nose close the triangle sooner', () => {
    const line = 'key-azimuth=45deg, key-elevation=30deg, nose-length=25mm';
    // 52.5/77.5: 42.6°
    expect(value(face, line, 'pattern')).toBe('rembrandt');
  });

  it('counts stops between the planes with the fill in, and no end of them without', () => {
    expect(run(face, lit(60, 0)).results['plane-stops']?.text).toBe('∞');
    // Key along the right nose side: 1 there, nothing on the left cheek; fill two stops under: 1.25 against 0.25.
    expectClose(value(face, lit(60, 0, ', fill-stops=2'), 'plane-stops'), Math.log2(5));
    // From straight ahead: forehead 1, nose sides cos 60° = 0.5.
    expectClose(value(face, lit(0, 0), 'plane-stops'), 1);
    expect(value(face, lit(180, 0), 'plane-stops')).toBe(0);
  });
});

describe('softness', () => {
  it('a softbox of 0.9 m at 1.5 m looks 33.4 degrees wide', () => {
    const line = 'source-width=0.9m, distance=1.5m';
    expect(run(softness, line).results['angle']?.text).toBe('33.4°');
    expect(run(softness, line).results['solid-angle']?.text).toBe('not given');
  });

  it('an edge 0.10 m off the wall, 0.6 m source at 2 m: 30 mm from light to shade', () => {
    const line =
      'source-width=0.6m, source-height=0.3m, distance=2m, occluder-distance=0.1m, face-width=120mm';
    expectClose(value(softness, line, 'edge-width'), 0.03);
    expectClose(value(softness, line, 'edge-height'), 0.015);
    expectClose(value(softness, line, 'face-share'), 0.25);
  });

  it('a face of a cube fills a sixth of all directions', () => {
    expectClose(solidAngle(m(2), m(2), deg(0), m(1)), (4 * Math.PI) / 6);
  });

  it('far away a solid angle is area over distance squared, less by the cosine of its turn', () => {
    expectClose(solidAngle(m(0.2), m(0.1), deg(0), m(100)), 0.02 / 1e4, 1e-5);
    expectClose(solidAngle(m(0.2), m(0.1), deg(60), m(100)), 0.01 / 1e4, 1e-5);
  });

  it('a turned source keeps its solid angle when turned the other way, and shows less', () => {
    const there = solidAngle(m(0.9), m(0.6), deg(40), m(1.2));
    expectClose(solidAngle(m(0.9), m(0.6), deg(-40), m(1.2)), there);
    expect(there).toBeLessThan(solidAngle(m(0.9), m(0.6), deg(0), m(1.2)));
  });

  it('a source turned 60 degrees is seen between its two edges', () => {
    // Half across 0.45 cos 60° = 0.225, half along 0.3897: atan(0.225/0.8103) + atan(0.225/1.5897)
    const line = 'source-width=0.9m, distance=1.2m, turn=60deg';
    const wanted = Math.atan(0.225 / 0.81029) + Math.atan(0.225 / 1.58971);
    expectClose(value(softness, line, 'angle'), wanted, 1e-5);
    expectClose(
      value(softness, 'source-width=0.9m, distance=1.2m, turn=-60deg', 'angle'),
      wanted,
      1e-5,
    );
  });

  it('another source is as soft where it looks as wide', () => {
    const line = 'source-width=0.9m, distance=1.2m, other-width=1.5m';
    expectClose(value(softness, line, 'same-softness-distance'), 2);
    expectClose(
      value(softness, 'source-width=1.5m, distance=2m', 'angle'),
      value(softness, 'source-width=0.9m, distance=1.2m', 'angle'),
    );
  });

  it('refuses a source turned until its edge reaches the child', () => {
    expect(() => run(softness, 'source-width=2m, distance=0.9m, turn=80deg')).toThrow(
      /reaches the child/,
    );
  });
});
