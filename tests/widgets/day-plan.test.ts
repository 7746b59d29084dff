import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readFrame, writeFrame } from '../../src/widgets/day-plan/frame-link.ts';
import { keptDayOf, type DayTexts } from '../../src/sitting/day/kept-day.ts';
import { clockOf, inClock, typedClock } from '../../src/widgets/day-plan/reader-clock.ts';
import { conflictLines, sentence } from '../../src/widgets/day-plan/sentence.ts';
import { planOf } from '../../src/widgets/day-plan/texts.ts';
import { dayPlan } from '../../src/sitting/day/day-plan.ts';

const frame: DayTexts['frame'] = {
  date: '2026-11-28',
  start: '09:30',
  end: '16:30',
  slot: '30',
  buffer: '10',
  breaks: '12:10–13:00',
  after: '6',
  change: '20',
  margin: '15',
};
const row = { alias: 'Sitting 1', age: '24', naps: '12:30–14:30', wish: '' };
const texts: DayTexts = { frame, rows: [row] };
const troubleWith = (change: Partial<DayTexts['frame']>): [string, string][] => [
  ...planOf({ frame: { ...frame, ...change }, rows: [row] }).troubles,
];

describe('a day’s fields', () => {
  it('are read and planned', () => {
    const { plan, troubles } = planOf(texts);
    expect([...troubles]).toEqual([]);
    expect(plan?.slots).toHaveLength(9);
    expect(plan?.day.bookings[0]).toEqual({
      alias: 'Sitting 1',
      age: 24,
      naps: [{ start: 750, end: 870 }],
      wish: undefined,
    });
    expect(plan?.day.changeovers).toEqual([{ after: 6, length: 20 }]);
  });

  it('may leave out age, naps, wish, breaks and changes, and then a change needs no length', () => {
    const { plan, troubles } = planOf({
      frame: { ...frame, breaks: '', after: ' ', change: '' },
      rows: [{ alias: 'A', age: '', naps: '', wish: '' }],
    });
    expect([...troubles]).toEqual([]);
    expect(plan?.slots).toHaveLength(10);
  });

  it.each([
    [
      { start: 'early' },
      'start',
      '“early” is no time of day. Write hours and minutes from 00:00 to 24:00, such as 09:30.',
    ],
    [{ end: '' }, 'end', 'no time of day'],
    [{ end: '9:00' }, 'end', 'not after its start'],
    [{ slot: '1e309' }, 'slot', '“1e309” is no length of time. Write whole minutes, such as 20.'],
    [{ slot: '3' }, 'slot', 'from 5 to 240'],
    [{ buffer: '-5' }, 'buffer', 'no length of time'],
    [{ breaks: 'noon' }, 'breaks', '“noon” is no time from–to.'],
    [{ breaks: '14-13' }, 'breaks', 'not after its start'],
    [{ after: 'two' }, 'after', 'no count of sittings'],
    [{ after: '0' }, 'after', 'from 1 to 288'],
    [{ change: '500' }, 'change', 'from 1 to 480'],
    [{ margin: 'NaN' }, 'margin', 'no length of time'],
    [{ date: '' }, 'date', 'The date is “”.'],
    [{ date: '2026-02-30' }, 'date', 'a day of the calendar'],
  ])('say beside themselves what is wrong: %j', (change, key, words) => {
    const [[at, says] = ['', ''], ...more] = troubleWith(change);
    expect(more).toEqual([]);
    expect(at).toBe(key);
    expect(says).toContain(words);
  });

  it('of a booking too, all at once', () => {
    const { troubles } = planOf({
      frame: { ...frame, slot: 'x' },
      rows: [row, { alias: 'B', age: '24', naps: '12:30', wish: 'noon' }],
    });
    expect([...troubles.keys()].sort()).toEqual(['1/naps', '1/wish', 'slot']);
    const one = (change: object): string[] => [
      ...planOf({ frame, rows: [{ ...row, ...change }] }).troubles.keys(),
    ];
    expect(one({ alias: '' })).toEqual(['0/alias']);
    expect(one({ age: 'two' })).toEqual(['0/age']);
    expect(one({ age: '24 25' })).toEqual(['0/age']);
    expect(one({ age: '٢٤' })).toEqual([]);
    expect(one({ age: '1e2' })).toEqual(['0/age']);
    expect(one({ naps: '14:00–13:00' })).toEqual(['0/naps']);
    expect([...planOf({ frame, rows: [row, row] }).troubles.keys()]).toEqual(['1/alias']);
  });

  it('never bring it down, whatever is typed', () => {
    const any = fc.string({ unit: 'binary', maxLength: 40 });
    fc.assert(
      fc.property(
        fc.record({
          date: any,
          start: any,
          end: any,
          slot: any,
          buffer: any,
          breaks: any,
          after: any,
          change: any,
          margin: any,
        }),
        fc.array(fc.record({ alias: any, age: any, naps: any, wish: any }), { maxLength: 3 }),
        (typed, rows) => {
          const { plan, troubles } = planOf({ frame: typed, rows });
          expect(plan === undefined).toBe(troubles.size > 0);
        },
      ),
    );
  });
});

