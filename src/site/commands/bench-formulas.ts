import { compile } from 'mathjs';
import { complete, readInput } from '../../formula/read.ts';
import { idOf } from '../../formula/record.ts';
import type { Formula } from '../../formula/record.ts';
import { formulas } from '../../formulas.ts';
import { rivals } from './bench-expressions.ts';
import type { Rival } from './bench-expressions.ts';
import { median } from './bench-phone.ts';
import type { Sheet } from './bench-phone.ts';

/** Nanoseconds a call takes: median of five rounds, each long enough for the clock. */
function nanoseconds(call: (index: number) => number): number {
  let sum = 0;
  const round = (calls: number): number => {
    const start = performance.now();
    for (let index = 0; index < calls; index += 1) sum += call(index & 63);
    return performance.now() - start;
  };
  let calls = 1000;
  while (round(calls) < 25) calls *= 2;
  const rounds = [1, 2, 3, 4, 5].map(() => (round(calls) / calls) * 1e6);
  // The sum is used, so that no compiler may leave the calls out.
  if (Number.isNaN(sum)) throw new Error('A result was no number.');
  return median(rounds);
}

/** The record's values for a rival's texts, as compute wants them. */
function valuesFor(formula: Formula, given: Rival['given']): Record<string, unknown> {
  const read: Record<string, unknown> = {};
  for (const [key, input] of Object.entries(formula.inputs)) {
    const text = given[idOf(input)];
    if (text !== undefined) read[key] = readInput(input, text, { stored: true });
  }
  return complete(formula, read);
}

/** Every formula against bare arithmetic and mathjs: no limit, but all three must agree. */
export async function raceFormulas(sheet: Sheet): Promise<void> {
  sheet.heading(
    'Nanoseconds a call: the formula with all its results, bare arithmetic for the main one, mathjs for the same',
  );
  for (const [id, load] of Object.entries(formulas)) {
    const rival = rivals[id];
    if (rival === undefined) throw new Error(`bench-expressions.ts has no line for ${id}.`);
    const formula = (await load()).default;
    const values = valuesFor(formula, rival.given);
    const start = values[rival.moved] as number;
    const moved = Array.from({ length: 64 }, (_, index) => start * (1 + index / 1000));
    const inputs = moved.map((x) => ({ ...values, [rival.moved]: x }));
    const scopes = moved.map(
      (x) => new Map<string, number>([...Object.entries(rival.scope), ['x', x]]),
    );
    const compiled = compile(rival.expression);

    const ours = (index: number): number =>
      formula.compute(inputs[index] as Record<string, unknown>)[rival.result] as number;
    const bare = (index: number): number => rival.bare(moved[index] as number);
    const mathjs = (index: number): number =>
      compiled.evaluate(scopes[index] as Map<string, number>) as number;

    for (const index of [0, 31, 63]) {
      const [a, b, c] = [ours(index), bare(index), mathjs(index)];
      if (Math.max(Math.abs(a - b), Math.abs(a - c)) > 1e-12 * Math.abs(a)) {
        throw new Error(`${id}: ours ${a}, bare ${b}, mathjs ${c} do not agree.`);
      }
    }
    const times = [ours, bare, mathjs].map((call) => nanoseconds(call).toFixed(1).padStart(8));
    sheet.note(`${id.padEnd(20)} ${times.join('  ')}`);
  }
}
