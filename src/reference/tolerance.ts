import { parseQuantity } from '../formula/notation/quantity.ts';
import { idOf, type Output } from '../formula/record.ts';
import type { Unit } from '../formula/units.ts';
import type { PrintedText } from './shapes.ts';

/** What a printed text says, and which of our results it admits. All numbers are SI. */
export interface Claim {
  /** The printed number; the middle of a range; the limit of “<1 %”. */
  readonly value: number;
  /** Our result agrees from here … */
  readonly low: number;
  /** … to here; `below` when the end itself is outside. */
  readonly high: number;
  readonly openAbove: boolean;
  readonly openBelow: boolean;
  /** One step of the last printed digit. */
  readonly step: number;
  /** True for 1:7.9, whose digits count in the second term. */
  readonly reciprocal: boolean;
}

/** The unit a text is printed in, where it is not the result's own. */
const WRITTEN: readonly (readonly [RegExp, Unit])[] = [
  [/px\/in$/, 'px/in'],
  [/px\/cm$/, 'px/cm'],
  [/°/, 'deg'],
  [/%/, '%'],
  [/(?:in|″)$/, 'in'],
  [/(?:ft|′)$/, 'ft'],
  [/µm$/, 'µm'],
  [/mm$/, 'mm'],
  [/cm$/, 'cm'],
  [/\dm$| m$/, 'm'],
];

/** The unit to show a comparison in: the one the source printed. */
export const unitPrinted = (text: string, own: Unit): Unit =>
  WRITTEN.find(([pattern]) => pattern.test(text.trim()))?.[1] ?? own;

/**
 * From digits to tolerance: what a printed result admits.
 *
 * Model: |ours − printed| ≤ step/2 + 1e-9·|printed| for values rounded to the nearest; for truncated
 * ones from the printed value up to, not including, the next step. `a-b` admits the rounded range,
 * `<x` anything below x, `∞` only infinity, `1:x` counts its digits in x.
 * Throws: Error where the digits do not say what the step is, or the text is no quantity of this result.
 *
 * @example claimOf('40.0°', horizontal, 'nearest').step // 0.1° in radians
 */
export const claimOf = (
  printed: PrintedText,
  output: Output,
  rounding: 'nearest' | 'truncated',
  slack?: string,
): Claim => {
  const text = typeof printed === 'string' ? printed : printed.text;
  const unit = output.unit;
  if (unit === undefined) throw new Error(`${idOf(output)} is a word; “${text}” is a number.`);
  const read = (one: string): number =>
    parseQuantity(one, {
      name: output.name,
      id: idOf(output),
      unit,
      range: [-Infinity, Infinity],
      bare: 'none',
      stored: true,
      example: 1,
    });
  const closed = { openAbove: false, openBelow: false, reciprocal: false };
  const more = slack === undefined ? 0 : read(slack);

  if (text.includes('∞')) {
    return { ...closed, value: Infinity, low: Infinity, high: Infinity, step: 0 };
  }

  const step = read(typeof printed === 'string' ? lastDigitOf(text) : printed.step);
  const room = (value: number): number => step / 2 + 1e-9 * Math.abs(value) + more;

  const under = /^<\s*(.+)$/.exec(text)?.[1];
  if (under !== undefined) {
    const limit = read(under);
    return { ...closed, value: limit, low: -Infinity, high: limit + more, openAbove: true, step };
  }

  const term = /^1\s*:\s*(.+)$/.exec(text)?.[1];
  if (term !== undefined) {
    const value = read(term);
    const [low, high] =
      rounding === 'truncated'
        ? [value - more, value + step + more]
        : [value - room(value), value + room(value)];
    return {
      ...closed,
      value: 1 / value,
      low: 1 / high,
      high: 1 / low,
      openBelow: rounding === 'truncated',
      reciprocal: true,
      step,
    };
  }

  const [, from, to, tail = ''] = /^([\d.]+)\s*[-–]\s*([\d.]+)(.*)$/.exec(text) ?? [];
  if (from !== undefined && to !== undefined) {
    const [a, b] = [read(from + tail), read(to + tail)];
    return { ...closed, value: (a + b) / 2, low: a - room(a), high: b + room(b), step };
  }

  const value = read(text);
  if (rounding === 'truncated') {
    // Digits cut off: what was printed is nearer to nought than the result it came from.
    return value < 0
      ? { ...closed, value, low: value - step - more, high: value + more, openBelow: true, step }
      : { ...closed, value, low: value - more, high: value + step + more, openAbove: true, step };
  }
  return { ...closed, value, low: value - room(value), high: value + room(value), step };
};

/** True when our result lies where the printed one admits it. */
export const admits = (claim: Claim, ours: number): boolean =>
  (claim.openBelow ? ours > claim.low : ours >= claim.low) &&
  (claim.openAbove ? ours < claim.high : ours <= claim.high);

/** One of the last printed digit, in the text's own unit: “2.21 m” gives “0.01 m”. */
const lastDigitOf = (text: string): string => {
  const numbers = text.replace(/^1\s*:/, '').match(/\d+(?:\.\d+)?/g) ?? [];
  const [number] = numbers;
  const range = /^[\d.]+\s*[-–]\s*[\d.]+\D*$/.test(text);
  if (
    number === undefined ||
    (numbers.length > 1 && !range) ||
    /[/½⅓⅔¼¾]/.test(text.replace(/^f\//, ''))
  ) {
    throw new Error(`“${text}” needs a step: its digits do not say how it was rounded.`);
  }
  if (number.endsWith('0') && !number.includes('.')) {
    throw new Error(
      `“${text}” needs a step: a nought before the decimal mark may be a place holder.`,
    );
  }
  const decimals = number.split('.')[1]?.length ?? 0;
  const one = decimals === 0 ? '1' : `0.${'0'.repeat(decimals - 1)}1`;
  const tail = /[^\d.]*$/.exec(text)?.[0] ?? '';
  return one + tail;
};
