import { describe, expect, it } from 'vitest';
import { compute } from '../../src/formula/compute.ts';
import { InputError } from '../../src/formula/errors.ts';
import { recordOf } from '../support/records.ts';

const perspective = recordOf('perspective');

describe('computing from complete values', () => {
  it('hands on no NaN: it names the formula, the result and what it was computed from', () => {
    // 0 + 0 over 0: a distance no reader can type, since it is out of range.
    const run = (): unknown => compute(perspective, { s: 0, depth: 0 });
    expect(run).toThrow('perspective gave no number for ratio from {"s":0,"depth":0}');
    expect(run).not.toThrow(InputError);
  });

  it('hands on infinity, and results that are not given', () => {
    expect(compute(perspective, { s: 0, depth: 1 })).toEqual({ ratio: Infinity });
  });
});
