import type { QuantityInput } from '../../formula/record.ts';
import { dimensionOf, factorOf, type Unit } from '../../formula/units.ts';

/** What a slider runs over: the numbers of a native range input, and what they stand for. */
export interface Track {
  readonly min: number;
  readonly max: number;
  readonly step: number;
  /** The SI value at a position. */
  value(position: number): number;
  /** The position nearest to an SI value. */
  position(si: number): number;
}

/** The largest of 1, 2, 5, 10, … that is not above x. */
const round = (x: number): number => {
  const power = 10 ** Math.floor(Math.log10(x));
  return ([5, 2].find((n) => n * power <= x) ?? 1) * power;
};

const tidy = (x: number): number => Number(x.toFixed(6));

/**
 * The slider beside a field: round steps of the unit shown, about 150 of them; thirds of a stop for f-numbers.
 *
 * Valid: quantities whose record gives a `span`; undefined for the others, which are typed only.
 * @example trackFor(focalLength, 'mm')?.step // 1
 */
export const trackFor = (input: QuantityInput, unit: Unit): Track | undefined => {
  if (!input.span || input.list) return undefined;
  const [low, high] = input.span.map((x) => (x * factorOf(input.unit)) / factorOf(unit)) as [
    number,
    number,
  ];
  if (dimensionOf(unit) === 'f-number') {
    const thirds = (x: number): number => Math.round(6 * Math.log2(x / low));
    return {
      min: 0,
      max: thirds(high),
      step: 1,
      value: (position) => Number((low * 2 ** (position / 6)).toPrecision(2)),
      position: (si) => Math.min(Math.max(thirds(si), 0), thirds(high)),
    };
  }
  // What is reckoned in stops, or runs over decades, moves in thirds of a stop.
  const reciprocal = (unit === 's' && low < 0.3) || input.fraction;
  if (low > 0 && high / low > 60) {
    const thirds = (x: number): number => Math.round(3 * Math.log2(x / low));
    const two = (x: number): number => Number(x.toPrecision(2));
    return {
      min: 0,
      max: thirds(high),
      step: 1,
      value: (position) => {
        const x = low * 2 ** (position / 3);
        return (reciprocal && x < 0.3 ? 1 / two(1 / x) : two(x)) * factorOf(unit);
      },
      position: (si) => Math.min(Math.max(thirds(si / factorOf(unit)), 0), thirds(high)),
    };
  }
  const step = round((high - low) / 150);
  // In another unit the ends are no round numbers; the slider stays inside them.
  const min = tidy(Math.ceil(tidy(low / step)) * step);
  const max = tidy(Math.floor(tidy(high / step)) * step);
  return {
    min,
    max,
    step,
    value: (position) => tidy(position) * factorOf(unit),
    position: (si) => Math.min(Math.max(tidy(si / factorOf(unit)), min), max),
  };
};
