/**
 * Gives every row a column of its own so that the costs together are least.
 *
 * Model: shortest augmenting paths over a square of costs (the method of Kuhn and Munkres): exact, whatever the size.
 * Of several assignments that cost the same it takes the one in which the first row has the earliest column, then the
 * second, and so on. Any cheapest assignment lies on the pairs whose cost equals the sum of the two prices found on the
 * way, so this choice needs no second search for costs.
 * Valid: whole costs, small enough that their sums are exact; as many columns as rows, or more.
 * @example assign([[2, 1], [1, 0]]) // [0, 1]: both ways cost 2, and the first row goes first
 */
export const assign = (costs: readonly (readonly number[])[]): readonly number[] => {
  const rows = costs.length;
  const n = Math.max(rows, ...costs.map((row) => row.length));
  // Rows that stand for nobody take the columns left over.
  const cost = (row: number, column: number): number => costs[row]?.[column] ?? 0;
  const rowPrice = new Array<number>(n).fill(0);
  const columnPrice = new Array<number>(n).fill(0);
  const holder = new Array<number>(n).fill(-1);
  const slack = (row: number, column: number): number =>
    cost(row, column) - (rowPrice[row] as number) - (columnPrice[column] as number);

  for (let row = 0; row < n; row += 1) {
    const far = new Array<number>(n).fill(Infinity);
    const before = new Array<number>(n).fill(-1);
    const done = new Array<boolean>(n).fill(false);
    let at = row;
    let last = -1;
    let length = 0;
    for (;;) {
      let next = -1;
      for (let column = 0; column < n; column += 1) {
        if (done[column]) continue;
        const through = length + slack(at, column);
        if (through < (far[column] as number)) {
          far[column] = through;
          before[column] = last;
        }
        if (next < 0 || (far[column] as number) < (far[next] as number)) next = column;
      }
      length = far[next] as number;
      last = next;
      if (holder[next] === -1) break;
      done[next] = true;
      at = holder[next] as number;
    }
    // Prices move so that every step of the path is tight.
    rowPrice[row] = (rowPrice[row] as number) + length;
    for (let column = 0; column < n; column += 1)
      if (done[column]) {
        const by = length - (far[column] as number);
        columnPrice[column] = (columnPrice[column] as number) - by;
        const held = holder[column] as number;
        rowPrice[held] = (rowPrice[held] as number) + by;
      }
    for (let column = last; column >= 0;) {
      const from = before[column] as number;
      holder[column] = from < 0 ? row : (holder[from] as number);
      column = from;
    }
  }

  const place = new Array<number>(n).fill(-1);
  holder.forEach((row, column) => (place[row] = column));

  /** Finds a row a tight column other than those taken, moving later rows on; changes nothing if there is none. */
  const settle = (row: number, first: number, wanted: number): boolean => {
    const seen = new Set<number>([wanted]);
    const move = (one: number): boolean => {
      for (let column = 0; column < n; column += 1) {
        if (seen.has(column) || slack(one, column) !== 0) continue;
        const held = holder[column] as number;
        // Rows before the first are settled and keep what they have.
        if (held >= 0 && held < first) continue;
        seen.add(column);
        if (held < 0 || move(held)) {
          holder[column] = one;
          place[one] = column;
          return true;
        }
      }
      return false;
    };
    return move(row);
  };

  for (let row = 0; row < rows; row += 1)
    for (let column = 0; column < (place[row] as number); column += 1) {
      const held = holder[column] as number;
      if (held < row || slack(row, column) !== 0) continue;
      const old = place[row] as number;
      holder[old] = -1;
      if (settle(held, row + 1, column)) {
        holder[column] = row;
        place[row] = column;
        break;
      }
      holder[old] = row;
    }
  return place.slice(0, rows);
};
