import { describe, expect, it } from 'vitest';
import { draw as drawDistance } from '~/drawing/framing-distance.ts';
import { draw as drawSize } from '~/drawing/frame-size.ts';
import { showResult } from '~/formula/show.ts';
import distance from '~/optics/lens/framing-distance.ts';
import size from '~/optics/lens/frame-size.ts';
import { high, paths, scaleOf, sheetOf, texts, wide } from './sheets.ts';

describe('framing distance', () => {
  // s = f(1 + H/h), h the longer side upright, the shorter lying, less what a print cuts.
  it.each([
    ['portrait', 'none', 85, 0.9, 0.085 * (1 + 900 / 36)],
    ['landscape', 'none', 85, 0.9, 0.085 * (1 + 900 / 24)],
    ['portrait', '4:5', 50, 1.1, 0.05 * (1 + 1100 / 30)],
    ['portrait', '1:1', 135, 0.4, 0.135 * (1 + 400 / 24)],
  ])(
    'stands the %s camera, print %s, %s mm, so far that %s m fill the frame',
    (orientation, aspect, f, H, s) => {
      const { sheet, results } = sheetOf(distance, drawDistance, {
        orientation,
        'print-aspect': aspect,
        'focal-length': `${f}mm`,
        'frame-height': `${H}m`,
      });
      const scale = scaleOf(sheet);
      const [fan = []] = paths(sheet, 'light', true);
      expect(wide(fan) / scale).toBeCloseTo(s, 6);
      expect(high(fan) / scale).toBeCloseTo(H, 6);
      expect(texts(sheet)).toContain(showResult(distance.outputs.s, results['s']));
      expect(texts(sheet)).toContain(showResult(distance.outputs.W, results['W']));
    },
  );

  it('draws the frame upright when it is, and the print’s crop in dashes inside it', () => {
    const { sheet } = sheetOf(distance, drawDistance, { 'print-aspect': '4:5' });
    const whole = paths(sheet, 'frame').at(-1) ?? [];
    const print = paths(sheet, 'hidden').at(-1) ?? [];
    expect(high(whole) / wide(whole)).toBeCloseTo(36 / 24, 6);
    // The 4:5 print of an upright 24 × 36 keeps 30 of the 36 mm.
    expect(high(print) / high(whole)).toBeCloseTo(30 / 36, 6);
    expect(wide(print)).toBeCloseTo(wide(whole), 6);
    expect(texts(sheet)).toContain('dashed: the print');
    const lying =
      paths(sheetOf(distance, drawDistance, { orientation: 'landscape' }).sheet, 'frame').at(-1) ??
      [];
    expect(wide(lying) / high(lying)).toBeCloseTo(36 / 24, 6);
  });

  it('draws the child in the frame as large as it is beside the frame’s height', () => {
    const { sheet } = sheetOf(distance, drawDistance);
    const frame = paths(sheet, 'frame').at(-1) ?? [];
    const child = paths(sheet, 'figure', true).at(-1) ?? [];
    expect(high(child) / high(frame)).toBeCloseTo(0.51 / 0.9, 2);
  });

  it('keeps the child inside a frame that it overfills', () => {
    const { sheet } = sheetOf(distance, drawDistance, { 'frame-height': '0.2m' });
    const frame = paths(sheet, 'frame').at(-1) ?? [];
    const child = paths(sheet, 'figure', true).at(-1) ?? [];
    expect(Math.max(...child.map(([, y]) => y))).toBeLessThanOrEqual(
      Math.max(...frame.map(([, y]) => y)) + 1e-6,
    );
    expect(Math.min(...child.map(([x]) => x))).toBeGreaterThanOrEqual(
      Math.min(...frame.map(([x]) => x)) - 1e-6,
    );
  });
});

describe('frame size', () => {
  it.each([
    [85, 2.21],
    [50, 3],
    [135, 1.2],
  ])('draws what %s mm at %s m take in', (f, s) => {
    const { sheet, results } = sheetOf(size, drawSize, {
      'focal-length': `${f}mm`,
      'subject-distance': `${s}m`,
    });
    const [fan = []] = paths(sheet, 'light', true);
    expect(high(fan) / scaleOf(sheet)).toBeCloseTo((0.036 * (s - f / 1000)) / (f / 1000), 6);
    expect(texts(sheet)).toEqual(
      expect.arrayContaining([
        showResult(size.outputs.W, results['W']),
        showResult(size.outputs.H, results['H']),
      ]),
    );
  });

  it('counts from the lens when the tape began at the sensor', () => {
    const { sheet } = sheetOf(size, drawSize, {
      'measured-from': 'sensor',
      'subject-distance': '2.2984m',
    });
    expect(wide(paths(sheet, 'light', true)[0] ?? []) / scaleOf(sheet)).toBeCloseTo(2.21, 6);
  });

  it('draws an endless distance without a scale', () => {
    const { sheet } = sheetOf(size, drawSize, { 'subject-distance': 'infinity' });
    expect(texts(sheet).filter((text) => text === '∞')).toHaveLength(3);
    expect(scaleOf(sheet)).toBeNaN();
  });
});
