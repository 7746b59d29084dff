import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { viewsFor, type Space } from '~/drawing/scene/views.ts';

const space: Space = { columns: [4, 356], side: [6, 160], plan: [172, 382] };
const harbour = { behind: [-2.4, 1.5], aside: [-1, 1], height: [0, 1.7] } as const;

describe('plan and side view', () => {
  it('share their scale, and stand under one another', () => {
    const { plan, side } = viewsFor(harbour, space);
    expect(plan?.scale).toBe(side?.scale);
    for (const behind of [-2.4, 0, 1.1]) {
      const place = { aside: 0.4, behind, height: 0.8 };
      expect(plan?.at(place)[0]).toBe(side?.at(place)[0]);
    }
  });

  it('draws a metre as a metre each way', () => {
    const { plan, side, scale } = viewsFor(harbour, space);
    const [x0 = 0, y0 = 0] = plan?.at({ aside: 0, behind: 0, height: 0 }) ?? [];
    const [x1 = 0, y1 = 0] = plan?.at({ aside: 1, behind: 1, height: 0 }) ?? [];
    expect(x1 - x0).toBeCloseTo(scale, 1);
    // Camera-right is down the plan: the camera looks to the right of the sheet.
    expect(y1 - y0).toBeCloseTo(scale, 1);
    const [, floor = 0] = side?.at({ aside: 0, behind: 0, height: 0 }) ?? [];
    expect(floor).toBe(160);
    expect(floor - (side?.at({ aside: 0, behind: 0, height: 1 })[1] ?? 0)).toBeCloseTo(scale, 1);
  });

  it('holds all it has to, and reads a place back from the sheet', () => {
    const length = fc.double({ min: 0.05, max: 200, noNaN: true });
    fc.assert(
      fc.property(length, length, length, length, (near, far, half, tall) => {
        const { plan, side } = viewsFor(
          { behind: [-near, far], aside: [-half, half], height: [0, tall] },
          space,
        );
        if (!plan || !side) throw new Error('Two views were asked for.');
        for (const behind of [-near, far])
          for (const view of [plan, side]) {
            const place = { aside: half, behind, height: tall };
            const [x, y] = view.at(place);
            const [left, top, right, bottom] = view.box;
            expect(x >= left && x <= right && y >= top && y <= bottom).toBe(true);
            const [p, q] = view.off(x, y);
            expect(Math.abs(p - behind)).toBeLessThan(0.006 / view.scale + 1e-9);
            expect(Math.abs(q - (view.name === 'plan' ? half : tall))).toBeLessThan(
              0.006 / view.scale + 1e-9,
            );
          }
      }),
    );
  });

  it('keeps the paper still while a thing moves within it', () => {
    const at = (far: number) => viewsFor({ ...harbour, behind: [-2.4, far] }, space);
    const child = { aside: 0, behind: 0, height: 0 };
    const places = [0.9, 1, 1.1, 1.2, 1.3].map((far) => at(far).plan?.at(child));
    for (const place of places) expect(place).toEqual(places[0]);
  });

  it('lifts the floor where something lies under it', () => {
    const { side } = viewsFor({ ...harbour, height: [-1, 1] }, space);
    expect(side?.at({ aside: 0, behind: 0, height: -1 })[1]).toBeLessThanOrEqual(160);
  });
});
