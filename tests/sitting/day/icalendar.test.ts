import ICAL from 'ical.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dayPlan } from '../../../src/sitting/day/day-plan.ts';
import { escapeText, fold, icalendar } from '../../../src/sitting/day/icalendar.ts';
import { offsetsOf, transitionsIn } from '../../../src/sitting/day/zone.ts';

const STAMP = Date.UTC(2026, 10, 25, 18, 5, 9);
const SERIES = '0123456789abcdef0123456789abcdef';

interface Asked {
  readonly date?: string;
  readonly start?: string;
  readonly end?: string;
  readonly aliases?: readonly string[];
  readonly zone?: string;
}
const fileFor = ({
  date = '2026-11-28',
  start = '09:30',
  end = '12:00',
  aliases = ['Sitting 1', 'Sitting 2'],
  zone,
}: Asked): string => {
  const bookings = aliases.map((alias) => ({
    alias,
    age: 23,
    naps: [{ start: '00:01', end: '00:02' }],
  }));
  const plan = dayPlan({ date, start, end, slot: 30, buffer: 10, bookings });
  return icalendar(plan, { stamp: STAMP, series: SERIES, ...(zone !== undefined && { zone }) });
};

/** A file as an independent parser reads it, its zones known to it. */
const read = (text: string) => {
  const calendar = new ICAL.Component(ICAL.parse(text) as unknown[] as never);
  const zones = new Map(
    calendar.getAllSubcomponents('vtimezone').map((component) => {
      const zone = new ICAL.Timezone(component);
      return [zone.tzid, zone] as const;
    }),
  );
  const events = calendar.getAllSubcomponents('vevent').map((component) => {
    const event = new ICAL.Event(component);
    const at = (time: ICAL.Time): { local: string; utc: string } => {
      const tzid = component.getFirstProperty('dtstart')?.getParameter('tzid');
      const zone = typeof tzid === 'string' ? zones.get(tzid) : undefined;
      if (zone) time.zone = zone;
      return { local: time.toString(), utc: new Date(time.toUnixTime() * 1000).toISOString() };
    };
    return { event, component, start: at(event.startDate), end: at(event.endDate) };
  });
  return { calendar, zones, events };
};

