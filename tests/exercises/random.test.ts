import { describe, expect, it } from 'vitest';
import { drawAll, textsOf } from '../../src/exercises/draw.ts';
import { shuffled, stream } from '../../src/exercises/random.ts';

describe('the source of chance', () => {
  it('gives the same numbers for the same name, for ever', () => {
    const next = stream('golden/1/0/focal-length');
    // Written down once: results kept by students rest on them.
    expect(Array.from({ length: 12 }, () => next(1000))).toMatchInlineSnapshot(`
      [
        690,
        850,
        916,
        827,
        470,
        661,
        904,
        907,
        500,
        901,
        420,
        523,
      ]
    `);
  });

  it('draws every count about equally often over the seeds 0 to 999', () => {
    for (const count of [2, 3, 5, 7, 12]) {
      const seen = Array.from({ length: count }, () => 0);
      for (let seed = 0; seed < 1000; seed++) {
        const drawn = stream(`evenly/1/${seed}/x`)(count);
        seen[drawn] = (seen[drawn] ?? 0) + 1;
      }
      const expected = 1000 / count;
      const chiSquare = seen.reduce((sum, n) => sum + (n - expected) ** 2 / expected, 0);
      // The 99.9th percentile for 11 degrees of freedom is 31.26; for fewer it is less.
      expect(chiSquare, `${count}: ${seen.join()}`).toBeLessThan(31.26);
    }
  });

  it('ties no stream to its neighbour', () => {
    const both = Array.from({ length: 1000 }, (_, seed) => [
      stream(`pair/1/${seed}/a`)(10),
      stream(`pair/1/${seed}/b`)(10),
    ]);
    const same = both.filter(([a, b]) => a === b).length;
    // One in ten by chance: 100, give or take three standard deviations of 9.5.
    expect(same).toBeGreaterThan(71);
    expect(same).toBeLessThan(129);
  });

  it('shuffles without losing or doubling anything', () => {
    const cards = ['a', 'b', 'c', 'd', 'e'];
    const orders = new Set<string>();
    for (let seed = 0; seed < 400; seed++) {
      const order = shuffled(cards, stream(`cards/${seed}`));
      expect(order.toSorted()).toEqual(cards);
      orders.add(order.join(''));
    }
    // Of 120 orders, 400 draws leave about 120 e^(-400/120) = 4 unseen.
    expect(orders.size).toBeGreaterThan(105);
  });
});

describe('what a quantity is drawn from', () => {
  it('counts steps in the last decimal, without dust', () => {
    expect(textsOf({ from: '0.6 m', to: '0.7 m', step: '0.05 m' })).toEqual([
      '0.60 m',
      '0.65 m',
      '0.70 m',
    ]);
    expect(textsOf({ from: '1 m', to: '4 m', step: '0.2 m' })).toHaveLength(16);
    expect(textsOf({ from: '-20 deg', to: '20 deg', step: '20 deg' })).toEqual([
      '-20 deg',
      '0 deg',
      '20 deg',
    ]);
    expect(textsOf({ from: '100', to: '400', step: '100' })).toEqual(['100', '200', '300', '400']);
  });

  it('tells an author what does not go together', () => {
    expect(() => textsOf({ from: '1 m', to: '4 ft', step: '1 m' })).toThrow('Expected one unit');
    expect(() => textsOf({ from: '1 m', to: '2 m', step: '0.3 m' })).toThrow(
      'whole number of steps',
    );
    expect(() => textsOf({ from: '1 m', to: '2 m', step: '0 m' })).toThrow('whole number of steps');
    expect(() => textsOf({ from: 'f/4', to: 'f/8', step: '1' })).toThrow('Expected a number');
  });

  it('leaves what was drawn alone when another quantity joins', () => {
    const a = { pick: ['35 mm', '50 mm', '85 mm'] };
    const b = { from: '1 m', to: '4 m', step: '0.5 m' };
    for (let seed = 0; seed < 50; seed++) {
      const alone = drawAll({ a }, `t/1/${seed}`);
      expect(drawAll({ b, a }, `t/1/${seed}`)['a']).toBe(alone['a']);
    }
  });
});
