import { writeNumber } from '../formula/notation/write.ts';
import { widthOf, WIDTH, type Pen } from './pen.ts';

/** A ruler of stops along x, whole stops marked and numbered. */
export interface StopsAxis {
  readonly at: (stops: number) => number;
  readonly low: number;
  readonly high: number;
}

/** Draws the ruler so that all of some values lie on it, with a stop to spare at each end. Infinite ones are left out. */
export const stopsAxis = (on: Pen, y: number, values: readonly number[]): StopsAxis => {
  const finite = [0, ...values.filter(Number.isFinite)];
  const low = Math.floor(Math.min(...finite)) - 1;
  const high = Math.ceil(Math.max(...finite)) + 1;
  const step = (WIDTH - 40) / (high - low);
  const at = (stops: number): number => 20 + (Math.max(low, Math.min(high, stops)) - low) * step;
  on.line('object', [
    [8, y],
    [WIDTH - 8, y],
  ]);
  let end = 0;
  const every = [1, 2, 5, 10, 20].find((n) => n * step > 26) ?? 50;
  for (let n = low; n <= high; n += 1) {
    const named = n % every === 0;
    if (!named && step < 4) continue;
    on.line(named ? 'object' : 'dimension', [
      [at(n), y],
      [at(n), y + (named ? 8 : 5)],
    ]);
    const text =
      n > 0 ? `+${writeNumber(n, 6, { exact: true })}` : writeNumber(n, 6, { exact: true });
    if (!named || at(n) - widthOf(text) / 2 < end) continue;
    end = at(n) + widthOf(text) / 2 + 4;
    on.text(at(n), y + 22, text, 'middle');
  }
  return { at, low, high };
};
