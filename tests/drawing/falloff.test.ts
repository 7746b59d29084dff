import { describe, expect, it } from 'vitest';
import { draw, handles } from '~/drawing/falloff.ts';
import formula from '~/optics/light/falloff.ts';
import { handle, handlesOf, staysPut } from './handles.ts';
import { overlaps } from './overlaps.ts';
import { paths, scaleOf, sheetOf, texts } from './sheets.ts';

const usual = { near: '1.2m', far: '1.5m' };
const placed = {
  near: '',
  far: '',
  'light-place': '0.9m; -0.4m',
  'near-place': '0m; 0.8m',
  'far-place': '-0.6m; 1.4m',
};

describe('the fall-off plate', () => {
  it('runs each curve down to what its distance loses over the set', () => {
    const { sheet } = sheetOf(formula, draw, { near: '0.5m', far: '0.8m', 'wanted-stops': '0.5' });
    const near = paths(sheet, 'emphasis').find((line) => line.length === 33) ?? [];
    const even = paths(sheet, 'shade').find((line) => line.length === 33) ?? [];
    const fall = (line: readonly (readonly [number, number])[]): number =>
      (line.at(-1)?.[1] ?? 0) - (line[0]?.[1] ?? 0);
    // 2 log2(0.8/0.5) = 1.356 stops against the half stop that was wanted, on one scale of stops.
    expect(fall(near) / fall(even)).toBeCloseTo(1.35614 / 0.5, 2);
    // Halfway through the set: 2 log2(0.65/0.5) = 0.757 of those stops.
    const half = (near[16]?.[1] ?? 0) - (near[0]?.[1] ?? 0);
    expect(half / fall(near)).toBeCloseTo(0.75702 / 1.35614, 3);
    expect(texts(sheet)).toEqual(
      expect.arrayContaining(['0.50 m from the light: −1.36 stops', '1.59 m from it: −0.50 stops']),
    );
  });

  it('draws rings of equal exposure by the square root of two', () => {
    const { sheet } = sheetOf(formula, draw, placed);
    const scale = scaleOf(sheet);
    const bulb = sheet.marks.findIndex((mark) => mark.kind === 'text' && mark.text === 'light');
    expect(bulb).toBeGreaterThan(0);
    // Every piece of ring lies at 1, 1.414, 2 or 2.83 times 1.5 m: near is 0.9 m across and 1.2 m along from the light.
    const lines = paths(sheet, 'construction').filter(([a]) => (a?.[1] ?? 0) > 200);
    const [lx = 0, ly = 0] = lines[0]?.[0] ?? [];
    const steps = paths(sheet, 'light')
      .filter((line) => line.length > 3 && (line[0]?.[1] ?? 0) > 200)
      .map((line) => {
        const from = line.slice(1, -1).map(([x, y]) => Math.hypot(x - lx, y - ly) / scale);
        expect(Math.max(...from) - Math.min(...from)).toBeLessThan(0.01);
        return 2 * Math.log2((from[0] ?? 0) / 1.5);
      });
    expect(steps.length).toBeGreaterThan(2);
    for (const step of steps) expect(Math.abs(step - Math.round(step))).toBeLessThan(0.02);
    expect(new Set(steps.map(Math.round)).size).toBeGreaterThanOrEqual(3);
  });

  it('says so where the far point is the nearer one', () => {
    const { sheet } = sheetOf(formula, draw, { near: '3m', far: '1m' });
    expect(texts(sheet)).toContain('1.00 m from the light: −3.17 stops');
    expect(sheet.says).toContain('−3.17 stops');
  });

  it('keeps its words apart', () => {
    for (const near of ['0.01m', '0.3m', '1.2m', '5m', '300m'])
      for (const far of ['0.02m', '0.35m', '1.25m', '8m', '1000m'])
        for (const wanted of ['', '0.1', '2', '20'])
          expect(
            overlaps(sheetOf(formula, draw, { near, far, 'wanted-stops': wanted }).sheet),
            `${near} ${far} ${wanted}`,
          ).toEqual([]);
    expect(overlaps(sheetOf(formula, draw, placed).sheet)).toEqual([]);
  });
});

describe('its handles', () => {
  it('stay put where they are, by distance and by place', () => {
    staysPut(formula, draw, handles, usual);
    staysPut(formula, draw, handles, { near: '2m', far: '0.7m' });
    staysPut(formula, draw, handles, placed);
  });

  it('bring the light nearer to both points together', () => {
    const light = handle(handlesOf(formula, handles, usual), 'light-plan');
    expect(light.set(light.x + 0.3 * light.scale, light.y)).toEqual({ near: 0.9, far: 1.2 });
    expect(light.set(light.x + 1e6, light.y)).toEqual({ near: 0.01, far: 0.01 });
  });

  it('move one point alone', () => {
    const far = handle(handlesOf(formula, handles, usual), 'second-plan');
    expect(far.set(far.x + 0.25 * far.scale, 999)).toEqual({ far: 1.75 });
    expect(far.ways).toBe('across');
  });

  it('go anywhere once the plate goes by places: across, then along', () => {
    const first = handle(handlesOf(formula, handles, placed), 'first-plan');
    expect(first.ways).toBe('both');
    expect(first.set(first.x + 0.5 * first.scale, first.y + 0.25 * first.scale)).toEqual({
      first: [0.25, 1.3],
    });
  });
});
