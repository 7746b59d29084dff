import { describe, expect, it } from 'vitest';
import { draw, handles } from '~/drawing/rim-light.ts';
import formula from '~/optics/light/rim-light.ts';
import { handle, handlesOf, staysPut } from './handles.ts';
import { overlaps } from './overlaps.ts';
import { high, paths, scaleOf, sheetOf, texts, wide } from './sheets.ts';

const usual = {
  'light-behind': '1.2m',
  'light-aside': '-0.9m',
  'light-height': '0.9m',
  'beam-angle': '20deg',
  'set-depth': '1.6m',
  'camera-distance': '2.21m',
};

describe('the rim light’s set', () => {
  it('stands to scale: 1.2 m behind, 0.9 m aside and 0.9 m over the hair', () => {
    const { sheet } = sheetOf(formula, draw, usual);
    const scale = scaleOf(sheet);
    const uprights = paths(sheet, 'dimension').filter(
      (line) => line.length === 2 && wide(line) < 0.01 && high(line) > 40,
    );
    // A dimension in each view, and the stand: hair 0.66 m over the floor, the light 0.9 m over that.
    const lengths = uprights.map((line) => Number((high(line) / scale).toFixed(2)));
    expect(lengths.filter((length) => length === 0.9)).toHaveLength(2);
    expect(lengths).toContain(1.56);
    expect(texts(sheet)).toEqual(
      expect.arrayContaining(['0.90 m up', '0.90 m aside', '1.20 m behind', '2.21 m']),
    );
    const chain = paths(sheet, 'dimension').find(
      (line) => line.length === 2 && high(line) === 0 && wide(line) / scale > 3,
    );
    expect(wide(chain ?? []) / scale).toBeCloseTo(2.21 + 1.2, 3);
  });

  it('opens the beam by 10 degrees each way about the line to the hair', () => {
    const { sheet } = sheetOf(formula, draw, {
      ...usual,
      'light-aside': '0m',
      'light-height': '0m',
      'light-behind': '2m',
    });
    // Level and straight behind, the cone has its true angle in both views; the floor cuts its lower edge.
    const beams = paths(sheet, 'light', true).slice(0, 2);
    for (const beam of beams) {
      const xs = beam.map(([x]) => x);
      const front = beam.filter(([x]) => x === Math.max(...xs)).map(([, y]) => y);
      const middle = (Math.max(...front) + Math.min(...front)) / 2;
      const top = Math.min(...beam.map(([, y]) => y));
      expect((middle - top) / wide(beam)).toBeCloseTo(Math.tan((10 * Math.PI) / 180), 3);
    }
  });

  it('fills the edges the beam reaches, and draws the line into the lens', () => {
    const grid = sheetOf(formula, draw, usual).sheet;
    expect(texts(grid)).toEqual(expect.arrayContaining(['back not lit', 'front not lit']));
    expect(paths(grid, 'emphasis')).toEqual([]);
    const straight = sheetOf(formula, draw, {
      ...usual,
      'light-behind': '2.4m',
      'light-aside': '0.3m',
      'light-height': '0.1m',
    }).sheet;
    expect(texts(straight)).toEqual(
      expect.arrayContaining([
        'back lit',
        'front lit',
        'strikes the lens',
        'rim light, in the picture',
      ]),
    );
    const rays = paths(straight, 'emphasis');
    expect(rays).toHaveLength(2);
    // From above: 2.21 + 2.40 m along and 0.30 m across.
    expect(wide(rays[1] ?? []) / scaleOf(straight)).toBeCloseTo(4.61, 2);
    expect(high(rays[1] ?? []) / scaleOf(straight)).toBeCloseTo(0.3, 2);
  });

  it('compares with a bare standard reflector unless it is one', () => {
    expect(texts(sheetOf(formula, draw, usual).sheet)).toContain('reflector 70°');
    expect(texts(sheetOf(formula, draw, { ...usual, 'beam-angle': '70deg' }).sheet)).not.toContain(
      'reflector 70°',
    );
  });

  it.each(['0.2m', '0.9m', '2.5m'])('keeps its words apart, the light %s aside', (aside) => {
    for (const behind of ['-0.5m', '0.2m', '1.2m', '3m', '10m'])
      for (const height of ['-1m', '0m', '0.9m', '2.5m'])
        for (const angle of ['10deg', '20deg', '70deg']) {
          const typed = {
            'light-aside': aside,
            'light-behind': behind,
            'light-height': height,
            'beam-angle': angle,
          };
          expect(overlaps(sheetOf(formula, draw, typed).sheet), JSON.stringify(typed)).toEqual([]);
        }
  });
});

describe('its handles', () => {
  it('stay put where they are', () => {
    staysPut(formula, draw, handles, usual);
    staysPut(formula, draw, handles, {
      'light-behind': '-0.35m',
      'light-aside': '2.5m',
      'light-height': '-0.2m',
    });
  });

  it('set behind and aside from above, and height from the side', () => {
    const all = handlesOf(formula, handles, usual);
    const over = handle(all, 'light-plan');
    expect(over.set(over.x + 0.3 * over.scale, over.y - 0.2 * over.scale)).toEqual({
      behind: 1.5,
      aside: -1.1,
    });
    const side = handle(all, 'light-side');
    expect(side.set(side.x, side.y - 0.25 * side.scale)).toEqual({ behind: 1.2, height: 1.15 });
    const camera = handle(all, 'camera-plan');
    expect(camera.set(camera.x - 0.29 * camera.scale, 0)).toEqual({ D: 2.5 });
    expect(camera.ways).toBe('across');
  });

  it('stop at what the field allows', () => {
    const over = handle(handlesOf(formula, handles, usual), 'light-plan');
    expect(over.set(over.x + 1e5, over.y - 1e5)).toEqual({ behind: 20, aside: -20 });
  });

  it('are named for those who do not see them', () => {
    const all = handlesOf(formula, handles, usual);
    expect(handle(all, 'light-plan').name).toBe('rim light, from above');
    expect(handle(all, 'light-plan').says).toBe('1.20 m behind the child, 0.90 m to camera-left');
  });
});
