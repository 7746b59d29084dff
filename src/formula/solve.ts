import { InputError } from './errors.ts';
import { complete } from './read.ts';
import { idOf, isChoice, type Formula, type Given, type Value } from './record.ts';
import { canonical, writeQuantity } from './notation/write.ts';
import { factorOf } from './units.ts';

/** Where an unbounded range is cut for the search: far beyond any studio, and any landscape. */
const FAR = 1e7;
const STEPS = 600;

/** One step of the search: an input value and by how much its result misses the wanted one. */
interface Sample {
  readonly x: number;
  readonly miss: number;
}

/**
 * Finds every value of one input that gives a wanted result.
 *
 * Model: a closed inverse where the record has one; otherwise the input's legal range is walked in even ratios (even
 * steps where it crosses zero), edges of the formula's domain are closed in on, and each change of sign is bisected to
 * the last bit. Two roots closer than one step may be missed.
 * Throws: InputError if nothing fits, with the span of results that can be reached.
 * @param key the record key of the input asked for
 * @param wanted the record key of the result and its value in SI
 * @returns the roots in SI, ascending
 */
export const solveFor = (
  formula: Formula,
  given: Given,
  key: string,
  wanted: { readonly key: string; readonly value: number },
): number[] => {
  const input = formula.inputs[key];
  const output = formula.outputs[wanted.key];
  if (!input || isChoice(input) || input.list || !output?.unit)
    throw new InputError('Only a quantity can be solved for, and only from a quantity.');
  const factor = factorOf(input.unit);
  const [low, high] = [
    Math.max(input.range[0] * factor, -FAR),
    Math.min(input.range[1] * factor, FAR),
  ];

  // All but the input asked for, and what is worked out from it, stays the same from sample to sample.
  const late = Object.entries(formula.inputs).flatMap(([other, one]) =>
    other !== key && given[other] === undefined && typeof one.default === 'function'
      ? [[other, one.default] as const]
      : [],
  );
  const open = Object.fromEntries(late.map(([other]) => [other, 0]));
  const still: Record<string, Value> = complete(formula, { ...open, ...given, [key]: 0 });
  for (const [other] of late) still[other] = undefined;
  const completed = (x: number): Record<string, Value> => {
    const values = { ...still, [key]: x };
    for (const [other, worked] of late) values[other] = worked(values);
    return values;
  };
  const resultAt = (x: number): number | undefined => {
    try {
      const result = formula.compute(completed(x))[wanted.key];
      return typeof result === 'number' && !Number.isNaN(result) ? result : undefined;
    } catch (error) {
      // Outside the formula's domain; what is missing altogether is the reader's to mend.
      if (error instanceof InputError && error.message.startsWith(`${formula.id} needs`))
        throw error;
      if (error instanceof RangeError) return undefined;
      throw error;
    }
  };

  /** Whether x gives what is wanted, to nine figures; of a result of nought, to nine figures of `size`. */
  const near = (x: number, size = 0): boolean => {
    const result = resultAt(x);
    return (
      result !== undefined &&
      Math.abs(result - wanted.value) <=
        1e-9 * Math.max(Math.abs(wanted.value), Math.abs(result), size)
    );
  };

  const closed = formula.solve?.[key]?.[wanted.key];
  if (closed) {
    try {
      const x = closed(complete(formula, { ...given, [key]: input.start * factor }), wanted.value);
      if (Number.isFinite(x) && x >= low && x <= high && near(x)) return [x];
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
    }
  }

  const at = (i: number): number =>
    low > 0 ? low * (high / low) ** (i / STEPS) : low + ((high - low) * i) / STEPS;
  const sample = (x: number): Sample | undefined => {
    const result = resultAt(x);
    return result === undefined ? undefined : { x, miss: result - wanted.value };
  };

  const samples: Sample[] = [];
  let before: { x: number; found: Sample | undefined } | undefined;
  for (let i = 0; i <= STEPS; i++) {
    const x = i === STEPS ? high : at(i);
    const found = sample(x);
    if (before && (before.found === undefined) !== (found === undefined)) {
      let [inside, outside] = found ? [x, before.x] : [before.x, x];
      for (let n = 0; n < 200; n++) {
        const middle = (inside + outside) / 2;
        if (middle === inside || middle === outside) break;
        if (sample(middle)) inside = middle;
        else outside = middle;
      }
      const edge = sample(inside);
      if (edge) samples.push(edge);
    }
    if (found) samples.push(found);
    before = { x, found };
  }

  const roots: number[] = [];
  const keep = (x: number, size: number): void => {
    const last = roots.at(-1);
    if (near(x, size) && (last === undefined || Math.abs(x - last) > 1e-9 * Math.abs(x)))
      roots.push(x);
  };
  samples.forEach((b, i) => {
    const a = samples[i - 1];
    if (b.miss === 0) {
      keep(b.x, 0);
      return;
    }
    if (!a || a.miss === 0 || Math.sign(a.miss) === Math.sign(b.miss)) return;
    let [left, right] = [a.x, b.x];
    for (let n = 0; n < 200; n++) {
      const middle = (left + right) / 2;
      const found = sample(middle);
      if (!found || middle === left || middle === right) break;
      if (Math.sign(found.miss) === Math.sign(a.miss)) left = middle;
      else right = middle;
    }
    const [l, r] = [sample(left), sample(right)];
    // A jump across the wanted value stays as wide as it was, and is no root.
    const size = Math.min(Math.abs(a.miss), Math.abs(b.miss));
    if (l && r) keep(Math.abs(l.miss) <= Math.abs(r.miss) ? left : right, size);
  });
  if (roots.length > 0) return roots;

  const reached = samples.map(({ miss }) => miss + wanted.value);
  const [unit, id] = [output.unit, idOf(output)];
  const name = idOf(input);
  if (reached.length === 0)
    throw new InputError(`No ${name} works with these values. Check the others first.`, name);
  const show = (x: number): string => writeQuantity(x, unit, 3);
  throw new InputError(
    `No ${name} gives ${id} ${canonical(wanted.value, unit)}: between ${show(Math.min(...reached))} and ${show(Math.max(...reached))} can be reached.`,
    name,
  );
};
