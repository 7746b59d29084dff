import { describe, expect, it } from 'vitest';
import { evaluateText } from '../../src/formula/evaluate.ts';
import { idOf, isChoice, type Formula, type Given } from '../../src/formula/record.ts';
import { rivalsOf } from '../../src/formula/starts.ts';
import { factorOf } from '../../src/formula/units.ts';
import { cellOf, queryOf, rowsOf, type Spec, type Step } from '../../src/tabulate/table.ts';
import { recordOf, records } from '../support/records.ts';

const stepOf = (given: Given): Step => ({ given });

/** A few usual values of each of the first two quantities: enough to move every formula. */
const small = (formula: Formula): Spec => {
  const axes = Object.entries(formula.inputs)
    .filter(([, input]) => !isChoice(input) && !input.list && input.when === undefined)
    .map(([key, input]) => {
      if (isChoice(input)) throw new Error('a choice');
      const [low, high] = input.span ?? input.range;
      const values = (input.series ?? [input.start]).filter((x) => x >= low && x <= high);
      const factor = factorOf(input.unit);
      return values.slice(0, 3).map((x) => stepOf({ [key]: x * factor }));
    });
  return { formula, fixed: {}, down: axes[0] ?? [], across: axes[1] ?? [stepOf({})] };
};

describe('a cell', () => {
  it.each(records.map((one) => [one.id, one] as const))(
    'of %s holds what evaluate gives for its plate’s address',
    (_id, formula) => {
      const spec = small(formula);
      let held = 0;
      for (const down of spec.down)
        for (const across of spec.across) {
          const { results, refusal } = cellOf(spec, down, across);
          const pairs = [...new URLSearchParams(queryOf(spec, down, across))];
          if (!results) {
            expect(() => evaluateText(formula, pairs)).toThrow(RangeError);
            expect(refusal).toMatch(/^\p{Lu}.*[.?]$/su);
            continue;
          }
          held += 1;
          const evaluated = evaluateText(formula, pairs).results;
          for (const [key, output] of Object.entries(formula.outputs)) {
            const { value, infinite } = evaluated[idOf(output)] ?? {};
            const here = results[key];
            if (infinite) expect(Math.abs(here as number)).toBe(Infinity);
            else if (typeof here === 'number')
              // Text has 15 figures of the 17 a number holds.
              expect(Math.abs(here - (value as number))).toBeLessThanOrEqual(
                1e-9 * Math.max(Math.abs(here), 1e-6),
              );
            else expect(value).toBe(here ?? null);
          }
        }
      expect(held).toBeGreaterThan(0);
    },
  );

  it('sets the line over the column, the column over what is fixed, and that over the start', () => {
    const formula = recordOf('frame-size');
    const spec: Spec = { formula, fixed: { f: 0.05 }, down: [], across: [] };
    const f = (down: Given, across: Given): unknown =>
      cellOf(spec, stepOf(down), stepOf(across)).given['f'];
    expect(f({}, {})).toBe(0.05);
    expect(f({}, { f: 0.085 })).toBe(0.085);
    expect(f({ f: 0.105 }, { f: 0.085 })).toBe(0.105);
    const start = formula.inputs['f'];
    expect(cellOf({ ...spec, fixed: {} }, stepOf({}), stepOf({})).given['f']).toBeCloseTo(
      start && 'unit' in start ? start.start * factorOf(start.unit) : 0,
      15,
    );
  });

  it('empties what an input stands in for', () => {
    const withWays = records.filter(({ ways = [] }) => ways.length > 0);
    expect(withWays.length).toBeGreaterThan(3);
    for (const formula of withWays)
      for (const { groups } of formula.ways ?? [])
        for (const group of groups) {
          const given = Object.fromEntries(
            Object.entries(formula.inputs)
              .filter(([, input]) => group.includes(idOf(input)))
              .map(([key, input]) => {
                if (isChoice(input)) throw new Error(`${formula.id}: a choice among ways`);
                const si = input.start * factorOf(input.unit);
                return [key, input.list ? [si] : si];
              }),
          );
          const spec: Spec = { formula, fixed: {}, down: [], across: [] };
          const cell = cellOf(spec, stepOf(given), stepOf({}));
          expect(cell.refusal).toBeUndefined();
          const rivals = group.flatMap((id) => rivalsOf(formula, id));
          expect(rivals.length > 0).toBe(groups.length > 1);
          for (const [key, input] of Object.entries(formula.inputs))
            if (rivals.includes(idOf(input)) && !('default' in input))
              expect(cell.given[key], `${formula.id} ${key}`).toBeUndefined();
          const ids = [...new URLSearchParams(queryOf(spec, stepOf(given), stepOf({}))).keys()];
          expect(ids.filter((id) => rivals.includes(id))).toEqual([]);
        }
  });

  it('refuses in a sentence without ids, and stops no other cell', () => {
    const formula = recordOf('framing-distance');
    const spec: Spec = {
      formula,
      fixed: {},
      down: [stepOf({ f: undefined }), stepOf({ f: 0.085 })],
      across: [stepOf({})],
    };
    const [first, second] = [...rowsOf(spec)].map(([cell]) => cell);
    expect(first?.results).toBeUndefined();
    expect(first?.refusal).toMatch(/^This formula needs focal length: /);
    expect(second?.results?.['s']).toBeGreaterThan(1);
  });

  it('calls a step that names no input our own fault', () => {
    const spec: Spec = { formula: recordOf('f-stop'), fixed: {}, down: [], across: [] };
    expect(() => cellOf(spec, stepOf({ nothing: 1 }), stepOf({}))).toThrow(/no input nothing/);
  });
});

it('works a table out line by line, as it is asked for', () => {
  const formula = recordOf('frame-size');
  const asked: Given[] = [];
  const watched: Formula = {
    ...formula,
    compute: (given) => {
      asked.push(given);
      return formula.compute(given);
    },
  };
  const rows = rowsOf({
    formula: watched,
    fixed: {},
    down: [0.05, 0.085, 0.105].map((f) => stepOf({ f })),
    across: [1, 2].map((s) => stepOf({ s })),
  });
  expect(asked).toHaveLength(0);
  expect(rows.next().value).toHaveLength(2);
  expect(asked.map(({ f, s }) => [f, s])).toEqual([
    [0.05, 1],
    [0.05, 2],
  ]);
  expect([...rows]).toHaveLength(2);
});
