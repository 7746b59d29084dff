import { DAY, readClock, readSpans, writeClock } from '../../sitting/day/clock.ts';
import type { DayTexts } from '../../sitting/day/kept-day.ts';
import type { WriteTime } from './texts.ts';

/** How a reader’s language writes times; the midnight that ends a day is 24:00 where hours run to 23. */
export const clockOf = (languages: readonly string[]): WriteTime => {
  const parts = { hour: 'numeric', minute: '2-digit', timeZone: 'UTC' } as const;
  const clock = new Intl.DateTimeFormat([...languages], parts);
  if (clock.resolvedOptions().hour12) return (minutes) => clock.format(minutes * 60_000);
  const [day, midnight] = (['h23', 'h24'] as const).map(
    (hourCycle) =>
      new Intl.DateTimeFormat([...languages], { ...parts, hour: '2-digit', hourCycle }),
  );
  return (minutes) => (minutes === DAY ? midnight : day)?.format(minutes * 60_000) ?? '';
};

/** A way of writing times that a field can read back; where a language’s own cannot be, the plain 24-hour one. */
export const typedClock = (time: WriteTime): WriteTime =>
  [0, 570, 750, 870, 1439].every((at) => readClock(time(at)) === at) ? time : writeClock;

const respell = (text: string, time: WriteTime): string => {
  const at = readClock(text);
  return at === undefined ? text : time(at);
};
const respellSpans = (text: string, time: WriteTime): string =>
  readSpans(text)
    ?.map(({ start, end }) => `${time(start)}–${time(end)}`)
    .join('; ') ?? text;

/** The same texts with their times as a reader writes them. What cannot be read stays as it is. */
export const inClock = ({ frame, rows }: DayTexts, time: WriteTime): DayTexts => ({
  frame: {
    ...frame,
    start: respell(frame.start, time),
    end: respell(frame.end, time),
    breaks: respellSpans(frame.breaks, time),
  },
  rows: rows.map((row) => ({
    ...row,
    naps: respellSpans(row.naps, time),
    wish: respell(row.wish, time),
  })),
});
