import { describe, expect, it } from 'vitest';
import { draw, handles } from '~/drawing/feathering.ts';
import formula from '~/optics/light/feathering.ts';
import { handle, handlesOf, staysPut } from './handles.ts';
import { overlaps } from './overlaps.ts';
import { scaleOf, sheetOf, texts, paths } from './sheets.ts';

const degrees = Math.PI / 180;
const usual = {
  'beam-angle': '60deg',
  'near-distance': '1.2m',
  'far-distance': '1.6m',
  'angle-between': '20deg',
  aim: '25deg',
};

describe('the feathered beam', () => {
  it('puts both children where they are, seen from the light', () => {
    const { sheet } = sheetOf(formula, draw, usual);
    const scale = scaleOf(sheet);
    const ways = paths(sheet, 'dimension').filter((line) => line.length === 2);
    const lengths = ways.map(([a, b]) =>
      Number(
        (Math.hypot((b?.[0] ?? 0) - (a?.[0] ?? 0), (b?.[1] ?? 0) - (a?.[1] ?? 0)) / scale).toFixed(
          2,
        ),
      ),
    );
    expect(lengths).toEqual(expect.arrayContaining([1.2, 1.6]));
    const far = ways[lengths.indexOf(1.6)] ?? [];
    const rise =
      ((far[0]?.[1] ?? 0) - (far[1]?.[1] ?? 0)) / ((far[1]?.[0] ?? 0) - (far[0]?.[0] ?? 0));
    expect(Math.abs(Math.atan(rise)) / degrees).toBeCloseTo(20, 1);
  });

  it('gives both the same at the turn it names', () => {
    // 28.7 degrees is the even turn to a tenth; there the two differ by less than 0.02 stop.
    const { sheet } = sheetOf(formula, draw, { ...usual, aim: '28.7deg' });
    const at = sheet.marks.findIndex((mark) => mark.kind === 'text' && mark.text === 'after');
    const [near, far] = sheet.marks
      .slice(at + 1, at + 3)
      .map((mark) => (mark.kind === 'text' ? Number(mark.text.replace('−', '-')) : Number.NaN));
    expect(Math.abs((near ?? 0) - (far ?? 9))).toBeLessThan(0.02);
    expect(texts(sheet)).toContain('even at 28.7°');
  });

  it('says what each child gets before and after', () => {
    const { sheet } = sheetOf(formula, draw, usual);
    // n = 4.82: the near child 25° off the axis gets 4.82 log2 cos 25° = −0.68 stops.
    expect(texts(sheet)).toContain('near 1.20 m: −0.68');
    // Before: 4.82 log2 cos 20° − 2 log2(1.6/1.2) = −0.432 − 0.830.
    expect(sheet.table.rows[0]).toEqual(['before the turn', '0.00 stops', '−1.26 stops']);
  });

  it('keeps its words apart', () => {
    for (const near of ['0.3m', '1.2m', '5m'])
      for (const far of ['0.4m', '1.6m', '8m'])
        for (const between of ['2deg', '20deg', '80deg'])
          for (const aim of ['-30deg', '0deg', '25deg', '60deg'])
            expect(
              overlaps(
                sheetOf(formula, draw, {
                  'near-distance': near,
                  'far-distance': far,
                  'angle-between': between,
                  aim,
                }).sheet,
              ),
              [near, far, between, aim].join(' '),
            ).toEqual([]);
  });
});

describe('its handles', () => {
  it('stay put where they are', () => {
    staysPut(formula, draw, handles, usual);
    // On whole centimetres and half degrees a place is met again to the sheet’s own hundredth.
    const all = handlesOf(formula, handles, {
      'angle-between': '55deg',
      'far-distance': '2.4m',
      aim: '-12.5deg',
    });
    const far = handle(all, 'far-plan');
    const set = far.set(far.x, far.y);
    expect(set['far']).toBeCloseTo(2.4, 9);
    expect(Number(set['between']) / degrees).toBeCloseTo(55, 9);
    const aim = handle(all, 'aim-plan');
    expect(Number(aim.set(aim.x, aim.y)['aim']) / degrees).toBeCloseTo(-12.5, 9);
  });

  it('turn the axis towards where the ring is put', () => {
    const all = handlesOf(formula, handles, usual);
    const [near, far, aim] = ['near-plan', 'far-plan', 'aim-plan'].map((id) => handle(all, id));
    if (!near || !far || !aim) throw new Error('Three handles were asked for.');
    expect(Number(aim.set(far.x, far.y)['aim']) / degrees).toBeCloseTo(20, 9);
    expect(aim.set(near.x, near.y)).toEqual({ aim: 0 });
    expect(near.set(near.x - 0.2 * near.scale, 0)).toEqual({ near: 1 });
  });
});
