import { writeQuantity, type Style } from '../formula/notation/write.ts';
import type { FNumber } from '../formula/quantities.ts';
import { thirdMarks } from '../optics/aperture/marks.ts';

/** An f-number without digits that say nothing. */
export const stop = (N: number, style: Style): string =>
  writeQuantity(N, 'f/', 3, { ...style, exact: true });

interface Stops {
  readonly N: FNumber;
  readonly N2: FNumber | undefined;
  readonly N3: FNumber | undefined;
}

/** The three apertures a plate compares, widest first: those given, and neighbours of the first for those that are not. */
export const comparedStops = ({
  N,
  N2,
  N3,
}: Stops): { readonly N: FNumber; readonly chosen: boolean }[] => {
  const [wider, , narrower] = threeStops(N);
  return [
    { N, chosen: true },
    { N: N2 ?? wider, chosen: false },
    { N: N3 ?? narrower, chosen: false },
  ].sort((a, b) => a.N - b.N);
};

/**
 * A setting with its neighbours a stop wider and a stop narrower, widest first: marks beside a mark, else exact stops.
 * @example threeStops(fNumber(4)) // 2.8, 4, 5.6
 */
export const threeStops = (N: FNumber): readonly [FNumber, FNumber, FNumber] => {
  const place = thirdMarks.findIndex(({ mark }) => mark === N);
  const next = (way: 1 | -1): FNumber =>
    (place < 0 ? undefined : thirdMarks[place + 3 * way]?.mark) ??
    ((N * 2 ** (way / 2)) as FNumber);
  return [next(-1), N, next(1)];
};
