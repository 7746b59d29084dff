import { daysTo, readDate } from './civil.ts';
import type { DayPlan } from './day-plan.ts';
import { writeMoment, zoneLines } from './zone.ts';

/** What a calendar file needs beside the plan; all of it is handed in, so that the same plan makes the same file. */
export interface CalendarOptions {
  /** When the file is made, in milliseconds since 1970. */
  readonly stamp: number;
  /**
   * What tells this day's entries from all others in the world and is the same each time they are saved, so that a
   * calendar replaces them: letters, digits and hyphens, drawn at random. It must not say whose day it is.
   */
  readonly series: string;
  /** A name of the time zone database. Without one the times float: they are whatever the clock on the wall says. */
  readonly zone?: string;
}

const OCTETS = 75;

/** How many octets a sign takes in UTF-8. */
const octets = (sign: string): number => {
  const code = sign.codePointAt(0) ?? 0;
  return code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
};

/**
 * Folds a line so that none is longer than 75 octets, its break not counted, and no sign is cut in two.
 * Source: RFC 5545, 3.1
 * @example fold('SUMMARY:short') // 'SUMMARY:short'
 */
export const fold = (line: string): string => {
  let folded = '';
  let length = 0;
  for (const sign of line) {
    const size = octets(sign);
    if (length + size > OCTETS) {
      folded += '\r\n ';
      length = 1;
    }
    folded += sign;
    length += size;
  }
  return folded;
};

/**
 * Writes a text value: backslash, semicolon, comma and line breaks escaped, other control signs left out.
 * Source: RFC 5545, 3.3.11
 * @example escapeText('a,b') // 'a\\,b'
 */
export const escapeText = (text: string): string =>
  text
    .replace(/[\\;,]/g, (sign) => `\\${sign}`)
    .replace(/\r\n|[\r\n\u2028\u2029]/g, '\\n')
    // eslint-disable-next-line no-control-regex
    .replace(/[\u0000-\u0008\u000b-\u001f\u007f]/g, '');

/**
 * A day's sittings as a calendar file.
 *
 * Model: one event for each slot that is taken, under the booking's alias and nothing else: no age, no nap. Floating
 * times, or the clock of a zone, whose rules for the year go with it. A sitting that ends at midnight ends on the next
 * day. The identity of an event is the series, the date and the booking's place on the list.
 * Throws: RangeError for an unknown zone, a series that could say more than it should, or a stamp that is no time.
 * Source: RFC 5545
 */
export const icalendar = (
  { day, slots }: DayPlan,
  { stamp, series, zone }: CalendarOptions,
): string => {
  const date = readDate(day.date);
  if (!date)
    throw new RangeError(`The date is “${day.date}”. It must be year-month-day. Try 2026-11-28.`);
  if (!/^[A-Za-z0-9-]{8,64}$/.test(series))
    throw new RangeError(
      `The series is “${series.slice(0, 40)}”. It must be 8 to 64 letters, digits and hyphens. Try a random UUID.`,
    );
  if (!(stamp >= 0 && stamp < 253_402_300_800_000))
    throw new RangeError(
      `The stamp is ${stamp}. It must be milliseconds since 1970, before the year 10000. Try the time now.`,
    );
  const midnight = daysTo(date) * 86_400;
  const moment = (minutes: number): string =>
    `${zone === undefined ? '' : `;TZID=${zone}`}:${writeMoment(midnight + minutes * 60)}`;
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Sitting by Numbers//Day plan//EN',
    'CALSCALE:GREGORIAN',
    ...(zone === undefined ? [] : zoneLines(zone, date.year)),
    ...slots.flatMap(({ start, end, booking }) => {
      const booked = booking === undefined ? undefined : day.bookings[booking];
      if (booking === undefined || !booked) return [];
      return [
        'BEGIN:VEVENT',
        `UID:${series}-${day.date.replaceAll('-', '')}-${booking + 1}`,
        `DTSTAMP:${writeMoment(stamp / 1000)}Z`,
        `DTSTART${moment(start)}`,
        `DTEND${moment(end)}`,
        `SUMMARY:${escapeText(booked.alias)}`,
        'CLASS:PRIVATE',
        'END:VEVENT',
      ];
    }),
    'END:VCALENDAR',
  ];
  return lines.map((line) => `${fold(line)}\r\n`).join('');
};
