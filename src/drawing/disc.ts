import type { Pen } from './pen.ts';
import type { Role } from './sheet.ts';

/** Finer than any printer, and the same on every machine. */
const fixed = (x: number): string => String(Number(x.toFixed(6)));

/** A circle about a place. */
export const disc = (
  on: Pen,
  role: Role,
  x: number,
  y: number,
  radius: number,
  filled = false,
): void => {
  const arc = `A${fixed(radius)} ${fixed(radius)} 0 0 1`;
  const [left, right, level] = [fixed(x - radius), fixed(x + radius), fixed(y)];
  on.path(role, `M${left} ${level}${arc} ${right} ${level}${arc} ${left} ${level}Z`, filled);
};