describe('a calendar file', () => {
  it('holds an event for each sitting, read by another parser', () => {
    const { calendar, events } = read(fileFor({}));
    expect(calendar.name).toBe('vcalendar');
    expect(calendar.getFirstPropertyValue('version')).toBe('2.0');
    expect(calendar.getFirstPropertyValue('prodid')).toBeTruthy();
    expect(events.map(({ event }) => event.summary)).toEqual(['Sitting 1', 'Sitting 2']);
    expect(events.map(({ start, end }) => [start.local, end.local])).toEqual([
      ['2026-11-28T09:30:00', '2026-11-28T10:00:00'],
      ['2026-11-28T10:10:00', '2026-11-28T10:40:00'],
    ]);
    for (const { component, event } of events) {
      expect(String(component.getFirstPropertyValue('dtstamp'))).toBe('2026-11-25T18:05:09Z');
      expect(event.uid).toMatch(/^[0-9a-f]{32}-20261128-\d$/);
      expect(
        component
          .getAllProperties()
          .map(({ name }) => name)
          .sort(),
      ).toEqual(['class', 'dtend', 'dtstamp', 'dtstart', 'summary', 'uid']);
    }
  });

  it('floats without a zone: no TZID, no Z but in the stamp', () => {
    const { events, zones } = read(fileFor({}));
    expect(zones.size).toBe(0);
    for (const { event } of events) expect(event.startDate.zone).toBe(ICAL.Timezone.localTimezone);
    expect(fileFor({}).match(/\d{6}Z/g)).toHaveLength(2);
    expect(fileFor({})).not.toContain('TZID');
  });

  it('says nothing of ages and naps, and its identities nothing of anyone', () => {
    const text = fileFor({ aliases: ['Grey seal'] });
    expect(text).not.toMatch(/\b23\b|0001|0002/);
    expect(text.replace(/SUMMARY:Grey seal/, '')).not.toMatch(/grey|seal/i);
  });

  it('is the same each time, so that a calendar replaces what it has', () => {
    expect(fileFor({})).toBe(fileFor({}));
    const uids = (text: string): string[] => read(text).events.map(({ event }) => event.uid);
    expect(uids(fileFor({ aliases: ['A', 'B'], start: '10:00' }))).toEqual(uids(fileFor({})));
    const other = uids(fileFor({ date: '2026-12-05' }));
    expect(other.filter((uid) => uids(fileFor({})).includes(uid))).toEqual([]);
    expect(new Set(uids(fileFor({}))).size).toBe(2);
  });

  it('leaves free slots out, and is whole with nobody booked', () => {
    expect(read(fileFor({ aliases: [] })).events).toEqual([]);
  });

  it('ends a sitting at midnight on the next day, over the end of a year too', () => {
    const { events } = read(
      fileFor({ date: '2026-12-31', start: '23:30', end: '24:00', zone: 'Europe/Berlin' }),
    );
    expect(events[0]?.end).toEqual({
      local: '2027-01-01T00:00:00',
      utc: '2026-12-31T23:00:00.000Z',
    });
  });

  it('ends every line with CRLF and has none longer than 75 octets', () => {
    const text = fileFor({
      aliases: ['ü'.repeat(60), '👶🏽'.repeat(30), 'ب'.repeat(59)],
      zone: 'America/Argentina/ComodRivadavia',
    });
    expect(text.endsWith('\r\n')).toBe(true);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    for (const line of text.split('\r\n')) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
    expect(read(text).events.map(({ event }) => event.summary)).toEqual([
      'ü'.repeat(60),
      '👶🏽'.repeat(30),
      'ب'.repeat(59),
    ]);
  });

  it('escapes what the format uses', () => {
    expect(escapeText('a\\b;c,d\ne\u0007')).toBe('a\\\\b\\;c\\,d\\ne');
    const odd = 'Boat; rope, coil \\n “quay”: END:VEVENT';
    expect(read(fileFor({ aliases: [odd] })).events[0]?.event.summary).toBe(odd);
  });

  it('folds any line so that unfolding gives it back and no octet sequence is cut', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 400 }), (text) => {
        const line = `SUMMARY:${escapeText(text)}`;
        const folded = fold(line);
        expect(folded.replaceAll('\r\n ', '')).toBe(line);
        for (const part of folded.split('\r\n')) {
          expect(Buffer.byteLength(part)).toBeLessThanOrEqual(75);
          expect(part.isWellFormed()).toBe(true);
        }
      }),
    );
  });

  it('keeps any alias through the other parser', () => {
    const alias = fc
      .string({ unit: 'grapheme', minLength: 1, maxLength: 40 })
      .map((text) =>
        Array.from(text)
          .slice(0, 60)
          .join('')
          .replace(/[\p{Cc}\u2028\u2029]/gu, ' ')
          .trim(),
      )
      .filter((text) => text !== '');
    fc.assert(
      fc.property(alias, (text) => {
        expect(read(fileFor({ aliases: [text] })).events[0]?.event.summary).toBe(text);
      }),
    );
  });
});

