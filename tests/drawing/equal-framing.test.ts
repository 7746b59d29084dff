import fc from 'fast-check';
import { expect, it } from 'vitest';
import { drawEqualFraming } from '~/drawing/equal-framing.ts';
import { fNumber, m, mm } from '~/formula/quantities.ts';
import { faults, written } from './sheets.ts';
import { discs } from './path-parts.ts';
import { paths } from './sheets.ts';

const usual = {
  format: { width: mm(36), height: mm(24) },
  orientation: 'portrait',
  H: m(0.9),
  N: fNumber(4),
  b: m(1.5),
  c: mm(0.03),
} as const;
const lengths = [35, 50, 85, 135, 200];
// At a magnification of 0.04 the lens stands 26 focal lengths off: 26 f.
const blur = (f: number): number => ((0.04 * f) / 4) * (1.5 / (0.026 * f + 1.5));
const depth = (f: number): number => {
  const disc = (0.04 * f) / 4;
  return 26 * f * (0.03 / (disc + 0.03) + 0.03 / (disc - 0.03));
};

it('plots depth and blur from nothing, each to its own scale', () => {
  const sheet = drawEqualFraming(usual);
  const floors = paths(sheet, 'object').map((line) => line.at(-1)?.[1] ?? 0);
  for (const [role, value, i] of [
    ['light', depth, 0],
    ['shade', blur, 1],
  ] as const) {
    const dots = discs(sheet, role, true);
    expect(dots).toHaveLength(5);
    const unit = ((floors[i] ?? 0) - (dots[4]?.y ?? 0)) / value(200);
    dots.forEach(({ y }, j) =>
      expect(((floors[i] ?? 0) - y) / unit).toBeCloseTo(value(lengths[j] ?? 0), 4),
    );
  }
});

it('shows depth nearly constant and blur growing', () => {
  const sheet = drawEqualFraming(usual);
  const near = discs(sheet, 'light', true).map(({ y }) => y);
  expect(Math.max(...near) - Math.min(...near)).toBeLessThan(2);
  const far = discs(sheet, 'shade', true).map(({ y }) => y);
  expect((far[0] ?? 0) - (far[4] ?? 0)).toBeGreaterThan(30);
  // 50 to 135 mm raises 0.268 to 0.404 mm.
  expect(sheet.table.rows.map((row) => row[3])).toEqual([
    '0.218 mm',
    '0.268 mm',
    '0.344 mm',
    '0.404 mm',
    '0.448 mm',
  ]);
});

it('is drawn whole for any legal values', () => {
  const size = (least: number, most: number): fc.Arbitrary<number> =>
    fc.double({ min: Math.log(least), max: Math.log(most), noNaN: true }).map(Math.exp);
  fc.assert(
    fc.property(
      fc.record({
        width: size(10, 300),
        H: size(0.01, 100),
        N: size(0.5, 256),
        b: fc.oneof(size(0.001, 1000), fc.constantFrom(0, Infinity)),
        c: size(0.001, 1),
        orientation: fc.constantFrom('portrait' as const, 'landscape' as const),
        system: fc.constantFrom('metric' as const, 'imperial' as const),
      }),
      ({ width, H, N, b, c, orientation, system }) => {
        const format = { width: mm(width), height: mm(width / 1.5) };
        const given = { format, orientation, H: m(H), N: fNumber(N), b: m(b), c: mm(c) };
        expect(faults(drawEqualFraming(given, { system }))).toEqual([]);
      },
    ),
  );
});

it('looks as it was last looked at', () => {
  expect(written(drawEqualFraming(usual))).toMatchSnapshot();
});
