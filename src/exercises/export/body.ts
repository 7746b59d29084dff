import { escape, list, paragraphs, table } from './html.ts';
import type { Item } from './item.ts';

/**
 * What stands over the fields of an item, as HTML that is XML too.
 * @param src where its drawing is found
 */
export const bodyOf = ({ text, lines, figure }: Item, src: string): string => {
  const shown =
    figure === undefined
      ? ''
      : figure.show === 'table'
        ? table(figure.table)
        : `<p><img src="${escape(src)}" alt="${escape(figure.drawing.says)}" width="${Math.round(figure.drawing.width)}" height="${Math.round(figure.drawing.height)}"/></p>`;
  return paragraphs(text) + list(lines) + shown;
};

/** What the person who marks an open answer goes by. */
export const rubricOf = (
  rubric: readonly { readonly text: string; readonly points: number }[],
  solution: string,
): string =>
  list(
    rubric.map(({ text, points }) => `${text} (${points} ${points === 1 ? 'point' : 'points'})`),
  ) + paragraphs(solution);
