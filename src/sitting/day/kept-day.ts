import { MOST } from './day-plan.ts';

/** What stands in one booking’s fields. */
export interface RowTexts {
  readonly alias: string;
  readonly age: string;
  readonly naps: string;
  readonly wish: string;
}

/** The frame of a day as it stands in its fields; nothing in it is about a child. */
export const FRAME = ['date', 'start', 'end', 'slot', 'buffer', 'breaks', 'after', 'change', 'margin'] as const; // prettier-ignore
export type FrameKey = (typeof FRAME)[number];
export const CELLS = ['alias', 'age', 'naps', 'wish'] as const;
export type CellKey = (typeof CELLS)[number];

/** All that stands in the fields, as typed. */
export interface DayTexts {
  readonly frame: Readonly<Record<FrameKey, string>>;
  readonly rows: readonly RowTexts[];
}

/** A day as it is kept in the browser: its fields, and what its calendar entries are known by. */
export interface KeptDay {
  readonly texts: DayTexts;
  readonly series: string;
}

/** Longest text that a field may hold and be kept. */
const LONGEST = 200;

const isText = (raw: unknown): raw is string => typeof raw === 'string' && raw.length <= LONGEST;
const holds = <K extends string>(raw: unknown, keys: readonly K[]): raw is Record<K, string> =>
  typeof raw === 'object' &&
  raw !== null &&
  keys.every((key) => isText((raw as Record<string, unknown>)[key]));

/** Whether something from outside has the shape of a day’s fields. */
export const isDayTexts = (raw: unknown): raw is DayTexts => {
  if (typeof raw !== 'object' || raw === null) return false;
  const { frame, rows } = raw as Record<string, unknown>;
  return (
    holds(frame, FRAME) &&
    Array.isArray(rows) &&
    rows.length <= MOST.bookings &&
    rows.every((row) => holds(row, CELLS))
  );
};

/** What was kept, if it is sound. */
export const keptDayOf = (raw: unknown): KeptDay | undefined => {
  if (typeof raw !== 'object' || raw === null) return undefined;
  const { texts, series } = raw as Record<string, unknown>;
  return isDayTexts(texts) && typeof series === 'string' && /^[0-9a-f]{32}$/.test(series)
    ? { texts, series }
    : undefined;
};
