import fc from 'fast-check';
import { describe, it } from 'vitest';
import { compute } from '../../../src/formula/compute.ts';
import { complete } from '../../../src/formula/read.ts';
import { exactOf } from '../../../src/optics/aperture/marks.ts';
import record from '../../../src/optics/lens/equivalence.ts';
import { angleOfView } from '../../../src/optics/lens/angle-of-view.ts';
import { framed } from '../../../src/optics/lens/frame.ts';
import type { Length } from '../../../src/formula/quantities.ts';
import { expectClose } from '../../support/close.ts';
import { givenFor } from '../../support/records.ts';

type Sized = Parameters<typeof record.compute>[0];

describe('equivalents between formats', () => {
  it('see the same diagonal angle, by the angle-of-view formula', () => {
    fc.assert(
      fc.property(givenFor(record), (given) => {
        const { format, to, aspect, f } = complete(record, given) as unknown as Sized;
        const result = compute(record, complete(record, given));
        const diagonalOf = (size: typeof format): Length => {
          const { across, up } = framed({ format: size, orientation: 'landscape', aspect });
          return Math.sqrt(across ** 2 + up ** 2) as Length;
        };
        expectClose(
          angleOfView({ d: diagonalOf(format), v: f ?? (0 as Length) }),
          angleOfView({ d: diagonalOf(to), v: result['fEquivalent'] as Length }),
          1e-12,
        );
      }),
    );
  });

  it('come back to themselves when translated there and back', () => {
    fc.assert(
      fc.property(givenFor(record), (given) => {
        const there = compute(record, complete(record, { ...given, marks: 'typed' }));
        const back = compute(
          record,
          complete(record, {
            ...given,
            marks: 'typed',
            format: given['to'],
            to: given['format'],
            f: there['fEquivalent'],
            N: there['NEquivalent'],
          }),
        );
        expectClose(back['fEquivalent'] as number, given['f'] as number, 1e-12);
        expectClose(back['NEquivalent'] as number, given['N'] as number, 1e-12);
      }),
    );
  });

  it('agree by diagonal and by width once both are cropped to one shape', () => {
    fc.assert(
      fc.property(givenFor(record), (given) => {
        const result = compute(
          record,
          complete(record, { ...given, aspect: { short: 4, long: 5 } }),
        );
        expectClose(result['fEquivalent'] as number, result['fByWidth'] as number, 1e-12);
      }),
    );
  });

  it.each([
    [5.6, 2 ** 2.5],
    [11, 2 ** 3.5],
    [1.2, 2 ** (2 / 6)],
    [3.5, 2 ** (11 / 6)],
    [22, 2 ** 4.5],
    [4, 4],
    [5.7, 2 ** 2.5], // the nearest mark
  ])('takes the mark f/%d as %d when marks are exact', (mark, exact) => {
    expectClose(exactOf(mark), exact);
  });
});
