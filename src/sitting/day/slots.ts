import { overlap, type Span } from './clock.ts';
import type { Changeover, Day } from './day-input.ts';

/** The first time, from one on, at which a stretch of some length lies in no break. */
const clear = (from: number, length: number, breaks: readonly Span[]): number => {
  let start = from;
  for (;;) {
    const hit = breaks.find((one) => overlap({ start, end: start + length }, one));
    if (hit === undefined) return start;
    start = hit.end;
  }
};

/** What a day offers: places to sit, and when the set is changed between them. */
export interface Slots {
  readonly slots: readonly Span[];
  readonly changes: readonly Span[];
  /** When one more slot would end, had the day no end. */
  readonly nextEnd: number;
}

/**
 * Lays the slots of a day out, each as early as it can be.
 *
 * Model: after a slot comes the buffer, then what changes of the set are due, then the next slot. A slot or a change
 * that would meet a break waits for the end of it; the buffer may run on into a break, which is a rest as well.
 * Valid: a day that `readDay` has read.
 */
export const slotsOf = ({ start, end, slot, buffer, breaks, changeovers }: Day): Slots => {
  const slots: Span[] = [];
  const changes: Span[] = [];
  let free = start;
  for (;;) {
    const due = changeovers
      .filter(({ after }: Changeover) => slots.length > 0 && after === slots.length)
      .reduce((sum, { length }) => sum + length, 0);
    let from = free;
    let change: Span | undefined;
    if (due > 0) {
      const at = clear(free, due, breaks);
      change = { start: at, end: at + due };
      from = change.end;
    }
    const at = clear(from, slot, breaks);
    if (at + slot > end) return { slots, changes, nextEnd: at + slot };
    // The set is changed only for a sitting that comes after.
    if (change) changes.push(change);
    slots.push({ start: at, end: at + slot });
    free = at + slot + buffer;
  }
};