describe('with a zone', () => {
  // Offsets are the law of each place in 2026, not read from this machine: Berlin +1, +2 from 29 March 1:00 UTC to 25
  // October 1:00 UTC; Sydney +11, +10 from 5 April to 4 October 2:00 standard time; New York −5, −4 from 8 March to 1
  // November; Kathmandu +5:45; Lord Howe +11, +10:30 from 5 April to 4 October.
  it.each([
    ['Europe/Berlin', '2026-03-28', '2026-03-28T08:30:00.000Z'],
    ['Europe/Berlin', '2026-03-29', '2026-03-29T07:30:00.000Z'],
    ['Europe/Berlin', '2026-10-24', '2026-10-24T07:30:00.000Z'],
    ['Europe/Berlin', '2026-10-25', '2026-10-25T08:30:00.000Z'],
    ['Europe/Berlin', '2026-01-01', '2026-01-01T08:30:00.000Z'],
    ['Australia/Sydney', '2026-04-04', '2026-04-03T22:30:00.000Z'],
    ['Australia/Sydney', '2026-04-05', '2026-04-04T23:30:00.000Z'],
    ['Australia/Sydney', '2026-10-03', '2026-10-02T23:30:00.000Z'],
    ['Australia/Sydney', '2026-10-04', '2026-10-03T22:30:00.000Z'],
    ['Australia/Sydney', '2026-01-01', '2025-12-31T22:30:00.000Z'],
    ['America/New_York', '2026-03-08', '2026-03-08T13:30:00.000Z'],
    ['America/New_York', '2026-11-01', '2026-11-01T14:30:00.000Z'],
    ['Asia/Kathmandu', '2026-06-01', '2026-06-01T03:45:00.000Z'],
    ['Australia/Lord_Howe', '2026-06-01', '2026-05-31T23:00:00.000Z'],
    ['UTC', '2026-06-01', '2026-06-01T09:30:00.000Z'],
  ])('%s, %s: half past nine is %s', (zone, date, utc) => {
    const { events, zones } = read(fileFor({ date, zone }));
    expect([...zones.keys()]).toEqual([zone]);
    expect(events[0]?.start).toEqual({ local: `${date}T09:30:00`, utc });
    // Half an hour later, whatever the clocks do that night.
    expect(Date.parse(events[0]?.end.utc ?? '') - Date.parse(utc)).toBe(1_800_000);
  });

  it('goes by each side of the change on the very day', () => {
    const { events } = read(
      fileFor({
        date: '2026-03-29',
        start: '01:00',
        end: '05:00',
        aliases: ['1', '2', '3', '4', '5'],
        zone: 'Europe/Berlin',
      }),
    );
    // Slots at 1:00, 1:40, 2:20, 3:00, 3:40; 1:00 is 0:00 UTC, and 3:00 is 1:00 UTC since 2:00 to 3:00 is not there.
    expect(events[0]?.start.utc).toBe('2026-03-29T00:00:00.000Z');
    expect(events[3]?.start.utc).toBe('2026-03-29T01:00:00.000Z');
  });

  it('finds the changes of a year to the second', () => {
    const year = [Date.UTC(2026, 0, 1) / 1000, Date.UTC(2027, 0, 1) / 1000] as const;
    const of = (zone: string): string[] =>
      transitionsIn(offsetsOf(zone), ...year).map(
        ({ at, from, to }) => `${new Date(at * 1000).toISOString()} ${from} ${to}`,
      );
    expect(of('Europe/Berlin')).toEqual([
      '2026-03-29T01:00:00.000Z 3600 7200',
      '2026-10-25T01:00:00.000Z 7200 3600',
    ]);
    expect(of('Australia/Sydney')).toEqual([
      '2026-04-04T16:00:00.000Z 39600 36000',
      '2026-10-03T16:00:00.000Z 36000 39600',
    ]);
    expect(of('Asia/Kathmandu')).toEqual([]);
  });

  it('writes what zones all over the world need, and the other parser agrees with the machine', () => {
    // Each twelfth of all there are; each was tried once.
    for (const zone of Intl.supportedValuesOf('timeZone').filter((_zone, i) => i % 12 === 0)) {
      const { events } = read(fileFor({ date: '2026-07-04', zone }));
      const offset = offsetsOf(zone);
      const at = Date.parse(events[0]?.start.utc ?? '') / 1000;
      expect(at + offset(at), zone).toBe(Date.UTC(2026, 6, 4, 9, 30) / 1000);
    }
  }, 60_000);

  it.each([
    ['Europe/Nowhere', 'The zone “Europe/Nowhere” is not known here.'],
    ['UTC\r\nBEGIN:VEVENT', 'is not known here'],
  ])('refuses %j', (zone, words) => {
    expect(() => fileFor({ zone })).toThrow(RangeError);
    expect(() => fileFor({ zone })).toThrow(words);
  });
});

it.each([
  [{ stamp: NaN, series: SERIES }, 'The stamp is NaN'],
  [{ stamp: STAMP, series: 'Mary Smith' }, 'The series is “Mary Smith”'],
  [{ stamp: STAMP, series: '' }, '8 to 64 letters'],
])('refuses options that cannot be: %j', (options, words) => {
  const plan = dayPlan({ date: '2026-11-28', start: '09:00', end: '10:00', slot: 30 });
  expect(() => icalendar(plan, options)).toThrow(RangeError);
  expect(() => icalendar(plan, options)).toThrow(words);
});
