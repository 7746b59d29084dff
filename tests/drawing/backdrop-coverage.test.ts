import { describe, expect, it } from 'vitest';
import { draw } from '~/drawing/backdrop-coverage.ts';
import { showResult } from '~/formula/show.ts';
import formula from '~/optics/lens/backdrop-coverage.ts';
import { high, paths, scaleOf, sheetOf, texts, wide } from './sheets.ts';

const strokes = (sheet: Parameters<typeof paths>[0]): [number, number][][] =>
  sheet.marks.flatMap((mark) =>
    mark.kind === 'path' && mark.role === 'light' && mark.d.includes('H')
      ? [...mark.d.matchAll(/M([\d.]+) ([\d.]+)H([\d.]+)/g)].map(
          ([, x, y, to]): [number, number][] => [
            [Number(x), Number(y)],
            [Number(to), Number(y)],
          ],
        )
      : [],
  );

describe('level', () => {
  // v = 85 × 1.04 = 88.4 mm; at 3.71 m the frame of 24 × 36 is 24/88.4 × 3.71 = 1.00724 m by 1.51086 m.
  const { sheet, results } = sheetOf(formula, draw);
  const scale = scaleOf(sheet);

  it('opens the fan from above to the width in view', () => {
    const [, plan = []] = paths(sheet, 'light', true);
    expect(high(plan) / scale).toBeCloseTo((24 / 88.4) * 3.71, 6);
    expect(wide(plan) / scale).toBeCloseTo(3.71, 6);
  });

  it('cuts the fan at the floor in the side view, to the same scale', () => {
    const [side = []] = paths(sheet, 'light', true);
    // From the floor to 0.61 + 0.75543 m.
    expect(high(side) / scale).toBeCloseTo(0.61 + (18 / 88.4) * 3.71, 6);
    expect(wide(side) / scale).toBeCloseTo(3.71, 6);
  });

  it('hangs the backdrop in its own size in both views', () => {
    const sizes = paths(sheet, 'object')
      .slice(0, 2)
      .map((line) => high(line) / scale);
    expect(sizes[0]).toBeCloseTo(2.4, 6);
    expect(sizes[1]).toBeCloseTo(2.7, 6);
  });

  it('writes the results as they are rounded', () => {
    for (const key of ['viewWidth', 'viewHeight', 'floorLine'] as const)
      expect(texts(sheet).join('\n')).toContain(showResult(formula.outputs[key], results[key]));
    expect(texts(sheet)).toEqual(
      expect.arrayContaining(['0.75 m spare', '2.21 m', '1.50 m', '0.61 m']),
    );
  });

  it('shows the floor in the frame up to the backdrop’s foot', () => {
    const floor =
      paths(sheet, 'ground', true).find((area) => Math.abs(wide(area) - 96) < 1e-6) ?? [];
    const frame = paths(sheet, 'frame').at(-1) ?? [];
    // The foot lies 0.61 of 0.75543 m under the axis: (1 - 0.61/0.75543)/2 of the frame from below.
    expect(high(floor) / high(frame)).toBeCloseTo((1 - 0.61 / ((18 / 88.4) * 3.71)) / 2, 6);
  });

  it('hatches nothing while all is covered', () => expect(strokes(sheet)).toEqual([]));
});

it('hatches what a narrow backdrop leaves bare, and says how much is short', () => {
  const { sheet } = sheetOf(formula, draw, { 'backdrop-width': '0.8m', margin: '0m' });
  const frame = paths(sheet, 'frame').at(-1) ?? [];
  const bare = strokes(sheet);
  expect(bare.length).toBeGreaterThan(10);
  // 0.8 of 1.00724 m is covered: a strip of (1 - 0.8/1.00724)/2 of the width stays bare on each side.
  const strip = (1 - 0.8 / ((24 / 88.4) * 3.71)) / 2;
  // The strokes are written to two decimals of a unit.
  for (const stroke of bare) expect(wide(stroke) / wide(frame)).toBeCloseTo(strip, 3);
  expect(texts(sheet)).toContain('0.10 m short');
});

it('lets the backdrop’s edges converge once the camera tilts', () => {
  const level = sheetOf(formula, draw, { 'backdrop-width': '0.8m' }).sheet;
  const up = sheetOf(formula, draw, {
    'backdrop-width': '0.8m',
    'camera-height': '0.3m',
    'aim-height': '1.0m',
  }).sheet;
  const slant = (sheet: typeof level): number => {
    const [edge = []] = paths(sheet, 'object').slice(2);
    return wide(edge) / high(edge);
  };
  expect(slant(level)).toBeCloseTo(0, 6);
  // Verticals meet at f' = v/tan(tilt) above the middle; an edge at x leans by x of that.
  expect(slant(up)).toBeGreaterThan(0.01);
  expect(texts(up)).toContain('tilt 17.6°');
});

it('leaves out what is not given', () => {
  const { sheet } = sheetOf(formula, draw, {
    'camera-height': '',
    'aim-height': '',
    'backdrop-width': '',
    'backdrop-height': '',
  });
  expect(texts(sheet).some((text) => /spare|short|tilt/.test(text))).toBe(false);
  expect(paths(sheet, 'ground')).toEqual([]);
});

it('drops a sitter that a tilted camera has behind it', () => {
  const { sheet } = sheetOf(formula, draw, {
    'camera-height': '1m',
    'aim-height': '4m',
    'subject-distance': '0.5m',
    'platform-height': '0m',
    'focal-length': '200mm',
  });
  const frame = paths(sheet, 'frame').at(-1) ?? [];
  const inFrame = paths(sheet, 'figure', true).filter((area) =>
    area.every(([x]) => x >= (frame[0]?.[0] ?? 0)),
  );
  expect(inFrame).toEqual([]);
});
