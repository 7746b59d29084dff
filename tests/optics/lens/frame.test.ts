import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { InputError } from '../../../src/formula/errors.ts';
import { mm } from '../../../src/formula/quantities.ts';
import { readInput, writeInput } from '../../../src/formula/read.ts';
import {
  format,
  framed,
  printAspect,
  type Aspect,
  type Orientation,
} from '../../../src/optics/lens/frame.ts';
import { expectClose } from '../../support/close.ts';

const full = { width: mm(36), height: mm(24) };

describe('the frame as held and cropped', () => {
  it.each<[Orientation, Aspect | null, number, number]>([
    ['landscape', null, 36, 24],
    ['portrait', null, 24, 36],
    // 4:5 upright keeps the width: 24 × 30, one sixth of the height gone.
    ['portrait', { short: 4, long: 5 }, 24, 30],
    ['landscape', { short: 4, long: 5 }, 30, 24],
    ['portrait', { short: 1, long: 1 }, 24, 24],
    // A shape longer than the frame keeps the long side.
    ['landscape', { short: 1, long: 2 }, 36, 18],
    ['portrait', { short: 1, long: 2 }, 18, 36],
  ])('%s with %o is %d × %d mm', (orientation, aspect, across, up) => {
    const frame = framed({ format: full, orientation, aspect });
    expectClose(frame.across, mm(across));
    expectClose(frame.up, mm(up));
  });

  it('is the largest crop of its shape: inside the frame, and touching two sides', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 3, noNaN: true }),
        fc.double({ min: 1, max: 10, noNaN: true }),
        fc.constantFrom<Orientation>('landscape', 'portrait'),
        (sensor, print, orientation) => {
          const size = { width: mm(24 * sensor), height: mm(24) };
          const whole = framed({ format: size, orientation, aspect: null });
          const crop = framed({ format: size, orientation, aspect: { short: 1, long: print } });
          expect(crop.across).toBeLessThanOrEqual(whole.across * (1 + 1e-12));
          expect(crop.up).toBeLessThanOrEqual(whole.up * (1 + 1e-12));
          expect(
            Math.abs(crop.across / whole.across - 1) < 1e-9 ||
              Math.abs(crop.up / whole.up - 1) < 1e-9,
          ).toBe(true);
          expectClose(Math.max(crop.across, crop.up) / Math.min(crop.across, crop.up), print, 1e-9);
        },
      ),
    );
  });
});

describe('formats and prints as text', () => {
  const read = (text: string): unknown => readInput(format, text, { stored: true });
  it.each([
    ['36x24', 36, 24],
    ['44x33', 43.8, 32.9],
    ['4x5in', 121, 97], // an id wins over the size it looks like
    ['30x20mm', 30, 20],
    ['20x30mm', 30, 20],
    ['30 × 20 mm', 30, 20],
    ['30mm x 20mm', 30, 20],
    ['1.2x0.9in', 30.48, 22.86],
    ['6x4.5cm', 60, 45],
  ])('reads the format %s as %d × %d mm', (text, width, height) => {
    const size = read(text) as typeof full;
    expectClose(size.width, mm(width));
    expectClose(size.height, mm(height));
  });

  it.each([
    '37',
    '30x20',
    '0x20mm',
    '30x-20mm',
    '5000x20mm',
    'xmm',
    '30x20kg',
    'about 30x20mm',
    '30x20mm each',
    '<b>',
    'constructor',
    '__proto__',
  ])('refuses the format %s', (text) => {
    expect(() => read(text)).toThrow(InputError);
  });

  it.each([
    ['4:5', '4:5'],
    ['5:4', '4:5'],
    ['8x10', '8:10'],
    ['none', 'none'],
    ['1:1.414', '1:1.414'],
    ['1:20', '1:20'],
    ['20 × 1', '1:20'],
  ])('reads the print shape %s and writes it %s', (text, written) => {
    expect(writeInput(printAspect, readInput(printAspect, text))).toBe(written);
  });

  it.each([
    ['0:5', /two sides such as 4:5, up to 20 to 1; you typed 0:5/],
    ['0:0', /up to 20 to 1/],
    ['1:20.1', /up to 20 to 1/],
    ['square', /must be one of none, .*, a shape such as 4:5; you typed square/],
    ['4:', /must be one of/],
    ['', /you typed nothing/],
    ['print 4:5', /must be one of/],
    ['4:5 in', /must be one of/],
  ])('refuses the print shape %s', (text, message) => {
    expect(() => readInput(printAspect, text)).toThrow(InputError);
    expect(() => readInput(printAspect, text)).toThrow(message);
  });
});
