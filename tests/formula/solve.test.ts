import { describe, expect, it } from 'vitest';
import { InputError } from '../../src/formula/errors.ts';
import { m } from '../../src/formula/quantities.ts';
import { defineFormula, type Formula, type QuantityInput } from '../../src/formula/record.ts';
import { evaluateText } from '../../src/formula/evaluate.ts';
import { solveFor } from '../../src/formula/solve.ts';
import { expectClose } from '../support/close.ts';
import { recordOf } from '../support/records.ts';

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

/** Another shape of the ground, over a range of its own. */
const ground = (
  level: (x: number) => number | undefined,
  range: readonly [number, number] = [0.1, 10],
  more: Partial<Formula> = {},
): Formula => ({
  ...valley,
  inputs: { x: { ...valley.inputs.x, range } satisfies QuantityInput },
  compute: ({ x }) => ({ y: level(x as number) }),
  ...more,
});
const roots = (formula: Formula, value: number): number[] =>
  solveFor(formula, {}, 'x', { key: 'y', value });

const expectRoots = (formula: Formula, value: number, wanted: readonly number[]): void => {
  const found = roots(formula, value);
  expect(found).toHaveLength(wanted.length);
  wanted.forEach((root, i) => {
    expectClose(found[i] ?? NaN, root, 1e-9);
  });
};

describe('the general solver', () => {
  it('finds every root, in order', () => {
    expectRoots(valley, 2, [2, 4]);
    // (x − 3)² = 2
    expectRoots(valley, 3, [3 - Math.SQRT2, 3 + Math.SQRT2]);
  });

  it('prints them all as roots, with the first as the result', () => {
    const { roots: all, results } = evaluateText(valley, [
      ['place', '?'],
      ['level', '2 m'],
    ]);
    expect(all?.map(({ text }) => text)).toEqual(['2.000 m', '4.000 m']);
    expect(results['place']?.text).toBe('2.000 m');
  });

  it('finds a result of exactly nought, met on the way or only to the last bit', () => {
    expectRoots(
      ground((x) => Math.log2(x) / 3),
      0,
      [1],
    );
    expectRoots(
      ground((x) => x * x - 2),
      0,
      [Math.SQRT2],
    );
  });

  it('finds roots of large results and of small ones', () => {
    expectRoots(
      ground((x) => 1e6 * x * x),
      2e6,
      [Math.SQRT2],
    );
    expectRoots(
      ground((x) => 1e-6 * x * x),
      2e-6,
      [Math.SQRT2],
    );
  });

  it('takes a jump across the wanted value for no root, however far it jumps', () => {
    for (const top of [1, 2e9])
      expect(() =>
        roots(
          ground((x) => (x < 3.3 ? -1 : top)),
          0,
        ),
      ).toThrow(/No place gives level/);
  });

  it('looks on both sides of nought, and across it', () => {
    const square = ground((x) => x * x, [-2, 5]);
    expectRoots(square, 1.3, [-Math.sqrt(1.3), Math.sqrt(1.3)]);
    expectRoots(
      ground((x) => 2 * x, [-2, 5]),
      0.002,
      [0.001],
    );
    expectRoots(
      ground((x) => x * x, [0, 5]),
      3,
      [Math.sqrt(3)],
    );
    const twice = (x: number): number => (x - 3) ** 2;
    for (const low of [0, -10]) expectRoots(ground(twice, [low, 10]), 1, [2, 4]);
  });

  it('walks a wide range in even ratios, so that near things are not stepped over', () => {
    // Both lie in the first hundred-millionth of the range.
    expectRoots(
      ground((x) => (x - 0.02) * (x - 0.05), [0.01, 1e7]),
      0,
      [0.02, 0.05],
    );
  });

  it('looks no farther than the range, both ends of it included', () => {
    // In binary 0.7 × (3/0.7) falls short of 3.
    const line = ground((x) => x, [0.7, 3]);
    expect(roots(line, 0.7)).toEqual([0.7]);
    expect(roots(line, 3)).toEqual([3]);
    expect(() => roots(line, 0.69)).toThrow(/between 0.700 m and 3.00 m can be reached/);
    expect(() => roots(line, 3.1)).toThrow(InputError);
    const inCentimetres: Formula = {
      ...line,
      inputs: { x: { ...valley.inputs.x, unit: 'cm', range: [10, 1000] } },
    };
    expectRoots(inCentimetres, 9.5, [9.5]);
    for (const value of [0.09, 10.1])
      expect(() => roots(inCentimetres, value)).toThrow(/between 0.100 m and 10.0 m/);
  });

  it('cuts an endless range far beyond any landscape', () => {
    const endless = ground((x) => x, [0.1, Infinity]);
    expectRoots(endless, 9e6, [9e6]);
    expect(() => roots(endless, 2e7)).toThrow(/No place gives level/);
    expectRoots(
      ground((x) => x, [-Infinity, 3]),
      -9e6,
      [-9e6],
    );
  });

  it.each([
    ['refuses', (): never => { throw new InputError('Outside.'); }],
    ['gives no number', (): number => NaN],
    ['gives nothing', (): undefined => undefined],
  ])('closes in on the edge of what the formula takes, where it %s beyond', (_how, beyond) => {
    const from = ground((x) => (x > 3.3 ? x : beyond()));
    expectRoots(from, 3.3 + 1e-7, [3.3 + 1e-7]);
    const upTo = ground((x) => (x < 3.3 ? x : beyond()));
    expectRoots(upTo, 3.3 - 1e-7, [3.3 - 1e-7]);
    expect(() => roots(from, 3.2)).toThrow(/between 3.30 m and 10.0 m/);
  }); // prettier-ignore

  it('counts a root at such an edge once', () => {
    const from =
      (edge: number): ((x: number) => number) =>
      (x) =>
        x < edge ? NaN : x;
    // Of 600 even steps from −2 to 4 the 300th is 1, and from −3 to 3 it is 0.
    expect(roots(ground(from(1), [-2, 4]), 1)).toEqual([1]);
    expect(roots(ground(from(0), [-3, 3]), 0)).toEqual([0]);
  });

  it('finds nothing in a gap that the formula does not take', () => {
    const gap = ground((x) => (x < 3.3 ? -1 : x < 3.3001 ? NaN : 1));
    expect(() => roots(gap, 0)).toThrow(/No place gives level/);
  });

  it('says what can be reached when nothing fits', () => {
    expect(() => roots(valley, 0.5)).toThrow(
      /No place gives level 0.5 m: between 1.00 m and 50.0 m/,
    );
  });

  it('says so when no value works at all', () => {
    const nowhere = ground(() => {
      throw new InputError('Never.');
    });
    expect(() => roots(nowhere, 1)).toThrow(
      'No place works with these values. Check the others first.',
    );
  });

  it('leaves it to the reader to mend what is missing', () => {
    expect(() => solveFor(recordOf('perspective'), {}, 's', { key: 'ratio', value: 1.4 })).toThrow(
      /perspective needs depth/,
    );
    // Both ways of giving one thing are missing, which is said of the formula too.
    expect(() =>
      solveFor(recordOf('recompose-error'), {}, 's', { key: 'error', value: 1 }),
    ).toThrow(/recompose-error needs exactly one of/);
  });

  it('hides no fault of ours', () => {
    const faulty = ground(() => {
      throw new TypeError('ours');
    });
    expect(() => roots(faulty, 1)).toThrow(TypeError);
  });

  it('solves for quantities only, and from quantities only', () => {
    const mixed: Formula = {
      ...valley,
      inputs: {
        ...valley.inputs,
        kind: { name: 'kind', choices: { a: 1 }, start: 'a', default: 'a', means: 'which' },
        row: { ...valley.inputs.x, name: 'row', list: { min: 1, max: 2 }, optional: true },
      },
      outputs: { ...valley.outputs, word: { name: 'word', kind: 'choice' } },
    };
    for (const [input, output] of [
      ['kind', 'y'],
      ['row', 'y'],
      ['nothing', 'y'],
      ['x', 'word'],
      ['x', 'nothing'],
    ] as const)
      expect(() => solveFor(mixed, {}, input, { key: output, value: 1 })).toThrow(
        /^Only a quantity can be solved for, and only from a quantity\.$/,
      );
    expect(solveFor(mixed, {}, 'x', { key: 'y', value: 2 })).toHaveLength(2);
  });
});

