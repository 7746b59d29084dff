/** What the table under the reader's hand can be asked. */
export interface Grid {
  /** Where the plate with a cell's values is; undefined where there is no such cell. */
  readonly address: (line: number, column: number) => string | undefined;
}

const HEAD_ROWS = 'thead tr';

const cellAt = (target: EventTarget | null): HTMLTableCellElement | null =>
  target instanceof Element ? target.closest('td') : null;

/** Lines of a table that may have several bodies, counted from its first. */
const lines = (table: HTMLTableElement): HTMLCollectionOf<HTMLTableRowElement> => table.rows;

/**
 * Brings a table's cells to life: the row and the column under a pointer, a finger or the focus stand out, arrow keys go
 * from cell to cell, and a cell is a link once it is touched, since ten thousand links would be ten thousand stops.
 */
export const bringGrid = (frame: HTMLElement, grid: () => Grid | undefined): void => {
  let marked: readonly Element[] = [];
  const mark = (cell: HTMLTableCellElement | null): void => {
    for (const one of marked) one.classList.remove('at');
    marked = [];
    const row = cell?.parentElement;
    const table = cell?.closest('table');
    if (!cell || !row || !table) return;
    const at = cell.cellIndex;
    // Where results stand under a step, the last line of headings is the one with a cell for each column.
    const heads = [...table.querySelectorAll<HTMLTableRowElement>(HEAD_ROWS)];
    const last = heads.at(-1);
    const found = [
      row,
      table.querySelectorAll('col')[at],
      last?.cells[heads.length > 1 ? at - 1 : at],
    ].filter((one) => one !== undefined);
    marked = found;
    for (const one of found) one.classList.add('at');
    // The columns of a large table are no boxes: a band is painted where the cell's would be.
    if (!table.classList.contains('many')) return;
    const [box, around] = [cell.getBoundingClientRect(), table.getBoundingClientRect()];
    table.style.setProperty('--at', `${box.left - around.left}px`);
  };

  /** Makes a cell the link it stands for, and hands the link on. */
  const arm = (cell: HTMLTableCellElement): HTMLAnchorElement | null => {
    const there = cell.querySelector('a');
    if (there) return there;
    const table = cell.closest('table');
    const row = cell.parentElement;
    if (!table || !(row instanceof HTMLTableRowElement)) return null;
    const line = row.rowIndex - table.querySelectorAll(HEAD_ROWS).length;
    const href = grid()?.address(line, cell.cellIndex - 1);
    if (href === undefined) return null;
    const link = document.createElement('a');
    link.href = href;
    link.tabIndex = -1;
    link.append(...cell.childNodes);
    cell.append(link);
    return link;
  };

  /** One cell of all is a stop for Tab: the one the reader was at last. */
  let stop: HTMLElement | undefined;
  const visit = (cell: HTMLTableCellElement, focus: boolean): void => {
    const link = arm(cell);
    if (!link) return;
    if (stop && stop !== link) stop.tabIndex = -1;
    link.tabIndex = 0;
    stop = link;
    if (focus) {
      link.focus({ preventScroll: true });
      reveal(cell);
    }
  };

  /** Scrolls a cell out from under the headings that stand still. */
  const reveal = (cell: HTMLTableCellElement): void => {
    const box = cell.getBoundingClientRect();
    const around = frame.getBoundingClientRect();
    const row = cell.parentElement;
    const side = row?.firstElementChild?.getBoundingClientRect().width ?? 0;
    const head = cell.closest('table')?.tHead?.getBoundingClientRect().height ?? 0;
    const beyond = (start: number, end: number, low: number, high: number): number =>
      start < low ? start - low : end > high ? end - high : 0;
    frame.scrollBy({
      left: beyond(box.left, box.right, around.left + side, around.right),
      top: beyond(box.top, box.bottom, around.top + head, around.bottom),
      behavior: 'instant',
    });
    cell.scrollIntoView({ block: 'nearest', inline: 'nearest', behavior: 'instant' });
  };

  frame.addEventListener('pointerover', ({ target }) => {
    const cell = cellAt(target);
    mark(cell);
    if (cell) arm(cell);
  });
  frame.addEventListener('pointerleave', () => {
    mark(cellAt(document.activeElement));
  });
  frame.addEventListener('focusin', ({ target }) => {
    const cell = cellAt(target);
    mark(cell);
    if (cell) visit(cell, false);
  });
  frame.addEventListener('focusout', () => {
    mark(null);
  });
  // A finger lifts before anything is hovered over: a cell that was no link yet is followed here.
  frame.addEventListener('click', (event) => {
    const cell = cellAt(event.target);
    if (!cell || (event.target instanceof Element && event.target.closest('a'))) return;
    arm(cell)?.click();
  });

  frame.addEventListener('keydown', (event) => {
    const cell = cellAt(event.target);
    const table = cell?.closest('table');
    const row = cell?.parentElement;
    if (!cell || !table || !(row instanceof HTMLTableRowElement)) return;
    if (event.altKey || event.metaKey || event.shiftKey) return;
    const first = table.querySelectorAll(HEAD_ROWS).length;
    const all = lines(table);
    const last = all.length - 1;
    const right = row.cells.length - 1;
    const at = row.rowIndex;
    const page = Math.max(1, Math.floor(frame.clientHeight / row.offsetHeight) - 2);
    const far = event.ctrlKey;
    const moves: Readonly<Record<string, readonly [number, number]>> = {
      ArrowUp: [at - 1, cell.cellIndex],
      ArrowDown: [at + 1, cell.cellIndex],
      ArrowLeft: [at, cell.cellIndex - 1],
      ArrowRight: [at, cell.cellIndex + 1],
      PageUp: [at - page, cell.cellIndex],
      PageDown: [at + page, cell.cellIndex],
      Home: [far ? first : at, 1],
      End: [far ? last : at, right],
    };
    const to = moves[event.key];
    if (!to || (far && !event.key.startsWith('H') && event.key !== 'End')) return;
    event.preventDefault();
    const [line, column] = [
      Math.min(Math.max(to[0], first), last),
      Math.min(Math.max(to[1], 1), right),
    ];
    const next = all[line]?.cells[column];
    if (next instanceof HTMLTableCellElement) visit(next, true);
  });

  /** A new table: its first cell is where Tab stops. */
  const settle = (): void => {
    for (const link of frame.querySelectorAll<HTMLAnchorElement>('td a')) link.tabIndex = -1;
    const cell = frame.querySelector('td');
    if (cell) visit(cell, false);
  };
  frame.addEventListener('own-table', settle);
  settle();
};
