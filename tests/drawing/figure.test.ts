import { describe, expect, it } from 'vitest';
import { CHILD, CHILD_SIDE, RABBIT, RABBIT_SIDE, figure } from '~/drawing/figure.ts';
import { pen } from '~/drawing/pen.ts';
import harbour from '../../shared/tables/harbour-set.json' with { type: 'json' };
import { corners, spread } from './sheets.ts';

const body = (id: string): number =>
  Number.parseFloat(harbour.bodies.find((one) => one.id === id)?.value ?? 'missing');

/** An outline's corners in metres over the seat. */
const shape = (outline: string): [number, number][] => {
  const on = pen({});
  figure(on, outline, (x, y) => [x * 1000, y * 1000]);
  const [mark] = on.marks;
  return mark?.kind === 'path' ? corners(mark).map(([x, y]) => [x / 1000, y / 1000]) : [];
};
const top = (points: [number, number][]): number => Math.max(...points.map(([, y]) => y));

describe('the child', () => {
  it('sits as high as the harbour set says, from the front and from the side', () => {
    expect(top(shape(CHILD))).toBeCloseTo(body('sitting-height'), 2);
    expect(top(shape(CHILD_SIDE))).toBeCloseTo(body('sitting-height'), 2);
    expect(Math.min(...shape(CHILD).map(([, y]) => y))).toBeCloseTo(0, 2);
  });

  it('has the table’s shoulders and head, to a centimetre and a half', () => {
    const band = (points: [number, number][], low: number, up: number): number =>
      spread(points.filter(([, y]) => y > low && y < up).map(([x]) => x));
    expect(Math.abs(band(shape(CHILD), 0.25, 0.3) - body('shoulder-width'))).toBeLessThan(0.015);
    expect(Math.abs(band(shape(CHILD_SIDE), 0.41, 0.48) - body('head-depth'))).toBeLessThan(0.015);
  });

  it('looks to the left, its eye over the plane in focus', () => {
    const level = shape(CHILD_SIDE).filter(
      ([, y]) => Math.abs(y - body('seated-eye-height')) < 0.012,
    );
    expect(Math.abs(Math.min(...level.map(([x]) => x)))).toBeLessThan(0.02);
  });
});

it('lets the rabbit sit as high, its ears over it', () => {
  expect(top(shape(RABBIT))).toBeGreaterThan(body('sitting-height'));
  expect(top(shape(RABBIT_SIDE))).toBeCloseTo(top(shape(RABBIT)), 1);
});

it('mirrors a front view about its middle', () => {
  const points = shape(CHILD);
  for (const [x, y] of points)
    expect(points.some(([u, v]) => Math.abs(u + x) < 1e-4 && Math.abs(v - y) < 1e-4)).toBe(true);
});
