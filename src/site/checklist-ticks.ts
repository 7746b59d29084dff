/** Ticks on checklists, as a value: which items of which list. Written by `tick-lists.ts`, and only on a tick. */
import type { Kept } from './storage.ts';

/** Permanent item ids by the list’s id; a list without a tick is not in it. */
export type Ticks = Readonly<Partial<Record<string, readonly string[]>>>;

const ID = /^[a-z0-9]+(-[a-z0-9]+)*$/;
const MOST = 200;

const isId = (raw: unknown): raw is string =>
  typeof raw === 'string' && raw.length <= 64 && ID.test(raw);
const isTicks = (raw: unknown): raw is Ticks =>
  typeof raw === 'object' &&
  raw !== null &&
  !Array.isArray(raw) &&
  Object.keys(raw).length <= MOST &&
  Object.entries(raw).every(
    ([list, items]: [string, unknown]) =>
      isId(list) && Array.isArray(items) && items.length <= MOST && items.every(isId),
  );

export const checklistTicks: Kept<Ticks> = {
  thing: 'checklist',
  version: 1,
  accept: (raw) => (isTicks(raw) ? raw : undefined),
};

/** The items of one list that are ticked. */
export const tickedIn = (ticks: Ticks, list: string): readonly string[] =>
  Object.hasOwn(ticks, list) ? (ticks[list] ?? []) : [];

/** One list’s ticks taken over, the others as they were; undefined once no list has any. */
export const withTicks = (
  ticks: Ticks,
  list: string,
  items: readonly string[],
): Ticks | undefined => {
  const others = Object.entries(ticks).filter(([other]) => other !== list);
  const all = items.length > 0 ? [...others, [list, [...new Set(items)]] as const] : others;
  return all.length > 0 ? Object.fromEntries(all) : undefined;
};

/** One item set or taken off. */
export const withTick = (
  ticks: Ticks,
  list: string,
  item: string,
  on: boolean,
): Ticks | undefined => {
  const others = tickedIn(ticks, list).filter((one) => one !== item);
  return withTicks(ticks, list, on ? [...others, item] : others);
};
