import { expect } from 'vitest';

/** Holds a number to another within a share of the larger; says both and the room they missed by. */
export const expectClose = (ours: number, wanted: number, relative = 1e-12, absolute = 0): void => {
  const room = Math.max(absolute, relative * Math.max(Math.abs(ours), Math.abs(wanted)));
  expect(
    ours === wanted || Math.abs(ours - wanted) <= room,
    `${ours} should be ${wanted} within ${room}; it is off by ${ours - wanted}`,
  ).toBe(true);
};
