import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compute } from '../../../src/formula/compute.ts';
import { complete } from '../../../src/formula/read.ts';
import type { Given } from '../../../src/formula/record.ts';
import framing from '../../../src/optics/lens/framing-distance.ts';
import size from '../../../src/optics/lens/frame-size.ts';
import { expectClose } from '../../support/close.ts';
import { givenFor, startsOf, without } from '../../support/records.ts';

describe('framing distance and frame size', () => {
  it('undo each other, at any crop and either way up', () => {
    fc.assert(
      fc.property(givenFor(framing), (given) => {
        const placed = compute(framing, complete(framing, given));
        const seen = compute(size, complete(size, { ...without(given, 'H'), s: placed['s'] }));
        expectClose(seen['H'] as number, given['H'] as number, 1e-9);
        expectClose(seen['W'] as number, placed['W'] as number, 1e-9);
      }),
    );
  });

  it('needs twice the distance, less one focal length, for twice the frame', () => {
    const start = startsOf(framing);
    const [one, two] = [start, { ...start, H: 2 * (start['H'] as number) } as Given].map(
      (given) => compute(framing, given)['s'] as number,
    );
    expectClose((two ?? 0) - (one ?? 0), (one ?? 0) - (start['f'] as number));
  });

  it('moves back in proportion to the focal length at one framing', () => {
    const start = startsOf(framing);
    const double = compute(framing, { ...start, f: 2 * (start['f'] as number) });
    expectClose(double['s'] as number, 2 * (compute(framing, start)['s'] as number));
  });

  it('costs an upright 3:2 file a sixth of its height in a 4:5 print, so the camera steps back', () => {
    const start = startsOf(framing);
    const cropped = compute(framing, { ...start, aspect: { short: 4, long: 5 } });
    // m falls from 36/900 to 30/900.
    expectClose(cropped['m'] as number, 30 / 900);
    expectClose(1 - 30 / 36, 0.1667, 1e-3);
    expect(cropped['s'] as number).toBeGreaterThan(compute(framing, start)['s'] as number);
  });
});
