import { describe, expect, it } from 'vitest';
import { draw } from '~/drawing/depth-of-field.ts';
import { threeStops } from '~/drawing/stops.ts';
import { fNumber } from '~/formula/quantities.ts';
import { compute } from '~/formula/compute.ts';
import { showResult } from '~/formula/show.ts';
import formula from '~/optics/aperture/depth-of-field.ts';
import { paths, sheetOf, texts, valuesOf, wide } from './sheets.ts';
import type { Sheet } from '~/drawing/sheet.ts';

/** Units a metre of the nth scale bar, from the bar and what is written beside it alone. */
const bars = (sheet: Sheet): number[] =>
  paths(sheet, 'dimension')
    .filter((line) => line.length === 4)
    .map((line) => {
      const end = line[2]?.[0] ?? 0;
      const label = sheet.marks.find(
        (mark) => mark.kind === 'text' && mark.x === end + 6 && mark.y === (line[2]?.[1] ?? 0) + 2,
      );
      const [, number, unit] =
        /^(\d+) (m|cm|mm)$/.exec(label?.kind === 'text' ? label.text : '') ?? [];
      return (end - 8) / (Number(number) * { m: 1, cm: 0.01, mm: 0.001 }[unit as 'm']);
    });

it('takes the neighbours a stop away from the marks, or exactly where there is no mark', () => {
  expect(threeStops(fNumber(4))).toEqual([2.8, 4, 5.6]);
  expect(threeStops(fNumber(6.3))).toEqual([4.5, 6.3, 9]);
  const [wider, , narrower] = threeStops(fNumber(4.3));
  expect(narrower / wider).toBeCloseTo(2, 9);
});

describe('85 mm at 2.21 m, circle 0.030 mm', () => {
  const { sheet, results } = sheetOf(formula, draw, { circle: '0.030mm' });
  const [scale = 0] = bars(sheet);
  const bands = paths(sheet, 'light', true);
  // m D = 0.04 × 85/N mm; ahead and behind are 2.21 c/(m D ± c).
  const limits = [2.8, 4, 5.6].map((N) => {
    const disc = (0.04 * 85) / N;
    return [(2.21 * 0.03) / (disc + 0.03), (2.21 * 0.03) / (disc - 0.03)] as const;
  });

  it('draws three strips as deep as three apertures make them, to one scale', () => {
    limits.forEach(([ahead, behind], i) =>
      expect(wide(bands[i] ?? []) / scale).toBeCloseTo(ahead + behind, 6),
    );
  });

  it('puts the plane in focus between the limits', () => {
    const planes = paths(sheet, 'frame').slice(0, 3);
    limits.forEach(([ahead], i) => {
      const near = Math.min(...(bands[i] ?? []).map(([x]) => x));
      expect(((planes[i]?.[0]?.[0] ?? 0) - near) / scale).toBeCloseTo(ahead, 6);
    });
  });

  it('seats the child to the same scale with its eye in the plane, solid only where sharp', () => {
    const pale = paths(sheet, 'shade', true);
    const dark = paths(sheet, 'figure', true);
    expect(pale).toHaveLength(3);
    const [whole = []] = pale;
    // Toes 24 cm ahead, back 20 cm behind.
    expect(wide(whole) / scale).toBeCloseTo(0.44, 1);
    limits.forEach(([ahead, behind], i) => {
      const band = bands[i] ?? [];
      const [left, right] = [Math.min(...band.map(([x]) => x)), Math.max(...band.map(([x]) => x))];
      for (const [x] of dark[i] ?? []) {
        expect(x).toBeGreaterThanOrEqual(left - 1e-6);
        expect(x).toBeLessThanOrEqual(right + 1e-6);
      }
      expect(wide(dark[i] ?? []) / scale).toBeLessThanOrEqual(ahead + behind + 1e-6);
    });
  });

  it('writes what is sharp ahead of the eye, behind it and in all', () => {
    for (const key of ['near', 'far', 'inFront', 'behind'] as const)
      expect(texts(sheet)).toContain(showResult(formula.outputs[key], results[key]));
    expect(texts(sheet)).toContain(`${showResult(formula.outputs.total, results['total'])} in all`);
    const wider = compute(formula, { ...valuesOf(formula, { circle: '0.030mm' }), N: 2.8 });
    expect(texts(sheet)).toContain(showResult(formula.outputs.inFront, wider['inFront']));
  });

  it('shows the whole way from the lens to its own scale', () => {
    const scaleOfRow = bars(sheet)[1] ?? 0;
    const row = bands.at(-1) ?? [];
    const [near, far] = [Math.min(...row.map(([x]) => x)), Math.max(...row.map(([x]) => x))];
    expect((near - 32) / scaleOfRow).toBeCloseTo(2.1347, 4);
    expect((far - 32) / scaleOfRow).toBeCloseTo(2.2909, 4);
  });
});

it('lets an endless far limit run off the sheet in an arrow', () => {
  const { sheet } = sheetOf(formula, draw, { 'f-number': 'f/16', 'focal-length': '24mm' });
  expect(texts(sheet).filter((text) => text === '∞').length).toBeGreaterThanOrEqual(2);
  const arrows = paths(sheet, 'light').filter((line) => line.length === 3);
  expect(arrows.length).toBeGreaterThanOrEqual(2);
});

it('focused at infinity, draws the near limit of all three apertures and no child', () => {
  const { sheet } = sheetOf(formula, draw, { 'subject-distance': 'infinity', circle: '0.030mm' });
  expect(paths(sheet, 'shade', true)).toEqual([]);
  const bands = paths(sheet, 'light', true);
  expect(bands).toHaveLength(3);
  bars(sheet).forEach((scale, i) => {
    const near = Math.min(...(bands[i] ?? []).map(([x]) => x));
    expect((near - 32) / scale).toBeCloseTo(85 ** 2 / ([2.8, 4, 5.6][i] ?? 0) / 0.03 / 1000, 5);
  });
});
