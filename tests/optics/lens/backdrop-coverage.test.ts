import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { InputError } from '../../../src/formula/errors.ts';
import { compute } from '../../../src/formula/compute.ts';
import { complete } from '../../../src/formula/read.ts';
import record from '../../../src/optics/lens/backdrop-coverage.ts';
import size from '../../../src/optics/lens/frame-size.ts';
import { expectClose } from '../../support/close.ts';
import { givenFor, startsOf, without } from '../../support/records.ts';

const start = startsOf(record);
const at = (change: Record<string, unknown>): Record<string, number> => {
  // The offset follows the distance and the focal length, unless one of them is not what changed.
  return compute(record, complete(record, { ...without(start, 'o'), ...change })) as Record<
    string,
    number
  >;
};
const level = { aim: start['c'] };

/**
 * The same view by another route: a corner of the sensor is turned about the lens by a rotation matrix and its ray
 * followed to the backdrop's plane.
 */
const corner = (
  { c, aim, s, b, f }: Record<string, number>,
  w: number,
  h: number,
): { x: number; y: number } => {
  const [dx, dy] = [s ?? 0, (aim ?? 0) - (c ?? 0)];
  const slant = Math.hypot(dx, dy);
  const v = 1 / (1 / (f ?? 0) - 1 / slant);
  const [cos, sin] = [dx / slant, dy / slant];
  const [forward, up] = [cos * v - sin * h, sin * v + cos * h];
  const t = ((s ?? 0) + (b ?? 0)) / forward;
  return { x: w * t, y: (c ?? 0) + up * t };
};

