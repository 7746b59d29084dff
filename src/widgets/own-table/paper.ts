import type { Line } from './lines.ts';
import { plant, type Branch } from './tree.ts';

/** Characters of the small print that fit across A4 and Letter between their margins, and what a cell adds. */
const ACROSS = 112;
const GAP = 1.6;

const isBranch = (child: Branch | string): child is Branch => typeof child !== 'string';

/** The same row of headings with its first cell and some of the others. */
const cut = (row: Branch, from: number, to: number, whole: boolean): Branch => {
  const cells = row.children.filter(isBranch);
  const [first, ...rest] = cells;
  return { ...row, children: whole && first ? [first, ...rest.slice(from, to)] : cells.slice(from, to) }; // prettier-ignore
};

/**
 * A table that is wider than a sheet, as tables that fit on one, each with its headings. Steps with several results
 * under them are kept together.
 * @returns none where the table fits as it is
 */
export const paperOf = (head: readonly Branch[], lines: readonly Line[]): readonly Element[] => {
  const [caption, , thead] = head;
  const rows = thead?.children.filter(isBranch) ?? [];
  const columns = lines[0]?.texts.length ?? 0;
  const most = (texts: readonly string[]): number =>
    texts.reduce((longest, { length }) => Math.max(longest, length), 0);
  const group = rows.length > 1 ? columns / Math.max(1, (rows[0]?.children.length ?? 2) - 1) : 1;
  const headings = (rows.at(-1)?.children ?? []).map((one) =>
    isBranch(one) ? (one.children[0] as string) : one,
  );
  const cell = Math.max(most(lines.flatMap(({ texts }) => texts)), most(headings.slice(1))) + GAP;
  const side = most(lines.map(({ heading }) => heading)) + GAP;
  const fit = Math.max(group, Math.floor((ACROSS - side) / cell / group) * group);
  if (!caption || fit >= columns) return [];
  return Array.from({ length: Math.ceil(columns / fit) }, (_none, i) => {
    const [from, to] = [i * fit, Math.min(columns, (i + 1) * fit)];
    const table = document.createElement('table');
    const headed = rows.map((row, at) =>
      rows.length === 1
        ? cut(row, from, to, true)
        : at === 0
          ? cut(row, from / group, to / group, true)
          : cut(row, from, to, false),
    );
    plant(table, [
      ...(i === 0 ? [{ ...caption, attributes: {} }] : []),
      { name: 'thead', attributes: {}, children: headed },
      {
        name: 'tbody',
        attributes: {},
        children: lines.map(({ heading, texts }) => ({
          name: 'tr',
          attributes: {},
          children: [
            { name: 'th', attributes: { scope: 'row' }, children: [heading] },
            ...texts.slice(from, to).map((text) => ({ name: 'td', attributes: {}, children: [text] })), // prettier-ignore
          ],
        })),
      },
    ]);
    return table;
  });
};