describe('a closed inverse', () => {
  /** The valley floor touches the level 1 without crossing it, which no search for a crossing can see. */
  const floor = (inverse: (wanted: number) => number, range?: readonly [number, number]): Formula =>
    ground((x) => (x - 3) ** 2 + 1, range, {
      solve: { x: { y: (_given, wanted) => inverse(wanted) } },
    });

  it('is taken before any search, and sees what is given', () => {
    expect(
      roots(
        floor(() => 3),
        1,
      ),
    ).toEqual([3]);
    const withDepth: Formula = {
      ...valley,
      inputs: { ...valley.inputs, d: { ...valley.inputs.x, name: 'depth' } },
      compute: ({ x, d }) => ({ y: ((x as number) - (d as number)) ** 2 }),
      solve: { x: { y: ({ d }) => d as number } },
    };
    expect(solveFor(withDepth, { d: 3.7 }, 'x', { key: 'y', value: 0 })).toEqual([3.7]);
  });

  it('may leave the work to the search: out of its domain, out of range, or wrong', () => {
    const refusing = floor(() => {
      throw new InputError('Not here.');
    });
    expectRoots(refusing, 2, [2, 4]);
    expectRoots(
      floor(() => NaN),
      2,
      [2, 4],
    );
    expectRoots(
      floor(() => 3.5),
      2,
      [2, 4],
    );
    // 2 and 4 are the roots, and each range holds one.
    expectRoots(
      floor(() => 2, [3, 10]),
      2,
      [4],
    );
    expectRoots(
      floor(() => 4, [0.1, 3]),
      2,
      [2],
    );
  });

  it('hides no fault of ours', () => {
    const faulty = floor(() => {
      throw new TypeError('ours');
    });
    expect(() => roots(faulty, 2)).toThrow(TypeError);
  });
});
