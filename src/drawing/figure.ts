import type { Box, Point } from './clip.ts';
import type { Pen } from './pen.ts';
import type { Role } from './sheet.ts';

// Outlines of our own, in centimetres over the seat, y up. A child of two: sitting height 51, eyes at 41, head 18 high and
// 18 deep, shoulders 24 wide, all from memory; a test holds them against the harbour set's table.
// A front view lists its right half, from the crown down; a side view looks left, its eye at 0.

export const CHILD =
  '1.5 51 4.6 50.6 7 48.6 8.2 45.4 8.2 42.4 9.2 42.6 9.3 40 8 39 7.4 36.6 5.6 34.2 3.6 33 3 32 3.6 31 7 30.3 10.4 29.4 12.2 27.6 12.6 24.4 13.6 19 13.5 15 12.2 11.6 12.8 10.7 15.4 10.4 17 11.6 19.4 12 20.8 9.6 20.4 5 18.6 1 16 0 13.4 0 12.2 1.8 11.6 4.2 9 4.2 5 2.6 2 2 0 2';
export const CHILD_SIDE =
  '4 51 10 51 16 49 18 41 15 35 13 33 13 31 18 27 20 17 20 3 17 0 -19 0 -22 0 -24 9 -21 10 -18 7 -5 11 0 11 2 13 1 20 4 28 7 31 7 32 3 32 0 33 0 36 -3 38 -1 41 -1 46 0 50';
/** The knitted rabbit that sits in for the child, its eyes where the child's are. */
export const RABBIT =
  '0 50 1 51 1 58 2 66 5 67 7 64 7 54 6 49 10 46 10 39 8 34 5 32 9 31 13 22 13 11 13 7 18 7 19 2 16 0 5 0 2 2 0 2';
export const RABBIT_SIDE =
  '6 50 7 58 9 66 12 68 13 64 12 52 16 48 17 40 14 35 17 29 22 17 22 10 25 10 26 5 22 3 20 0 -8 0 -12 0 -11 5 -5 5 -1 9 0 19 4 28 6 33 0 34 -4 36 -4 40 -1 45 2 49';
/** An adult on their heels beside the child; the shoulder nearer to the child at 0, 47 over the floor. */
export const ADULT =
  '19 82 24 82 28.5 79.5 30.4 75 30.2 72.6 31.4 72.6 31.2 69.6 30 69 28.6 64.6 25.6 61 25.4 58.6 29 56.8 36 55 41 52.6 43 47.6 43.6 39 45.4 30 44.6 23 41.6 17 45.6 13.6 50 8 50.6 3 48 0 30 0 24 1.6 19 1.6 13 0 -3 0 -7.6 0 -8.4 3.4 -6 9 -1 14 2.4 17 0.4 22 -1.2 30 0 40 0 47.6 2.6 52.6 7 55 14 56.8 17.6 58.6 17.4 61 14.4 64.6 13 69 11.8 69.6 11.6 72.6 12.8 72.6 12.6 75 14.5 79.5';

/** The corners of an outline, in metres. */
const read = (outline: string): Point[] => {
  const numbers = outline.split(' ').map((one) => Number(one) / 100);
  return numbers.flatMap((x, i): Point[] => (i % 2 ? [] : [[x, numbers[i + 1] ?? 0]]));
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

/** A front or side outline as it is drawn: its corners softened, in metres over the seat, y up. */
export const outlineOf = (outline: string): Point[] => {
  const half = read(outline);
  const mirrored =
    outline === CHILD || outline === RABBIT ? half.map(([x, y]): Point => [-x, y]).reverse() : [];
  return soften(soften([...half, ...mirrored]));
};

/** Sets a figure down: `at` says where on the sheet a point of the outline falls, in metres over the seat. */
export const figure = (
  on: Pen,
  outline: string,
  at: (x: number, y: number) => Point,
  box?: Box,
): void => {
  const points = outlineOf(outline).map(([x, y]): Point => {
    const [u, v] = at(x, y);
    return [round(u), round(v)];
  });
  on.area('figure', points, box);
};

/** A filled oval about a place. */
export const oval = (
  on: Pen,
  role: Role,
  x: number,
  y: number,
  rx: number,
  ry: number,
  box: Box,
): void =>
  on.area(
    role,
    Array.from({ length: 32 }, (_, i): Point => {
      const turn = (i * Math.PI) / 16;
      return [round(x + rx * Math.cos(turn)), round(y + ry * Math.sin(turn))];
    }),
    box,
  );

/** The child from above, facing left: legs before it, shoulders 24 cm wide, a head 18 cm deep. */
export const fromOver = (on: Pen, x: number, y: number, scale: number, box: Box): void => {
  for (const side of [-1, 1])
    oval(
      on,
      'figure',
      x - 0.14 * scale,
      y + side * 0.075 * scale,
      0.13 * scale,
      0.036 * scale,
      box,
    );
  oval(on, 'figure', x, y, 0.065 * scale, 0.12 * scale, box);
  oval(on, 'figure', x, y, 0.09 * scale, 0.075 * scale, box);
};
