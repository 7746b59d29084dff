import type { Box, Point } from './clip.ts';
import type { Pen } from './pen.ts';

// Outlines of our own, in centimetres over the seat, y up. A child of two: sitting height 51, eyes at 41, head 18 high and
// 18 deep, shoulders 24 wide, all from memory; a test holds them against the harbour set's table.
// A front view lists its right half, from the crown down; a side view looks left, its eye at 0.

export const CHILD =
  '3 51 6.4 49.4 8.2 45.4 8.2 40 6.8 35.8 4 33 3.4 32.4 3.6 30.6 10 29.6 13 27 13.6 20 16 12 14.5 8.5 18 8 19 3 17.5 0 4 0 1.5 2.5 0 3';
export const CHILD_SIDE =
  '4 51 10 51 15.6 49 17.6 41 15.4 34.6 12.6 33 13 30.6 18 27 20.4 17 20 3 17 0 -19 0 -22.6 0 -24 9 -21 10 -18.5 6.6 -5 11.4 0 11 2.4 13 1 20 3.6 28 6.6 30.6 6.6 32 3 32.6 -.2 33.4 -.4 36 -2.6 37.8 -.8 40.6 -1.2 46 .4 50';
/** The knitted rabbit that sits in for the child, its eyes where the child's are. */
export const RABBIT =
  '0 50 1 51 1 58 2 66 4.6 67 6.6 64 6.6 54 5.6 49.4 9.6 46 10 39 7.6 34 5 32.4 9 31 12.6 22 13.4 11 13 6.6 17.6 7 18.6 2 16 0 5 0 2 2 0 2.4';
export const RABBIT_SIDE =
  '6 50 6.6 58 9 66 12 67.6 13.4 64 12 52 15.6 48 16.6 40 13.6 35 17.4 29 21.6 17 21.6 10 25 10 26 5 22 3 20 0 -8 0 -11.6 .4 -11 5 -5 5.4 -1 9 .4 19 3.6 28 5.6 33 .4 33.6 -4 36 -4 40.4 -.6 45 2 49';
/** An adult on their heels beside the child; the shoulder nearer to the child at 0, 47 over the floor. */
export const ADULT =
  '17.6 82 24.4 82 29 79 31 74 30.6 66 28 60.6 25.4 58 25.4 55.6 33 54 40 51 42.6 44 41 26 46 16 48 4 46 0 0 0 -1 4 0 14 4 26 0 40 -1 49 6 53.6 16 55.6 16.6 58 14 60.6 11.4 66 11 74 13 79';

/** The corners of an outline, in metres. */
const read = (outline: string): Point[] => {
  const numbers = outline.split(' ').map(Number);
  const points: Point[] = [];
  for (let i = 0; i < numbers.length; i += 2)
    points.push([(numbers[i] ?? 0) / 100, (numbers[i + 1] ?? 0) / 100]);
  return points;
};

/** Cuts every corner of a closed outline at a quarter: twice, and it reads as a curve. */
const soften = (points: readonly Point[]): Point[] =>
  points.flatMap(([x, y], i) => {
    const [u, v] = points[(i + 1) % points.length] ?? [x, y];
    return [
      [x * 0.75 + u * 0.25, y * 0.75 + v * 0.25],
      [x * 0.25 + u * 0.75, y * 0.25 + v * 0.75],
    ] as const;
  });

const round = (x: number): number => Math.round(x * 100) / 100;

/** Sets a figure down: `at` says where on the sheet a point of the outline falls, in metres over the seat. */
export const figure = (
  on: Pen,
  outline: string,
  at: (x: number, y: number) => Point,
  box?: Box,
): void => {
  const half = read(outline);
  const mirrored =
    outline === CHILD || outline === RABBIT ? half.map(([x, y]): Point => [-x, y]).reverse() : [];
  const points = soften(soften([...half, ...mirrored])).map(([x, y]): Point => {
    const [u, v] = at(x, y);
    return [round(u), round(v)];
  });
  on.area('figure', points, box);
};

/** The child from above: a head 18 cm deep, shoulders 24 cm wide. */
export const fromOver = (on: Pen, x: number, y: number, scale: number): void => {
  const oval = (rx: number, ry: number): string =>
    `M${round(x)} ${round(y - ry)}a${round(rx)} ${round(ry)} 0 1 1-.001 0Z`.replace(
      '-.001',
      ' -.001',
    );
  on.path('figure', oval(0.07 * scale, 0.12 * scale), true);
  on.path('figure', oval(0.09 * scale, 0.075 * scale), true);
};
