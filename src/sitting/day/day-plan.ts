import { assign } from './assign.ts';
import { overlap, writeClock, type Span } from './clock.ts';
import { readDay, type Booking, type Break, type Day } from './day-input.ts';
import { slotsOf } from './slots.ts';

export { DayError, MOST, type Booking, type Break, type Day } from './day-input.ts';

/** What stands against a booking: it sits in or near a nap, it was wished for in a break, or the day is too short. */
export interface Conflict {
  readonly kind: 'nap' | 'break' | 'end';
  /** Which booking, counted from 0 in the order of the list. */
  readonly booking: number;
  readonly says: string;
}

export interface Slot extends Span {
  /** Who sits in it, counted from 0 in the order of the list; undefined while it is free. */
  readonly booking: number | undefined;
}

export interface DayPlan {
  readonly day: Day;
  /** In the order of the day. The number of sittings that fit is how many there are. */
  readonly slots: readonly Slot[];
  readonly changes: readonly Span[];
  readonly conflicts: readonly Conflict[];
}

/** To be left over outweighs any distance from wishes: 40 bookings cannot miss theirs by more than 40 days together. */
const LEFT = 100_000;
/** A conflict outweighs whoever is left over: 40 places on a list add up to 820. */
const CONFLICT = 1000 * LEFT;

/** The naps a stretch meets, their margin counted with them. */
const napsMet = ({ naps }: Booking, at: Span, margin: number): readonly Span[] =>
  naps.filter((nap) => overlap(at, { start: nap.start - margin, end: nap.end + margin }));

/**
 * Plans a day of sittings: lays out the slots, and sets the bookings into them.
 *
 * Model: slots follow one another as early as buffer, changes of the set and breaks allow (`slotsOf`). A booking
 * conflicts with each of its naps that its slot meets, a margin before and after counted in; with a break its wished
 * time lies in; and with the end of the day where no slot is left for it, or where its wish would run past the end. Of
 * all ways to set the bookings into the slots it takes the one with the fewest conflicts; of those, the one that leaves
 * over whoever is furthest down the list (places counted from its end, added up); of those, the least sum of minutes
 * between wished and given starts; of those, the one in which the first booking on the list sits earliest, then the
 * second, and so on. As many bookings sit as there are slots. The search is exact for any number.
 * Valid: what `readDay` reads.
 * Throws: DayError (a RangeError) for a day that cannot be read.
 * Source: common practice, no source; the naps are each child’s own, as told by the family.
 * @param time how times are written in the sentences
 * @example dayPlan({ date: '2026-11-28', start: '09:30', end: '12:00', slot: 30, buffer: 10 }).slots.length // 3
 */
export const dayPlan = (raw: unknown, time: (minutes: number) => string = writeClock): DayPlan => {
  const day = readDay(raw);
  const { bookings, breaks, napMargin: margin, slot: length } = day;
  const { slots, changes, nextEnd } = slotsOf(day);
  const left = Math.max(0, bookings.length - slots.length);

  const place = assign(
    bookings.map((booking, i) => [
      ...slots.map(
        (at) =>
          CONFLICT * napsMet(booking, at, margin).length +
          Math.abs(at.start - (booking.wish ?? at.start)),
      ),
      // Columns after the slots stand for no slot at all; there are as many as must be left over.
      ...Array.from({ length: left }, () => LEFT * (bookings.length - i)),
    ]),
  );

  const span = ({ start, end }: Span): string => `${time(start)} to ${time(end)}`;
  const conflicts = bookings.flatMap((booking, i): readonly Conflict[] => {
    const { alias, wish } = booking;
    const say = (kind: Conflict['kind'], says: string): Conflict => ({ kind, booking: i, says });
    const at = slots[place[i] ?? -1];
    const wished = wish === undefined ? undefined : { start: wish, end: wish + length };
    const inBreak = wished && breaks.find((one: Break) => overlap(wished, one));
    return [
      ...(at ? napsMet(booking, at, margin) : []).map((nap) =>
        say(
          'nap',
          overlap(at as Span, nap)
            ? `${alias} sits from ${span(at as Span)}, in its usual nap from ${span(nap)}.`
            : `${alias} sits from ${span(at as Span)}, less than ${margin} min ${nap.start >= (at as Span).end ? 'before' : 'after'} its usual nap from ${span(nap)}.`,
        ),
      ),
      ...(wished && inBreak
        ? [
            say(
              'break',
              `${alias} would like ${time(wished.start)}, which meets the ${inBreak.name} from ${span(inBreak)}.`,
            ),
          ]
        : []),
      ...(wished && (wished.end > day.end || wished.start < day.start)
        ? [
            say(
              'end',
              wished.start < day.start
                ? `${alias} would like ${time(wished.start)}, before the day starts at ${time(day.start)}.`
                : `${alias} would like ${time(wished.start)}, and ${length} min from then run past the end of the day at ${time(day.end)}.`,
            ),
          ]
        : []),
      ...(at
        ? []
        : [
            say(
              'end',
              nextEnd <= 1440
                ? `${alias} has no slot: one more would end at ${time(nextEnd)}, past the end of the day at ${time(day.end)}.`
                : `${alias} has no slot: one more would end after midnight, past the end of the day at ${time(day.end)}.`,
            ),
          ]),
    ];
  });

  return {
    day,
    slots: slots.map((at, k) => {
      const booking = place.indexOf(k);
      return { ...at, booking: booking < 0 ? undefined : booking };
    }),
    changes,
    conflicts,
  };
};
