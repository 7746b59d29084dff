import { civilOf, daysTo } from './civil.ts';

/** Seconds of a UTC day. */
const DAY_SECONDS = 86_400;

/** How far a zone's clocks are ahead of UTC, in seconds, at a moment in seconds since 1970. */
export type OffsetAt = (seconds: number) => number;

/**
 * The offsets of a zone, from the rules the browser or Node carries.
 *
 * Model: writes a moment on the zone's clock and takes the moment away.
 * Valid: years 1971 to 9998.
 * Throws: RangeError for a zone that is not known.
 * @example offsetsOf('Europe/Berlin')(Date.UTC(2026, 6, 1) / 1000) // 7200
 */
export const offsetsOf = (zone: string): OffsetAt => {
  let clock: Intl.DateTimeFormat;
  try {
    clock = new Intl.DateTimeFormat('en-US', {
      timeZone: zone,
      calendar: 'gregory',
      numberingSystem: 'latn',
      hourCycle: 'h23',
      year: 'numeric',
      month: 'numeric',
      day: 'numeric',
      hour: 'numeric',
      minute: 'numeric',
      second: 'numeric',
    });
  } catch {
    throw new RangeError(
      `The zone “${zone.slice(0, 40)}” is not known here. It must be a name of the time zone database. Try Europe/London, or no zone.`,
    );
  }
  return (seconds) => {
    const parts = clock.formatToParts(seconds * 1000);
    const of = (type: Intl.DateTimeFormatPartTypes): number =>
      Number(parts.find((part) => part.type === type)?.value);
    const days = daysTo({ year: of('year'), month: of('month'), day: of('day') });
    return (
      days * DAY_SECONDS +
      of('hour') * 3600 +
      of('minute') * 60 +
      of('second') -
      Math.floor(seconds)
    );
  };
};

/** A moment at which a zone's clocks are put forward or back. */
export interface Transition {
  /** Seconds since 1970. */
  readonly at: number;
  readonly from: number;
  readonly to: number;
}

/**
 * When the clocks are changed between two moments.
 *
 * Model: looks at every day, and halves the day in which the offset differs until the second is found. Two changes
 * within one day that undo each other would be missed; no zone has had such.
 */
export const transitionsIn = (offset: OffsetAt, from: number, to: number): Transition[] => {
  const found: Transition[] = [];
  for (let low = from; low < to; low += DAY_SECONDS) {
    const high = Math.min(to, low + DAY_SECONDS);
    const [before, after] = [offset(low), offset(high)];
    if (before === after) continue;
    let [early, late] = [low, high];
    while (late - early > 1) {
      const middle = Math.floor((early + late) / 2);
      if (offset(middle) === before) early = middle;
      else late = middle;
    }
    found.push({ at: late, from: before, to: after });
  }
  return found;
};

const pad = (n: number, digits = 2): string => String(n).padStart(digits, '0');

/** A moment as calendar files write it, on a clock that is some seconds ahead of UTC. */
export const writeMoment = (seconds: number, ahead = 0): string => {
  const local = Math.floor(seconds) + ahead;
  const { year, month, day } = civilOf(Math.floor(local / DAY_SECONDS));
  const rest = local - Math.floor(local / DAY_SECONDS) * DAY_SECONDS;
  const time = [Math.floor(rest / 3600), Math.floor(rest / 60) % 60, rest % 60];
  return `${pad(year, 4)}${pad(month)}${pad(day)}T${time.map((n) => pad(n)).join('')}`;
};

/** An offset as calendar files write it: +0200, −0330 with a plain minus, seconds only where there are any. */
const writeOffset = (seconds: number): string => {
  const size = Math.abs(seconds);
  const rest = size % 60 === 0 ? '' : pad(size % 60);
  return `${seconds < 0 ? '-' : '+'}${pad(Math.floor(size / 3600))}${pad(Math.floor(size / 60) % 60)}${rest}`;
};

/**
 * A zone's clock over one year as the lines of a VTIMEZONE.
 *
 * Model: one observance for the year's first moment and one for each change of the clocks in it. Whatever is ahead of
 * the year's least offset is called daylight time.
 * Throws: RangeError for a zone that is not known.
 * Source: RFC 5545, 3.6.5
 */
export const zoneLines = (zone: string, year: number): readonly string[] => {
  const offset = offsetsOf(zone);
  // The year as the zone's own clock begins and ends it.
  const newYear = (of: number): number => {
    const utc = daysTo({ year: of, month: 1, day: 1 }) * DAY_SECONDS;
    return utc - offset(utc);
  };
  const first = newYear(year);
  const start = offset(first);
  const all = [
    { at: first, from: start, to: start },
    ...transitionsIn(offset, first, newYear(year + 1)),
  ];
  const least = Math.min(...all.map(({ to }) => to));
  return [
    'BEGIN:VTIMEZONE',
    `TZID:${zone}`,
    ...all.flatMap(({ at, from, to }) => {
      const name = to > least ? 'DAYLIGHT' : 'STANDARD';
      return [
        `BEGIN:${name}`,
        `DTSTART:${writeMoment(at, from)}`,
        `TZOFFSETFROM:${writeOffset(from)}`,
        `TZOFFSETTO:${writeOffset(to)}`,
        `END:${name}`,
      ];
    }),
    'END:VTIMEZONE',
  ];
};