describe('a link to the day', () => {
  it('holds its frame and not one word of a booking, a date among them', () => {
    expect(writeFrame(frame)).toBe(
      'start=09:30&end=16:30&slot=30min&buffer=10min&breaks=12:10-13:00',
    );
    expect(writeFrame({ ...frame, slot: 'x' })).toBeUndefined();
  });

  it('is read back to the same link', () => {
    const query = 'start=10:00&end=24:00&slot=45min&buffer=0min&breaks=12:00-12:30;15:00-15:10';
    const read = readFrame(`?${query}`, frame);
    expect(read?.notices).toEqual([]);
    expect(read && writeFrame(read.frame)).toBe(query);
    expect(read?.frame.date).toBe(frame.date);
  });

  it.each([
    ['', undefined],
    ['?slot=NaN', 'The link’s slot, “NaN”, could not be used.'],
    ['?start=8:00&start=9:00', 'The link gives start 2 times.'],
    [
      '?alias=Mary&naps=12-13',
      'The link also holds “alias”, “naps”, which this timetable does not know.',
    ],
    [
      '?start=18:00',
      'The link’s values do not go together: The end of the day, 16:30, is not after its start, 18:00.',
    ],
    ['?slot=1min', 'from 5 to 240'],
    [`?start=${'9'.repeat(3000)}`, 'The link is too long'],
    ['?__proto__=1&constructor=2', 'does not know'],
    ['?breaks=%00%ff<script>', 'could not be used'],
    [`?breaks=${Array(13).fill('10:00-10:05').join(';')}`, 'There are 13 breaks.'],
  ])('%j gives way where it cannot be used', (query, words) => {
    const read = readFrame(query, frame);
    if (words === undefined) expect(read).toBeUndefined();
    else expect(read?.notices.join(' ')).toContain(words);
    const { troubles } = planOf({ frame: read?.frame ?? frame, rows: [] });
    expect([...troubles]).toEqual([]);
  });

  it('leaves a frame that can be planned, whatever the query', () => {
    const key = fc.constantFrom('start', 'end', 'slot', 'buffer', 'breaks', 'x');
    const value = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 20 }),
      fc.constantFrom('9:00', '23:59', '5min', '12-13', '24:00'),
    );
    fc.assert(
      fc.property(fc.array(fc.tuple(key, value), { maxLength: 8 }), (pairs) => {
        const read = readFrame(new URLSearchParams(pairs).toString(), frame);
        if (read) expect([...planOf({ frame: read.frame, rows: [] }).troubles]).toEqual([]);
      }),
    );
  });
});

describe('a reader’s clock', () => {
  it.each([
    [['en-GB'], '09:30', '14:30', '24:00'],
    [['de-DE'], '09:30', '14:30', '24:00'],
    [['en-US'], '9:30 AM', '2:30 PM', '12:00 AM'],
    [['ar-EG'], '٩:٣٠ ص', '٢:٣٠ م', '١٢:٠٠ ص'],
  ])('%j', (languages, morning, afternoon, midnight) => {
    const time = clockOf(languages);
    expect(
      [570, 870, 1440].map((at) =>
        time(at)
          .replace(/[\u202f\u00a0]/g, ' ')
          .replace(/\u200f/g, ''),
      ),
    ).toEqual([morning, afternoon, midnight]);
  });

  it('writes nothing into a field that the field could not read', () => {
    for (const language of [
      'en-GB',
      'en-US',
      'en-CA',
      'de-DE',
      'fr-CA',
      'es-MX',
      'ar-EG',
      'fa-IR',
      'hi-IN',
      'bn-BD',
      'zh-TW',
      'ja-JP',
      'ko-KR',
      'fi-FI',
    ]) {
      const typed = typedClock(clockOf([language]));
      const { plan, troubles } = planOf(inClock(texts, typed));
      expect([...troubles], language).toEqual([]);
      expect(plan, language).toEqual(planOf(texts).plan);
    }
  });
});

describe('the result', () => {
  const day = { date: '2026-11-28', start: '09:00', end: '10:00', slot: 30 };
  const said = (raw: object): string => sentence(dayPlan(raw)).join('');
  it('is one sentence, for none, one and many', () => {
    expect(said(day)).toBe('2 sittings fit in this day; nobody is booked.');
    expect(said({ ...day, slot: 60, bookings: [{ alias: 'A' }] })).toBe(
      '1 sitting fits in this day; 1 is booked, with no conflict.',
    );
    expect(said({ ...day, bookings: ['A', 'B', 'C'].map((alias) => ({ alias })) })).toBe(
      '2 sittings fit in this day; 3 are booked, with 1 conflict.',
    );
    expect(said({ ...day, slot: 90, bookings: ['A', 'B'].map((alias) => ({ alias })) })).toBe(
      'No sitting fits in this day; 2 are booked, with 2 conflicts.',
    );
  });
  it('names each conflict, and says that no other order has fewer', () => {
    const lines = conflictLines(
      dayPlan({ ...day, slot: 60, bookings: [{ alias: 'A' }, { alias: 'B' }] }),
    );
    expect(lines).toHaveLength(2);
    expect(lines[1]).toBe('No other order of these bookings in these slots has fewer conflicts.');
    expect(conflictLines(dayPlan(day))).toEqual([]);
  });
});

describe('a kept day', () => {
  const series = '0123456789abcdef0123456789abcdef';
  it('is taken back as it was', () => {
    const kept = { texts, series };
    expect(keptDayOf(JSON.parse(JSON.stringify(kept)))).toEqual(kept);
  });
  it.each([
    null,
    [],
    'x',
    { texts },
    { texts, series: 'Mary' },
    { texts: { frame, rows: Array(41).fill(row) }, series },
    { texts: { frame, rows: [{ ...row, naps: 5 }] }, series },
    { texts: { frame: { ...frame, start: 'x'.repeat(201) }, rows: [] }, series },
  ])('is not read from rubbish %#', (raw) => {
    expect(keptDayOf(raw)).toBeUndefined();
  });
});
