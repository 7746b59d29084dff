import type { Sheet } from '~/drawing/sheet.ts';

const LETTER = 6.5;

/** Pairs of words on a sheet that lie over one another, each word as wide as the drawings take it to be. */
export const overlaps = (sheet: Sheet): string[] => {
  const boxes = sheet.marks.flatMap((mark) => {
    if (mark.kind !== 'text') return [];
    const width = mark.text.length * LETTER;
    const left = mark.x - width * { start: 0, middle: 0.5, end: 1 }[mark.anchor ?? 'start'];
    return [{ text: mark.text, left, right: left + width, top: mark.y - 9, bottom: mark.y + 3 }];
  });
  return boxes.flatMap((a, i) =>
    boxes
      .slice(i + 1)
      .filter(
        (b) =>
          a.left < b.right - 0.01 &&
          b.left < a.right - 0.01 &&
          a.top < b.bottom - 0.01 &&
          b.top < a.bottom - 0.01,
      )
      .map((b) => `“${a.text}” over “${b.text}”`),
  );
};
