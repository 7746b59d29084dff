import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { m, mm, ratio } from '../../../src/formula/quantities.ts';
import { lensToSubject, fromLens } from '../../../src/optics/lens/measured-from.ts';
import {
  imageDistance,
  magnification,
  sensorToSubject,
  subjectDistance,
} from '../../../src/optics/lens/thin-lens.ts';
import { expectClose } from '../../support/close.ts';

const focal = fc.double({ min: 0.01, max: 0.5, noNaN: true });
const scale = fc.double({ min: 0.001, max: 0.99, noNaN: true });

describe('thin lens', () => {
  it('obeys 1/f = 1/s + 1/v', () => {
    fc.assert(
      fc.property(focal, fc.double({ min: 1.01, max: 1e4, noNaN: true }), (f, k) => {
        const s = m(f * k);
        expectClose(1 / imageDistance({ f: m(f), s }) + 1 / s, 1 / f, 1e-9);
      }),
    );
  });

  it('gives life size at twice the focal length, and four focal lengths between subject and sensor', () => {
    expectClose(magnification({ f: mm(50), s: mm(100) }), 1);
    expectClose(sensorToSubject({ f: mm(50), m: ratio(1) }), 0.2);
  });

  it('finds the distance again from the magnification', () => {
    fc.assert(
      fc.property(focal, scale, (f, k) => {
        expectClose(
          magnification({ f: m(f), s: subjectDistance({ f: m(f), m: ratio(k) }) }),
          k,
          1e-9,
        );
      }),
    );
  });

  it('finds the distance from the lens again when it is counted from the sensor', () => {
    fc.assert(
      fc.property(focal, scale, (f, k) => {
        const D = sensorToSubject({ f: m(f), m: ratio(k) });
        expectClose(lensToSubject({ f: m(f), D }), subjectDistance({ f: m(f), m: ratio(k) }), 1e-6);
      }),
    );
  });

  it('has no magnification at infinity, and the image in the focal plane', () => {
    expect(magnification({ f: mm(85), s: m(Infinity) })).toBe(0);
    expect(imageDistance({ f: mm(85), s: m(Infinity) })).toBe(mm(85));
  });

  it.each([85, 84, 1])('refuses a subject at %d mm from an 85 mm lens', (s) => {
    expect(() => magnification({ f: mm(85), s: mm(s) })).toThrow(RangeError);
    expect(() => magnification({ f: mm(85), s: mm(s) })).toThrow(/focal length of 85 mm.*Try/);
  });

  it('refuses a subject less than four focal lengths from the sensor', () => {
    expect(() => lensToSubject({ f: mm(85), D: mm(339) })).toThrow(/0.34 m/);
    expectClose(lensToSubject({ f: mm(85), D: mm(340.0000001) }), 0.17, 1e-3);
    // At four there is one position, life size: twice the focal length from the lens.
    expectClose(lensToSubject({ f: m(0.05), D: m(0.2) }), 0.1);
  });

  it('has an infinitely far subject infinitely far from the lens too', () => {
    expect(lensToSubject({ f: mm(85), D: m(Infinity) })).toBe(Infinity);
  });

  it('takes off a lens offset that was measured, and nothing when counted from the lens', () => {
    expectClose(fromLens({ f: mm(85), s: m(2.3), from: 'sensor', o: m(0.1) }), 2.2);
    expect(fromLens({ f: mm(85), s: m(2.3), from: 'lens', o: m(0.1) })).toBe(2.3);
    expect(fromLens({ f: mm(85), s: m(Infinity), from: 'sensor', o: m(0.1) })).toBe(Infinity);
  });
});
