import { describe, expect, it } from 'vitest';
import { axesIn, contour, exponent, outline, pointAt, reachOf } from '~/drawing/scene/beam.ts';
import type { Light, Place } from '~/drawing/scene/scene.ts';
import { viewsFor } from '~/drawing/scene/views.ts';

const degrees = Math.PI / 180;
const { plan, side } = viewsFor(
  { behind: [-2, 2], aside: [-1, 1], height: [0, 2] },
  { columns: [0, 400], side: [0, 200], plan: [200, 400] },
);
if (!plan || !side) throw new Error('Two views were asked for.');
const at = (aside: number, behind: number, height: number): Place => ({ aside, behind, height });
const light = (width: number): Light => ({
  name: 'light',
  source: 'grid',
  at: at(0, 0, 1),
  aim: at(0, 1, 1),
  width,
  beams: [],
});

describe('a beam', () => {
  it('is at one half at its edge: 60 degrees have the exponent 4.82', () => {
    expect(exponent(60 * degrees)).toBeCloseTo(4.82, 2);
    expect(Math.cos(30 * degrees) ** exponent(60 * degrees)).toBeCloseTo(0.5, 12);
    expect(exponent(2 * Math.PI)).toBe(0);
  });

  it('loses two stops where it is twice as far, one at 1.414', () => {
    expect(reachOf(2, 1, 0, 4.82)).toBeCloseTo(2, 12);
    expect(reachOf(1, 1.2, 0, 4.82)).toBeCloseTo(1.2 * Math.SQRT2, 12);
  });

  it('has its equal exposure nearer at the edge, by one stop there', () => {
    const axes = axesIn(plan, at(0, 0, 1), at(0, 1, 1));
    const line = contour(axes, 60 * degrees, 1, 1);
    const distances = line.map(([p, q]) => Math.hypot(p, q));
    // On the axis one stop is 1.414 m; at the edge the beam has lost that stop already.
    expect(distances[12]).toBeCloseTo(Math.SQRT2, 9);
    expect(distances[0]).toBeCloseTo(1, 9);
    expect(distances.at(-1)).toBeCloseTo(1, 9);
  });

  it('is never narrower than the opening it comes from', () => {
    const axes = axesIn(plan, at(0, 0, 1), at(0, 1, 1));
    const drawn = outline(axes, light(0.18), 20 * degrees, 2);
    // 2 · 2 m · tan 10° across at its end, and 0.18 m wide until 0.09 m / tan 10° = 0.510 m.
    expect(drawn[2]?.[1]).toBeCloseTo(-0.35265, 4);
    expect(drawn[1]?.[0]).toBeCloseTo(0.5104, 3);
    expect(drawn[1]?.[1]).toBeCloseTo(-0.09, 9);
    expect(outline(axes, light(1), 20 * degrees, 2)[2]?.[1]).toBeCloseTo(-0.5, 9);
  });

  it('is foreshortened along its axis and not across it', () => {
    // Three along and four up: from above the axis is 0.6 as long.
    const axes = axesIn(plan, at(0, 0, 0), at(0, 3, 4));
    expect(axes.along).toEqual([0.6, 0]);
    expect(axes.across.map(Math.abs)).toEqual([0, 1]);
    expect(pointAt(axes, 5, 0)[0]).toBeCloseTo(3, 12);
    const level = axesIn(side, at(0, 0, 0), at(0, 3, 4));
    expect(level.along).toEqual([0.6, 0.8]);
  });

  it('seen along its axis is as wide as it is', () => {
    const axes = axesIn(plan, at(0.2, 0.3, 2), at(0.2, 0.3, 0));
    expect(axes.along.map(Math.abs)).toEqual([0, 0]);
    expect(pointAt(axes, 5, 0.4)).toEqual([0.3, 0.6000000000000001]);
  });
});
