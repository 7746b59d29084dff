import {
  readClock,
  readCounts,
  readLength,
  readSpans,
  writeClock,
  type Span,
} from '../../sitting/day/clock.ts';
import { dayPlan, DayError, type DayPlan } from '../../sitting/day/day-plan.ts';
import type { DayTexts, FrameKey } from '../../sitting/day/kept-day.ts';

/** How times are written for this reader. */
export type WriteTime = (minutes: number) => string;

/** A sentence beside a field: of the frame by its key, of a row by `row/key`. */
export type Troubles = ReadonlyMap<string, string>;

const quote = (text: string): string => `“${text.length > 40 ? `${text.slice(0, 40)}…` : text}”`;

/**
 * Reads what stands in the fields and plans the day.
 *
 * Model: each text is read by itself, so that every field that is wrong says so; the day is planned once all are right.
 * Throws: nothing; what is wrong is in `troubles`, and then there is no plan.
 */
export const planOf = (
  { frame, rows }: DayTexts,
  time: WriteTime = writeClock,
): { readonly plan?: DayPlan; readonly troubles: Troubles } => {
  const troubles = new Map<string, string>();
  const refuse = (key: string, message: string): undefined => {
    troubles.set(key, message);
    return undefined;
  };

  const clock = (key: string, text: string): string | undefined => {
    const at = readClock(text);
    if (at !== undefined) return writeClock(at);
    refuse(
      key,
      `${quote(text)} is no time of day. Write hours and minutes from ${writeClock(0)} to ${writeClock(1440)}, such as ${time(570)}.`,
    );
    return undefined;
  };
  const length = (key: FrameKey): number | undefined =>
    readLength(frame[key]) ??
    refuse(key, `${quote(frame[key])} is no length of time. Write whole minutes, such as 20.`);
  const spans = (key: string, text: string): readonly object[] | undefined =>
    readSpans(text)?.map(({ start, end }: Span) => ({
      start: writeClock(start),
      end: writeClock(end),
    })) ??
    refuse(
      key,
      `${quote(text)} is no time from–to. Write both ends, such as ${time(750)}–${time(840)}; put a semicolon between two.`,
    );
  const afters = (): readonly number[] | undefined =>
    readCounts(frame.after) ??
    refuse(
      'after',
      `${quote(frame.after)} is no count of sittings. Write whole numbers, such as 4; 8, or leave it empty.`,
    );
  // What is no single number goes on as it was typed, and is refused with it.
  const ageOf = (text: string): number | string => {
    const [age, ...more] = readCounts(text) ?? [];
    return age === undefined || more.length > 0 ? text : age;
  };

  const change = frame.after.trim() === '' ? 1 : length('change');
  const raw = {
    date: frame.date,
    start: clock('start', frame.start),
    end: clock('end', frame.end),
    slot: length('slot'),
    buffer: length('buffer'),
    'nap-margin': length('margin'),
    breaks: spans('breaks', frame.breaks),
    changeovers: afters()?.map((after) => ({ after, length: change })),
    bookings: rows.map(({ alias, age, naps, wish }, i) => ({
      alias,
      ...(age.trim() !== '' && { age: ageOf(age) }),
      naps: spans(`${i}/naps`, naps),
      ...(wish.trim() !== '' && { wish: clock(`${i}/wish`, wish) }),
    })),
  };
  if (troubles.size > 0) return { troubles };
  try {
    return { plan: dayPlan(raw, time), troubles };
  } catch (error) {
    if (!(error instanceof DayError)) throw error;
    troubles.set(fieldAt(error.at), error.message);
    return { troubles };
  }
};

/** Which field a value of the plan’s input stands in. */
const fieldAt = (at: string): string => {
  const [, first = '', second = '', third = ''] = at.split('/');
  if (first === 'bookings') return `${second}/${third === '' ? 'alias' : third}`;
  if (first === 'changeovers') return third === 'length' ? 'change' : 'after';
  return first === 'nap-margin' ? 'margin' : first;
};
