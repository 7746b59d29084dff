import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Box } from '~/drawing/clip.ts';
import { leader, placeLabels } from '~/drawing/scene/label.ts';

const frame: Box = [4, 4, 356, 200];
const lies = (inner: Box, outer: Box): boolean =>
  inner[0] >= outer[0] && inner[1] >= outer[1] && inner[2] <= outer[2] && inner[3] <= outer[3];
const meet = (a: Box, b: Box): boolean => a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3];

it('stands where it was asked to, if that is free', () => {
  const [one] = placeLabels([{ text: 'key', at: [100, 100], clear: 10, side: 'left' }], [], frame);
  // Three letters of 6.5 end 14 before the place.
  expect(one?.x).toBeCloseTo(100 - 14 - 19.5, 9);
  expect(one && leader(one)).toBeUndefined();
});

it('moves off a thing that is drawn there', () => {
  const thing: Box = [110, 80, 200, 120];
  const [one] = placeLabels(
    [{ text: 'key', at: [100, 100], clear: 8, side: 'right' }],
    [thing],
    frame,
  );
  expect(one && meet(one.box, thing)).toBe(false);
});

it('comes into the frame from wherever the thing is, and points no farther than its edge', () => {
  const [one] = placeLabels([{ text: 'background light', at: [900, -50] }], [], frame);
  expect(one && lies(one.box, frame)).toBe(true);
  expect(one?.at).toEqual([frame[2], frame[1]]);
  const taken: Box[] = [[frame[2] - 120, frame[1], frame[2], frame[1] + 60]];
  const [pushed] = placeLabels([{ text: 'background light', at: [900, -50] }], taken, frame);
  expect(pushed && leader(pushed)?.[0]).toEqual([frame[2], frame[1]]);
});

it('never lays one over another or outside, however many crowd one place', () => {
  const label = fc.record({
    text: fc.stringMatching(/^[a-z ]{2,18}$/),
    at: fc.tuple(
      fc.double({ min: -50, max: 400, noNaN: true }),
      fc.double({ min: -20, max: 230, noNaN: true }),
    ),
    clear: fc.double({ min: 0, max: 40, noNaN: true }),
  });
  fc.assert(
    fc.property(fc.array(label, { minLength: 1, maxLength: 12 }), (labels) => {
      const placed = placeLabels(labels, [[100, 60, 220, 140]], frame);
      expect(placed).toHaveLength(labels.length);
      placed.forEach((one, i) => {
        expect(lies(one.box, frame)).toBe(true);
        for (const other of placed.slice(i + 1)) expect(meet(one.box, other.box)).toBe(false);
      });
    }),
  );
});

it('crowds a dozen names round one point', () => {
  const labels = Array.from({ length: 14 }, (_, i) => ({
    text: `light ${'abcdefghijklmn'[i] ?? ''}`,
    at: [180, 100] as const,
    clear: 12,
  }));
  const placed = placeLabels(labels, [], frame);
  expect(placed).toHaveLength(14);
  placed.forEach((one, i) => {
    for (const other of placed.slice(i + 1)) expect(meet(one.box, other.box)).toBe(false);
  });
});