describe('backdrop in view', () => {
  it('of no depth is the frame at the child', () => {
    const seen = compute(size, startsOf(size)) as Record<string, number>;
    const view = at({ ...level, b: 0 });
    expectClose(view['viewWidth'] ?? 0, seen['W'] ?? 1);
    expectClose(view['viewHeight'] ?? 0, seen['H'] ?? 1);
  });

  it('grows as (s + b)/s with a level camera, and needs less for a longer lens at one framing', () => {
    const view = at(level);
    const there = at({ ...level, b: 0 });
    expectClose((view['viewWidth'] ?? 0) / (there['viewWidth'] ?? 1), (2.21 + 1.5) / 2.21);
    const widths = [50, 85, 135].map(
      (f) => at({ ...level, f: f / 1000, s: (f / 1000) * 26 })['viewWidth'] ?? 0,
    );
    expect(widths).toEqual([...widths].sort((a, b) => b - a));
  });

  it('keeps the angle as focused on the child: 1.593 m, not the 1.616 m of a lens refocused on the backdrop', () => {
    const view = at({ orientation: 'landscape', ...level, s: 2.4 });
    // 36 mm × 3.9 m over v = 85·2400/2315 mm
    expectClose(view['viewWidth'] ?? 0, (0.036 * 3.9) / ((0.085 * 2.4) / 2.315));
    expect((view['viewWidth'] ?? 0).toFixed(3)).toBe('1.593');
    expect(((0.036 * (3.9 - 0.085)) / 0.085).toFixed(3)).toBe('1.616');
  });

  it('agrees with rays turned by a matrix, for any tilt', () => {
    fc.assert(
      fc.property(givenFor(record), (given) => {
        if (given['from'] !== 'lens' || given['aspect'] !== null) return;
        let view: Record<string, number>;
        try {
          view = compute(record, complete(record, given)) as Record<string, number>;
        } catch (error) {
          expect(error).toBeInstanceOf(InputError);
          return;
        }
        const { width, height } = given['format'] as { width: number; height: number };
        const [w, h] = given['orientation'] === 'portrait' ? [height, width] : [width, height];
        const numbers = given as Record<string, number>;
        const [top, bottom] = [corner(numbers, w / 2, h / 2), corner(numbers, w / 2, -h / 2)];
        expectClose(view['viewWidthTop'] ?? 0, 2 * top.x, 1e-9);
        expectClose(view['viewWidthBottom'] ?? 0, 2 * bottom.x, 1e-9);
        expectClose(view['upperEdge'] ?? 0, top.y, 1e-9, 1e-9);
        expectClose(view['lowerEdge'] ?? 0, bottom.y, 1e-9, 1e-9);
        expect(view['viewWidth']).toBe(
          Math.max(view['viewWidthTop'] ?? 0, view['viewWidthBottom'] ?? 0),
        );
      }),
    );
  });

  it('looking down is narrower at the top, looking up at the bottom, level alike', () => {
    const [down, up, straight] = [at({ c: 1, aim: 0.5 }), at({ c: 0.5, aim: 1 }), at(level)];
    expect(down['tilt']).toBeLessThan(0);
    expect(down['viewWidthTop']).toBeLessThan(down['viewWidthBottom'] ?? 0);
    expect(up['viewWidthTop']).toBeGreaterThan(up['viewWidthBottom'] ?? 0);
    expectClose(straight['viewWidthTop'] ?? 0, straight['viewWidthBottom'] ?? 1);
  });

  it('shows floor exactly when the lower edge lies below the backdrop’s foot', () => {
    fc.assert(
      fc.property(givenFor(record), (given) => {
        let view: Record<string, number>;
        try {
          view = compute(record, complete(record, given)) as Record<string, number>;
        } catch {
          return;
        }
        const lower = view['lowerEdge'] ?? 0;
        if (Math.abs(lower) < 1e-9) return;
        expect((view['floorLine'] ?? 0) > 0).toBe(lower < 0);
        const near =
          (given['s'] as number) -
          (given['from'] === 'sensor' ? (complete(record, given)['o'] as number) : 0);
        if (lower < 0 && (given['c'] as number) > 0)
          expect(view['floorDistance']).toBeLessThanOrEqual(near + (given['b'] as number) + 1e-9);
      }),
    );
  });

  it('meets the floor where a level camera’s lower ray does', () => {
    // Half of 36 mm upright over v, from a lens 0.5 m up: 0.5 m × v / 18 mm.
    const view = at({ c: 0.5, aim: 0.5 });
    const v = (0.085 * 2.21) / (2.21 - 0.085);
    expectClose(view['floorDistance'] ?? 0, (0.5 * v) / 0.018);
    // The foot is (s + b) away and 0.5 m down.
    expectClose(view['floorLine'] ?? 0, 0.5 - (0.5 * v) / 3.71 / 0.036);
  });

  it('puts the foot of the backdrop where a tilted camera sees it', () => {
    // 3-4-5: 1.5 m down over 2 m, the foot 2 m down over 2.5 m; v = 100 × 2500/2400 mm, 24 mm up.
    const view = at({
      orientation: 'landscape', f: 0.1, s: 2, b: 0.5, c: 2, aim: 0.5,
    }); // prettier-ignore
    const below = Math.atan(2 / 2.5) - Math.atan(1.5 / 2);
    expectClose(view['floorLine'] ?? 0, 0.5 - ((0.25 / 2.4) * Math.tan(below)) / 0.024);
    // The lower edge meets the floor at its own angle.
    const lower = Math.atan(1.5 / 2) + Math.atan(0.012 / (0.25 / 2.4));
    expectClose(view['floorDistance'] ?? 0, 2 / Math.tan(lower));
  });

  it('shows no floor to a camera craned up so far that the foot lies behind it', () => {
    // 10 up to 1 along, with a long lens: the foot, 3 m down and 0.5 m along, is behind the sensor’s plane.
    const view = at({ f: 0.2, s: 0.5, b: 0, c: 3, aim: 8 });
    expect(view['floorLine']).toBe(0);
    expect(view['floorDistance']).toBe(Infinity);
  });

  it('takes margin off both sides and the child’s offset off one', () => {
    const [plain, moved] = [
      at({ ...level, margin: 0, e: 0 }),
      at({ ...level, margin: 0.1, e: -0.2 }),
    ];
    expectClose((plain['spareSide'] ?? 0) - (moved['spareSide'] ?? 0), 0.1 + 0.2);
    expectClose((plain['spareTop'] ?? 0) - (moved['spareTop'] ?? 0), 0.1);
    expectClose((moved['neededWidth'] ?? 0) - (moved['viewWidth'] ?? 0), 0.2);
  });

  it('does not depend on the platform, which is only drawn', () => {
    expect(at({ platform: 0.4 })).toEqual(at({ platform: 0 }));
  });

  it('refuses a tilt whose edge never meets the backdrop, and an infinite subject', () => {
    expect(() => at({ f: 0.024, s: 0.5, c: 0, aim: 2 })).toThrow(/never meets the backdrop/);
    expect(() => at({ s: Infinity })).toThrow(/must be finite/);
  });
});
