import type { Digits } from '../formula/record.ts';
import { unitFor, writeQuantity, type Style } from '../formula/notation/write.ts';
import { clip, type Box, type Point } from './clip.ts';
import type { Mark, Role } from './sheet.ts';

/** Every sheet is one column wide; text is set 13 units high and stays in. */
export const WIDTH = 360;
/** A wide letter's advance at that size; what room a text is given. */
const LETTER = 6.5;

export const widthOf = (text: string): number => text.length * LETTER;

/** Six decimals: finer than any printer, and the same on every machine. */
const fixed = (x: number): number => Math.round(x * 1e6) / 1e6;

const through = (points: readonly Point[]): string =>
  `M${points.map((at) => `${fixed(at[0])} ${fixed(at[1])}`).join('L')}`;

/** Collects a sheet's marks in the order they are laid down. */
export const pen = (style: Style) => {
  const marks: Mark[] = [];
  const path = (role: Role, d: string, filled = false): void => {
    marks.push({ kind: 'path', d, role, filled });
  };
  return {
    marks,
    style,
    path,
    /** A line through points; in a box only what lies in it. */
    line(role: Role, points: readonly Point[], box?: Box): void {
      const kept = box ? clip(points, box) : points;
      if (kept.length > 1) path(role, through(kept));
    },
    /** A filled outline without a line round it. */
    area(role: Role, points: readonly Point[], box?: Box): void {
      const kept = box ? clip(points, box) : points;
      if (kept.length > 2) path(role, `${through(kept)}Z`, true);
    },
    ring(role: Role, points: readonly Point[], box?: Box): void {
      const kept = box ? clip(points, box) : points;
      if (kept.length > 2) path(role, `${through(kept)}Z`);
    },
    /** What stands on the floor: filled, with a line round it. */
    solid(points: readonly Point[], box?: Box): void {
      this.area('ground', points, box);
      this.ring('ground', points, box);
    },
    /** Words at a place, moved sideways if they would leave the sheet. */
    text(
      x: number,
      y: number,
      text: string,
      anchor: 'start' | 'middle' | 'end' = 'start',
      role?: Role,
    ): void {
      const before = widthOf(text) * { start: 0, middle: 0.5, end: 1 }[anchor];
      const inside = Math.max(3 + before, Math.min(WIDTH - 3 - widthOf(text) + before, x));
      marks.push({
        kind: 'text',
        x: fixed(inside),
        y: fixed(y),
        text,
        anchor,
        ...(role && { role }),
      });
    },
    /** A length as the reader writes lengths: whole centimetres as typed, else three figures. */
    length: (metres: number, digits?: Digits): string =>
      writeQuantity(
        metres,
        unitFor('m', undefined, style),
        digits ?? (Math.abs(metres * 100 - Math.round(metres * 100)) < 1e-6 ? { decimals: 2 } : 3),
        style,
      ),
    /** A focal length or a sensor's side, without digits that say nothing. */
    mm: (metres: number): string => writeQuantity(metres, 'mm', 4, { ...style, exact: true }),
  };
};

export type Pen = ReturnType<typeof pen>;

/** The corners of a box, for those who draw outlines. */
export const corners = ([left, top, right, bottom]: Box): Point[] => [
  [left, top],
  [right, top],
  [right, bottom],
  [left, bottom],
];
