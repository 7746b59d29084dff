import type { Role, Sheet } from '~/drawing/sheet.ts';

/** The circles of a role, in the order they were drawn: middle and radius, read from their arcs alone. */
export const discs = (
  sheet: Sheet,
  role: Role,
  filled = false,
): { readonly x: number; readonly y: number; readonly radius: number }[] =>
  sheet.marks.flatMap((mark) => {
    if (mark.kind !== 'path' || mark.role !== role || (mark.filled ?? false) !== filled) return [];
    const [, left, y, radius] =
      /^M([-\d.]+) ([-\d.]+)A([\d.]+) [\d.]+ 0 0 1 /.exec(mark.d)?.map(Number) ?? [];
    if (left === undefined || y === undefined || radius === undefined || !mark.d.endsWith('Z'))
      return [];
    return [{ x: left + radius, y, radius }];
  });

/** The height of a sheet's text, to find what stands on the same row. */
export const placeOf = (sheet: Sheet, text: string): { readonly x: number; readonly y: number } => {
  const mark = sheet.marks.find((one) => one.kind === 'text' && one.text === text);
  return mark?.kind === 'text' ? mark : { x: Number.NaN, y: Number.NaN };
};
