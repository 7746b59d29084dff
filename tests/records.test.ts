import katex from 'katex';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import sources from '../shared/sources.json' with { type: 'json' };
import harbourSet from '../shared/tables/harbour-set.json' with { type: 'json' };
import { InputError } from '../src/formula/errors.ts';
import { compute } from '../src/formula/compute.ts';
import { complete, readInput, writeInput } from '../src/formula/read.ts';
import { idOf, isChoice, type Formula, type Results } from '../src/formula/record.ts';
import { showResult } from '../src/formula/show.ts';
import { solveFor } from '../src/formula/solve.ts';
import { dimensionOf, factorOf, type Dimension } from '../src/formula/units.ts';
import { expectClose } from './support/close.ts';
import { givenFor, records, startsOf } from './support/records.ts';

const starts: Readonly<Record<string, string>> = harbourSet.starts;

/** Computes, or returns undefined where the values do not go together and the formula says so. */
const attempt = (formula: Formula, given: Record<string, unknown>): Results | undefined => {
  try {
    return compute(formula, complete(formula, given));
  } catch (error) {
    if (error instanceof InputError) return undefined;
    throw error;
  }
};

/** How a quantity grows when every length doubles. Dimensions without a length in them do not. */
const POWER: Partial<Record<Dimension, number>> = { length: 1, area: 2, speed: 1, resolution: -1 };

/** Where free fall is in the formula it stays as it is: weights do not grow, and speeds grow by the root. */
const FALL: Readonly<Record<string, Partial<Record<Dimension, number>>>> = {
  'platform-drop': { speed: 0.5 },
  'stand-stability': { torque: 1 },
};

const scaled = (
  formula: Formula,
  given: Record<string, unknown>,
  k: number,
): Record<string, unknown> =>
  Object.fromEntries(
    Object.entries(given).map(([key, value]) => {
      const input = formula.inputs[key];
      if (input && 'unit' in input) {
        const grown = (x: number): number => x * k ** (POWER[dimensionOf(input.unit)] ?? 0);
        return [key, Array.isArray(value) ? value.map(grown) : grown(value as number)];
      }
      // A format is a pair of lengths.
      if (value !== null && typeof value === 'object' && 'width' in value && 'height' in value)
        return [key, { width: (value.width as number) * k, height: (value.height as number) * k }];
      return [key, value];
    }),
  );

/** Inputs whose absence is a case of its own: no fill, no end to the dial, no opening, both lights equally far. */
const CASES = new Set([
  'light-on-face fill-stops',
  'flash-exposure lowest-power',
  'beam-spread opening',
  'rim-light key-distance',
  'mains-load load',
]);

