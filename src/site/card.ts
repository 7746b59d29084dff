import { startsOf } from '../formula/starts.ts';
import type { Panel } from './quick-table.ts';
import { quickTables, type QuickTableEntry } from './quick-tables.ts';

/** The faces of the folded card that hold a table; the first face holds what is true of all of them. */
export const FACES = [
  { id: 'left', name: 'Inside left', first: 'framing-distance' },
  { id: 'right', name: 'Inside right', first: 'depth-of-field' },
  { id: 'back', name: 'Back', first: 'flash-power' },
] as const;

/** Formats a card can be printed for, where a table knows several. */
export const FORMATS = ['36x24', '23.6x15.8', '17.3x13'] as const;

export interface CardTable extends QuickTableEntry {
  /** The grids to choose between: by format where the table has formats, and by units. */
  readonly panels: readonly {
    readonly panel: Panel;
    readonly format: string;
    readonly system: string;
  }[];
}

/** Every quick table, cut down to what a face of the card holds. */
export const cardTables = async (): Promise<readonly CardTable[]> =>
  (await quickTables()).map((entry) => {
    const { table } = entry;
    const byFormat = table.file.each?.input === 'format' ? table.file.each.values : undefined;
    // Of what else a table lets choose, such as an ISO, the card has what the plate begins with.
    const starts = startsOf(table.formula);
    const usual = table.choices.findIndex(({ given }) =>
      Object.entries(given).every(([key, value]) => starts[key] === value),
    );
    const formatOf = (panel: Panel): string | undefined =>
      byFormat
        ? FORMATS.find((format) => format === byFormat[panel.choice])
        : panel.choice === Math.max(usual, 0)
          ? 'all'
          : undefined;
    return {
      ...entry,
      panels: table.panels.flatMap((panel) => {
        const format = formatOf(panel);
        const system = table.systems.length > 1 ? panel.system : 'both';
        return format === undefined ? [] : [{ panel, format, system }];
      }),
    };
  });
