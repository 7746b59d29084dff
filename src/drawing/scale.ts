import { writeQuantity } from '../formula/notation/write.ts';
import type { Pen } from './pen.ts';

/** Preferred numbers, ten to the decade: a sheet's scale moves by these steps, so that a slider moves things, not the scale. */
const STEPS = [1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8];

/** The largest of some steps of a decade, times a power of ten, that is not above a limit. */
const largest = (steps: readonly number[], limit: number): number => {
  const ten = 10 ** Math.floor(Math.log10(limit));
  return ten * Math.max(1, ...steps.filter((step) => step * ten <= limit));
};

/**
 * The scale of a sheet, in units a metre, that is no larger than what fits.
 * @example scaleFor(67.9) // 63
 */
export const scaleFor = (fits: number): number => largest(STEPS, fits);

/** A scale bar of a round length, its left end at x. */
export const bar = (on: Pen, x: number, y: number, scale: number): void => {
  const most = 64 / scale;
  const [unit, size] =
    on.style.system !== 'imperial'
      ? most < 0.01
        ? (['mm', 0.001] as const)
        : most < 1
          ? (['cm', 0.01] as const)
          : (['m', 1] as const)
      : most < 0.3048
        ? (['in', 0.0254] as const)
        : (['ft', 0.3048] as const);
  const metres = largest([1, 2, 5], most / size) * size;
  const end = x + metres * scale;
  on.line('dimension', [
    [x, y - 4],
    [x, y],
    [end, y],
    [end, y - 4],
  ]);
  on.line('dimension', [
    [(x + end) / 2, y - 3],
    [(x + end) / 2, y],
  ]);
  on.text(
    end + 6,
    y + 2,
    writeQuantity(metres, unit, { significant: 1 }, { ...on.style, exact: true }),
  );
};
