import { describe, expect, it } from 'vitest';
import { m } from '../../src/formula/quantities.ts';
import { defineFormula, type Given } from '../../src/formula/record.ts';
import { evaluateText } from '../../src/formula/evaluate.ts';
import { solveFor } from '../../src/formula/solve.ts';
import { expectClose } from '../support/close.ts';

/** A formula with a valley, so that one result has two causes: y = (x − 3)² + 1, and none below 1. */
const valley = defineFormula({
  id: 'valley',
  title: 'Valley',
  tex: 'y',
  spoken: 'y',
  inputs: { x: { name: 'place', tex: 'x', unit: 'm', range: [0.1, 10], start: 2, means: 'where' } },
  outputs: { y: { name: 'level', tex: 'y', unit: 'm', digits: 3 } },
  compute: ({ x }) => ({ y: m((x - 3) ** 2 + 1) }),
  worked: { tex: 'y', values: () => ({}) },
  model: 'none',
  breaks: 'nowhere',
  sources: [],
});

describe('the general solver', () => {
  it('finds every root, in order', () => {
    const roots = solveFor(valley, {}, 'x', { key: 'y', value: 2 });
    expect(roots).toHaveLength(2);
    expectClose(roots[0] ?? 0, 2, 1e-9);
    expectClose(roots[1] ?? 0, 4, 1e-9);
  });

  it('prints them all as roots, with the first as the result', () => {
    const { roots, results } = evaluateText(valley, [
      ['place', '?'],
      ['level', '2 m'],
    ]);
    expect(roots?.map(({ text }) => text)).toEqual(['2.000 m', '4.000 m']);
    expect(results['place']?.text).toBe('2.000 m');
  });

  it('finds a result of exactly nought, and takes a jump across it for no root', () => {
    const level = { ...valley, compute: ({ x }: Given) => ({ y: Math.log2(x as number) / 3 }) };
    expectClose(solveFor(level, {}, 'x', { key: 'y', value: 0 })[0] ?? 0, 1, 1e-9);
    const jump = { ...valley, compute: ({ x }: Given) => ({ y: (x as number) < 3.3 ? -1 : 1 }) };
    expect(() => solveFor(jump, {}, 'x', { key: 'y', value: 0 })).toThrow(/No place gives level/);
  });

  it('says what can be reached when nothing fits', () => {
    expect(() => solveFor(valley, {}, 'x', { key: 'y', value: 0.5 })).toThrow(
      /No place gives level 0.5 m: between 1.00 m and 50.0 m/,
    );
  });
});
