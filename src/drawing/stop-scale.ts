import { thirdMarks } from '../optics/aperture/marks.ts';
import { widthOf, WIDTH, type Pen } from './pen.ts';
import { stop } from './stops.ts';

/** A scale of marks along x, as far apart as the stops between them. */
export interface StopScale {
  /** Where an f-number stands; beyond the sheet's ends at its end. */
  readonly at: (N: number) => number;
  /** Units a stop. */
  readonly step: number;
}

const stops = (N: number): number => 2 * Math.log2(N);

/** Draws the scale from a little under the widest of some f-numbers to a little over the narrowest, at least four stops. */
export const stopScale = (on: Pen, y: number, all: readonly number[]): StopScale => {
  const [low, high] = [stops(Math.min(...all)), stops(Math.max(...all))];
  const more = Math.max(0.5, (4 - (high - low)) / 2);
  const step = (WIDTH - 32) / (high - low + 2 * more);
  const along = (n: number): number => 16 + (n - low + more) * step;
  on.line('object', [
    [8, y],
    [WIDTH - 8, y],
  ]);
  let end = 0;
  thirdMarks.forEach(({ mark, exact }, place) => {
    const x = along(stops(exact));
    if (x < 8 || x > WIDTH - 8) return;
    const full = place % 3 === 0;
    if (full || step > 12)
      on.line(full ? 'object' : 'dimension', [
        [x, y],
        [x, y + (full ? 8 : 5)],
      ]);
    const text = stop(mark, on.style);
    if (!full || x - widthOf(text) / 2 < end) return;
    end = x + widthOf(text) / 2 + 6;
    on.text(x, y + 22, text, 'middle');
  });
  return { at: (N) => along(stops(N)), step };
};
