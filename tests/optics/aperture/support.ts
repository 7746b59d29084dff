import { evaluateText, type Evaluation } from '../../../src/formula/evaluate.ts';
import type { Formula } from '../../../src/formula/record.ts';

/** Runs a record on a line of `id=text` pairs, parted by commas. */
export const run = (record: Formula, line: string): Evaluation =>
  evaluateText(
    record,
    line
      .split(',')
      .map((pair) => pair.trim())
      .filter(Boolean)
      .map((pair) => {
        const at = pair.indexOf('=');
        return [pair.slice(0, at), pair.slice(at + 1)] as const;
      }),
  );

/** One result's number. */
export const value = (record: Formula, line: string, result: string): number =>
  run(record, line).results[result]?.value as number;