describe.each(records.map((record) => [record.id, record] as const))('record %s', (_id, record) => {
  const inputs = Object.entries(record.inputs);
  const outputs = Object.entries(record.outputs);

  it('has ids in kebab-case, none of them both an input and a result', () => {
    const ids = [...inputs, ...outputs].map(([, one]) => idOf(one));
    for (const id of ids) expect(id).toMatch(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('has TeX that typesets: its formula, its symbols, and its worked line with a place for every value', () => {
    const all = [
      record.tex,
      ...[...inputs, ...outputs].flatMap(([, one]) => one.tex ?? []),
      ...(record.symbols ?? []).map(({ tex }) => tex),
    ];
    for (const tex of all)
      expect(() =>
        katex.renderToString(tex, { throwOnError: true, strict: 'error' }),
      ).not.toThrow();
    const starting = startsOf(record);
    const values = record.worked.values(starting, compute(record, starting));
    const marks = [...record.worked.tex.matchAll(/\\val\{(\w+)\}/g)].map(([, key]) => key);
    expect(Object.keys(values).sort()).toEqual([...marks].sort());
    for (const { value } of Object.values(values))
      if (value !== undefined) expect(Number.isFinite(value)).toBe(true);
    const plain = record.worked.tex.replace(/\\val\{\w+\}/g, '1');
    expect(() =>
      katex.renderToString(plain, { throwOnError: true, strict: 'error' }),
    ).not.toThrow();
  });

  it('names only works that are in the bibliography', () => {
    const known = sources.map(({ id }) => id);
    for (const source of record.sources) expect(known).toContain(source);
  });

  it('starts from the harbour set, within its ranges, and shows a result for every output', () => {
    for (const [, input] of inputs) {
      const id = idOf(input);
      if (isChoice(input)) expect(Object.keys(input.choices)).toContain(input.start);
      else {
        const [low, high] = input.span ?? input.range;
        expect(input.start).toBeGreaterThanOrEqual(low);
        expect(input.start).toBeLessThanOrEqual(high);
        // The set's margin is cloth beside the frame; that of the ambient light is counted in stops.
        if (starts[id] !== undefined && !(id === 'margin' && input.unit === 'stop'))
          expectClose(
            readInput(input, starts[id], { stored: true }) as number,
            input.start * factorOf(input.unit),
          );
      }
    }
    const results = compute(record, startsOf(record));
    for (const [key, output] of outputs)
      expect(showResult(output, results[key])).not.toBe('not given');
  });

  it('returns exactly its outputs, never NaN, and text without NaN, Infinity or a blank, over its whole legal range', () => {
    fc.assert(
      fc.property(givenFor(record, true), (given) => {
        const results = attempt(record, given);
        if (!results) return;
        expect(Object.keys(results).sort()).toEqual(Object.keys(record.outputs).sort());
        for (const [key, output] of outputs)
          expect(showResult(output, results[key])).not.toMatch(/NaN|Infinity|undefined|^$/);
      }),
    );
  });

  it('goes without any of what may be left out: a result is then as before, or not given', () => {
    const waysOf = (record.ways ?? []).flatMap(({ groups }) => groups.flat());
    const free = inputs.filter(
      ([, one]) =>
        one.optional &&
        !waysOf.includes(idOf(one)) &&
        // Those with a default fall back on it, and those a page begins without ask for more of the same result.
        !('default' in one && one.default) &&
        !('empty' in one) &&
        !CASES.has(`${record.id} ${idOf(one)}`),
    );
    fc.assert(
      fc.property(givenFor(record), fc.subarray(free), (given, left) => {
        const whole = attempt(record, given);
        const keys = left.map(([key]) => key);
        const rest = attempt(
          record,
          Object.fromEntries(Object.entries(given).filter(([key]) => !keys.includes(key))),
        );
        if (!whole || !rest) return;
        expect(Object.keys(rest).sort()).toEqual(Object.keys(record.outputs).sort());
        for (const [key] of outputs) expect([whole[key], undefined]).toContain(rest[key]);
      }),
    );
  });

  it('computes from most of what its sliders offer', () => {
    const tried = fc.sample(givenFor(record), { numRuns: 300, seed: 7 });
    expect(tried.filter((given) => attempt(record, given)).length).toBeGreaterThan(150);
  });

  it('is homogeneous: when every length grows k times, each result grows as its unit says', () => {
    let compared = 0;
    fc.assert(
      fc.property(givenFor(record), fc.double({ min: 0.25, max: 4, noNaN: true }), (given, k) => {
        const [one, other] = [attempt(record, given), attempt(record, scaled(record, given, k))];
        if (!one || !other) {
          expect(one === undefined).toBe(other === undefined);
          return;
        }
        for (const [key, output] of outputs) {
          const [a, b] = [one[key], other[key]];
          if (typeof a !== 'number' || typeof b !== 'number' || !output.unit) continue;
          compared++;
          const power = { ...POWER, ...FALL[record.id] }[dimensionOf(output.unit)] ?? 0;
          expectClose(b, a * k ** power, 1e-9, 1e-11);
        }
      }),
    );
    expect(compared).toBeGreaterThan(200);
  });

  it('solves back: each input is found again from each result that depends on it', () => {
    let found = 0;
    fc.assert(
      fc.property(givenFor(record), (given) => {
        const results = attempt(record, given);
        if (!results) return;
        for (const [key, input] of inputs) {
          if (isChoice(input) || typeof given[key] !== 'number') continue;
          const [output, wanted] =
            Object.entries(results).find(
              ([, value]) => typeof value === 'number' && Number.isFinite(value) && value !== 0,
            ) ?? [];
          if (output === undefined || typeof wanted !== 'number') continue;
          let roots: number[];
          try {
            roots = solveFor(record, given, key, { key: output, value: wanted });
          } catch (error) {
            if (error instanceof InputError) continue;
            throw error;
          }
          for (const root of roots) {
            expectClose(
              attempt(record, { ...given, [key]: root })?.[output] as number,
              wanted,
              1e-8,
            );
            found++;
          }
        }
      }),
      { numRuns: 12 },
    );
    expect(found).toBeGreaterThan(10);
  });

  it('has no closed inverse that does not undo it', () => {
    for (const [key, byOutput] of Object.entries(record.solve ?? {}))
      for (const [output, inverse] of Object.entries(byOutput))
        fc.assert(
          fc.property(givenFor(record), (given) => {
            const wanted = attempt(record, given)?.[output];
            // At a depth of nothing every distance gives the ratio 1.
            if (typeof wanted !== 'number' || Math.abs(wanted - 1) < 1e-3) return;
            expectClose(inverse(complete(record, given), wanted), given[key] as number, 1e-9);
          }),
        );
  });

  it('reads back every value it writes', () => {
    fc.assert(
      fc.property(givenFor(record, true), (given) => {
        for (const [key, input] of inputs) {
          if (given[key] === undefined) continue;
          const text = writeInput(input, given[key]);
          const again = readInput(input, text, { stored: true });
          if (typeof again === 'number') expectClose(again, given[key] as number, 1e-13);
          else if (Array.isArray(again))
            again.forEach((part: number, i) => {
              expectClose(part, (given[key] as number[])[i] ?? NaN, 1e-13);
            });
          else expect(again).toEqual(given[key]);
        }
      }),
    );
  });
});
