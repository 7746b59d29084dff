import { Ajv } from 'ajv';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { overlap, writeClock } from '../../../src/sitting/day/clock.ts';
import { dayPlan, DayError } from '../../../src/sitting/day/day-plan.ts';
import harbour from '../../../shared/tables/day-plan.json' with { type: 'json' };
import schema from '../../../shared/schema/day-plan.schema.json' with { type: 'json' };

const day = { date: '2026-11-28', start: '09:00', end: '12:00', slot: 30 };
const times = (raw: object): string[] =>
  dayPlan(raw).slots.map(({ start, end }) => `${writeClock(start)}-${writeClock(end)}`);
const says = (raw: object): string[] => dayPlan(raw).conflicts.map((one) => one.says);
const seats = (raw: object): (number | undefined)[] =>
  dayPlan(raw).slots.map(({ booking }) => booking);

describe('the slots of a day', () => {
  it('follow one another: 3 h hold 6 of 30 min, and 4 with 10 min between', () => {
    // 6 · 30 = 180; 4 · 30 + 3 · 10 = 150, a fifth would end at 190.
    expect(times(day)).toHaveLength(6);
    expect(times({ ...day, buffer: 10 })).toEqual([
      '09:00-09:30',
      '09:40-10:10',
      '10:20-10:50',
      '11:00-11:30',
    ]);
  });

  it('may end as the day ends, at midnight too', () => {
    expect(times({ ...day, end: '10:00' })).toHaveLength(2);
    expect(times({ ...day, start: '23:00', end: '24:00' })).toEqual(['23:00-23:30', '23:30-24:00']);
    expect(times({ ...day, end: '09:29' })).toEqual([]);
  });

  it('wait for the end of a break, and start at once where the buffer ran into it', () => {
    const breaks = [{ start: '09:45', end: '10:15' }];
    expect(times({ ...day, breaks }).slice(0, 2)).toEqual(['09:00-09:30', '10:15-10:45']);
    expect(times({ ...day, buffer: 30, breaks }).slice(0, 2)).toEqual([
      '09:00-09:30',
      '10:15-10:45',
    ]);
    // The buffer outlasts a short break.
    expect(
      times({ ...day, buffer: 60, breaks: [{ start: '09:40', end: '09:50' }] }).slice(0, 2),
    ).toEqual(['09:00-09:30', '10:30-11:00']);
  });

  it('wait for overlapping breaks in any order, and for one that starts the day', () => {
    const breaks = [
      { start: '09:50', end: '10:30' },
      { start: '09:00', end: '10:00' },
    ];
    expect(times({ ...day, breaks })[0]).toBe('10:30-11:00');
  });

  it('leave the time to change the set, besides the buffer and outside breaks', () => {
    const changeovers = [{ after: 2, length: 20 }];
    const plan = dayPlan({ ...day, buffer: 10, changeovers });
    expect(plan.slots.map(({ start }) => writeClock(start))).toEqual([
      '09:00',
      '09:40',
      '10:40',
      '11:20',
    ]);
    expect(plan.changes.map(({ start }) => writeClock(start))).toEqual(['10:20']);
    const late = dayPlan({
      ...day,
      buffer: 10,
      changeovers,
      breaks: [{ start: '10:30', end: '11:00' }],
    });
    expect(late.changes.map(({ start }) => writeClock(start))).toEqual(['11:00']);
    expect(late.slots.map(({ start }) => writeClock(start))).toEqual(['09:00', '09:40', '11:20']);
  });

  it('need no change after the last', () => {
    expect(dayPlan({ ...day, changeovers: [{ after: 6, length: 20 }] }).changes).toEqual([]);
  });
});

it('holds what the lesson says: four with a quarter of an hour between, five with five minutes', () => {
  const morning = { ...day, start: '09:30', end: '12:30' };
  expect(times({ ...morning, buffer: 15 })).toHaveLength(4);
  expect(times({ ...morning, buffer: 5 })).toHaveLength(5);
  // 11:45 would run into the nap at 12:00; 11:00 is the nearest that does not.
  const bookings = [{ alias: 'A', wish: '11:45', naps: [{ start: '12:00', end: '14:00' }] }];
  const plan = { ...morning, buffer: 15, 'nap-margin': 15, bookings };
  expect(seats(plan)).toEqual([undefined, undefined, 0, undefined]);
  expect(says(plan)).toEqual([]);
});

describe('a booking', () => {
  it('sits clear of its nap where it can', () => {
    const bookings = [{ alias: 'A', naps: [{ start: '09:00', end: '10:00' }] }, { alias: 'B' }];
    expect(seats({ ...day, bookings })).toEqual([1, undefined, 0, undefined, undefined, undefined]);
    expect(says({ ...day, bookings })).toEqual([]);
  });

  it('keeps the margin before and after a nap, which may touch it', () => {
    const naps = [{ start: '10:00', end: '11:00' }];
    const bookings = [{ alias: 'A', naps }];
    expect(seats({ ...day, 'nap-margin': 30, bookings })[0]).toBe(0);
    // From 8:59 to 12:01 nothing is clear: the first slot, and a sentence.
    const wide = { ...day, 'nap-margin': 61, bookings };
    expect(says(wide)).toEqual([
      'A sits from 09:00 to 09:30, less than 61 min before its usual nap from 10:00 to 11:00.',
    ]);
    expect(says({ ...wide, start: '11:00', bookings })).toEqual([
      'A sits from 11:00 to 11:30, less than 61 min after its usual nap from 10:00 to 11:00.',
    ]);
  });

  it('says so where it must sit in its nap, once for each nap', () => {
    const short = { ...day, end: '09:30' };
    const naps = [
      { start: '08:30', end: '09:10' },
      { start: '09:20', end: '10:00' },
    ];
    expect(says({ ...short, bookings: [{ alias: 'A', naps }] })).toEqual([
      'A sits from 09:00 to 09:30, in its usual nap from 08:30 to 09:10.',
      'A sits from 09:00 to 09:30, in its usual nap from 09:20 to 10:00.',
    ]);
  });

  it('has no slot where the day is too short, and the one with the worst nap stays out', () => {
    const naps = [{ start: '09:00', end: '10:00' }];
    const short = { ...day, end: '09:30', bookings: [{ alias: 'A', naps }, { alias: 'B' }] };
    expect(seats(short)).toEqual([1]);
    expect(says(short)).toEqual([
      'A has no slot: one more would end at 10:00, past the end of the day at 09:30.',
    ]);
  });

  it('is not left over for its wish: the last on the list is', () => {
    const wishes = ['11:00', '09:00'].map((wish, i) => ({ alias: `Sitting ${i + 1}`, wish }));
    expect(seats({ ...day, end: '09:30', bookings: wishes })).toEqual([0]);
  });

  it('goes as near to its wish as it can, unless that costs a conflict', () => {
    const bookings = [{ alias: 'A', wish: '10:10' }];
    expect(seats({ ...day, bookings }).indexOf(0)).toBe(2);
    const napping = [{ alias: 'A', wish: '10:10', naps: [{ start: '10:00', end: '10:40' }] }];
    expect(seats({ ...day, bookings: napping }).indexOf(0)).toBe(1);
  });

  it('is told where its wish meets a break, the end or the time before the day', () => {
    const breaks = [{ name: 'lunch', start: '10:00', end: '10:30' }];
    const wishes = ['10:15', '11:45', '08:00'].map((wish) => ({ alias: wish, wish }));
    expect(says({ ...day, breaks, bookings: wishes })).toEqual([
      '10:15 would like 10:15, which meets the lunch from 10:00 to 10:30.',
      '11:45 would like 11:45, and 30 min from then run past the end of the day at 12:00.',
      '08:00 would like 08:00, before the day starts at 09:00.',
    ]);
  });

  it('writes its sentences in the reader’s clock', () => {
    const short = { ...day, end: '09:30', bookings: [{ alias: 'A' }, { alias: 'B' }] };
    const [one] = dayPlan(short, (minutes) => `<${minutes}>`).conflicts;
    expect(one?.says).toBe(
      'B has no slot: one more would end at <600>, past the end of the day at <570>.',
    );
  });
});

describe('the best order', () => {
  /** Conflicts with naps, who is left over, minutes from wishes, then slots in the order of the list: what is to be least. */
  const over = (place: readonly number[]): number =>
    place.reduce((sum, k, i) => sum + (k === Infinity ? place.length - i : 0), 0);
  type Score = readonly number[];
  const less = (a: Score, b: Score): boolean => {
    const at = a.findIndex((x, i) => x !== b[i]);
    return at >= 0 && (a[at] as number) < (b[at] as number);
  };

  /** Every way to seat bookings, as many as there are slots, and the best of them by plain comparison. */
  const tried = (raw: Raw): Score => {
    const { slots } = dayPlan({ ...raw, bookings: [] });
    const spans = raw.bookings.map((one) => ({
      wish: one.wish,
      naps: one.naps.map((nap) => ({
        start: minutes(nap.start) - raw['nap-margin'],
        end: minutes(nap.end) + raw['nap-margin'],
      })),
    }));
    const seated = Math.min(slots.length, spans.length);
    let best: Score | undefined;
    const go = (place: readonly number[]): void => {
      if (place.length < spans.length) {
        for (let k = 0; k < slots.length; k += 1) if (!place.includes(k)) go([...place, k]);
        go([...place, Infinity]);
        return;
      }
      if (place.filter(Number.isFinite).length < seated) return;
      let conflicts = 0;
      let far = 0;
      place.forEach((k, i) => {
        const at = slots[k];
        const one = spans[i];
        if (!at || !one) return;
        conflicts += one.naps.filter((nap) => overlap(at, nap)).length;
        far += one.wish === undefined ? 0 : Math.abs(at.start - minutes(one.wish));
      });
      const score = [conflicts, over(place), far, ...place];
      if (!best || less(score, best)) best = score;
    };
    go([]);
    return best ?? [];
  };
  const minutes = (text: string): number => Number(text.slice(0, 2)) * 60 + Number(text.slice(3));

  interface Raw {
    date: string;
    start: string;
    end: string;
    slot: number;
    buffer: number;
    'nap-margin': number;
    breaks: { start: string; end: string }[];
    bookings: { alias: string; naps: { start: string; end: string }[]; wish?: string }[];
  }

  const scoreOf = (raw: Raw): Score => {
    const { slots, conflicts, day: read } = dayPlan(raw);
    const place = raw.bookings.map((_one, i) => {
      const at = slots.findIndex(({ booking }) => booking === i);
      return at < 0 ? Infinity : at;
    });
    const far = place.reduce((sum, k, i) => {
      const wish = read.bookings[i]?.wish;
      return sum + (wish === undefined || !slots[k] ? 0 : Math.abs(slots[k].start - wish));
    }, 0);
    return [conflicts.filter(({ kind }) => kind === 'nap').length, over(place), far, ...place];
  };

  it('is found for every small day of three naps each, tried out one by one', () => {
    // Three bookings of four kinds each, in days of two to four slots, with and without a margin: 384 days.
    const kinds = [
      { naps: [] },
      { naps: [{ start: '09:00', end: '09:20' }] },
      { naps: [{ start: '09:30', end: '10:10' }] },
      {
        naps: [
          { start: '09:10', end: '09:20' },
          { start: '10:00', end: '11:00' },
        ],
        wish: '09:40',
      },
    ];
    let days = 0;
    for (const end of ['10:00', '10:30', '11:00'])
      for (const margin of [0, 15])
        for (let code = 0; code < 4 ** 3; code += 1) {
          const bookings = [0, 1, 2].map((i) => ({
            alias: `Sitting ${i + 1}`,
            ...(kinds[Math.floor(code / 4 ** i) % 4] ?? { naps: [] }),
          }));
          const raw = { ...day, end, buffer: 0, 'nap-margin': margin, breaks: [], bookings };
          const [ours, best] = [scoreOf(raw), tried(raw)];
          if (ours.join() !== best.join())
            throw new Error(`${JSON.stringify(raw)}: ${ours.join()} instead of ${best.join()}`);
          days += 1;
        }
    expect(days).toBe(384);
  });

  it('is found for days of up to five bookings at random', () => {
    const time = fc.integer({ min: 52, max: 76 }).map((n) => writeClock(n * 10));
    const nap = fc
      .tuple(fc.integer({ min: 52, max: 76 }), fc.integer({ min: 1, max: 9 }))
      .map(([from, length]) => ({
        start: writeClock(from * 10),
        end: writeClock((from + length) * 10),
      }));
    const raw = fc.record({
      date: fc.constant('2026-11-28'),
      start: fc.constant('09:00'),
      end: fc.constantFrom('10:30', '11:30', '12:30'),
      slot: fc.constantFrom(30, 40),
      buffer: fc.constantFrom(0, 10),
      'nap-margin': fc.constantFrom(0, 15),
      breaks: fc.array(nap, { maxLength: 1 }),
      bookings: fc
        .array(
          fc.record({
            naps: fc.array(nap, { maxLength: 2 }),
            wish: fc.option(time, { nil: undefined }),
          }),
          { maxLength: 5 },
        )
        .map((all) =>
          all.map(({ naps, wish }, i) => ({
            alias: `Sitting ${i + 1}`,
            naps,
            ...(wish && { wish }),
          })),
        ),
    });
    fc.assert(
      fc.property(raw, (one) => {
        expect(scoreOf(one)).toEqual(tried(one));
      }),
    );
  });

  it('keeps to the order of the list where nothing speaks against it, for twelve as for forty', () => {
    for (const n of [12, 40]) {
      const bookings = Array.from({ length: n }, (_, i) => ({ alias: `Sitting ${i + 1}` }));
      expect(seats({ ...day, start: '00:00', end: '24:00', bookings }).slice(0, n)).toEqual(
        bookings.map((_, i) => i),
      );
    }
  });

  it('seats the harbour day’s nine without a conflict', () => {
    const plan = dayPlan(harbour);
    expect(plan.slots).toHaveLength(9);
    expect(plan.conflicts).toEqual([]);
  });
});

const anyTime = fc.integer({ min: 0, max: 1440 }).map(writeClock);
const anySpan = fc
  .tuple(fc.integer({ min: 0, max: 1439 }), fc.integer({ min: 1, max: 1440 }))
  .map(([start, length]) => ({
    start: writeClock(start),
    end: writeClock(Math.min(1440, start + length)),
  }));
const anyDay = fc
  .record({
    span: anySpan,
    slot: fc.integer({ min: 5, max: 240 }),
    buffer: fc.integer({ min: 0, max: 240 }),
    'nap-margin': fc.integer({ min: 0, max: 120 }),
    breaks: fc.array(anySpan, { maxLength: 12 }),
    changeovers: fc.array(
      fc.record({
        after: fc.integer({ min: 1, max: 12 }),
        length: fc.integer({ min: 1, max: 480 }),
      }),
      { maxLength: 12 },
    ),
    bookings: fc
      .array(
        fc.record({ naps: fc.array(anySpan, { maxLength: 4 }), wish: anyTime, age: fc.nat(216) }),
        {
          maxLength: 12,
        },
      )
      .map((all) => all.map((one, i) => ({ ...one, alias: `Sitting ${i + 1}` }))),
  })
  .map(({ span, ...rest }) => ({ date: '2026-11-28', ...span, ...rest }));

describe('whatever the day', () => {
  it('has sittings that never overlap, meet no break and no change, and stay inside', () => {
    fc.assert(
      fc.property(anyDay, (raw) => {
        const { day: read, slots, changes, conflicts } = dayPlan(raw);
        const taken = [...slots, ...changes];
        taken.forEach((one, i) => {
          expect(one.start).toBeGreaterThanOrEqual(read.start);
          expect(one.end).toBeLessThanOrEqual(read.end);
          expect(read.breaks.some((other) => overlap(one, other))).toBe(false);
          expect(taken.some((other, k) => k !== i && overlap(one, other))).toBe(false);
        });
        for (let k = 1; k < slots.length; k += 1)
          expect((slots[k]?.start ?? 0) - (slots[k - 1]?.end ?? 0)).toBeGreaterThanOrEqual(
            raw.buffer,
          );
        const seated = slots.flatMap(({ booking }) => booking ?? []);
        expect(new Set(seated).size).toBe(seated.length);
        expect(seated).toHaveLength(Math.min(slots.length, raw.bookings.length));
        expect(conflicts.every((one) => !/NaN|undefined|Infinity/.test(one.says))).toBe(true);
        expect(dayPlan(raw)).toEqual(dayPlan(structuredClone(raw)));
      }),
    );
  });

  it('is read by the schema as it is by us, and rubbish by neither', () => {
    const valid = new Ajv({ strict: false }).compile(schema);
    const refused = (raw: unknown): boolean => {
      try {
        dayPlan(raw);
        return false;
      } catch (error) {
        if (!(error instanceof DayError)) throw error;
        expect(error.message).toMatch(/\. .*\. .*\.$/s);
        return true;
      }
    };
    fc.assert(
      fc.property(anyDay, (raw) => {
        expect(valid(raw)).toBe(true);
      }),
    );
    const keys = Object.keys(schema.properties);
    fc.assert(
      fc.property(anyDay, fc.constantFrom(...keys), fc.anything(), (raw, key, rubbish) => {
        const spoilt = { ...raw, [key]: rubbish };
        // What the schema refuses we refuse. The other way round we also know that ends come after starts.
        if (refused(spoilt)) return;
        expect(valid(JSON.parse(JSON.stringify(spoilt)))).toBe(true);
      }),
    );
    fc.assert(
      fc.property(fc.anything(), (raw) => {
        expect(refused(raw)).toBe(true);
      }),
    );
  });
});

describe('a day that cannot be read', () => {
  const booked = (one: object): object => ({ ...day, bookings: [{ alias: 'Sitting 1', ...one }] });
  it.each([
    [null, '', 'The day is “null”.'],
    [
      { ...day, date: '2026-02-30' },
      '/date',
      'The date is “2026-02-30”. It must be a day of the calendar, written year-month-day. Try 2026-11-28.',
    ],
    [{ ...day, start: '9:00' }, '/start', 'It must be a time from 00:00 to 24:00. Try 09:30.'],
    [{ ...day, end: '24:30' }, '/end', '“24:30”'],
    [
      { ...day, end: '08:00' },
      '/end',
      'The end of the day, 08:00, is not after its start, 09:00. It must be later on the same day. Try 09:30 to 16:00.',
    ],
    [
      { ...day, slot: 4 },
      '/slot',
      'The length of a slot is “4”. It must be a whole number of minutes from 5 to 240. Try 30.',
    ],
    [{ ...day, slot: NaN }, '/slot', '“null”'],
    [{ ...day, buffer: 2.5 }, '/buffer', 'whole number'],
    [{ ...day, bufer: 10 }, '/bufer', 'The day has a key “bufer”.'],
    [
      { ...day, breaks: [{ start: '10:00', end: '10:00' }] },
      '/breaks/0/end',
      'not after its start',
    ],
    [
      { ...day, breaks: Array(13).fill({ start: '10:00', end: '11:00' }) },
      '/breaks',
      'There are 13 breaks. There may be a list of up to 12.',
    ],
    [{ ...day, changeovers: [{ after: 0, length: 5 }] }, '/changeovers/0/after', 'from 1 to 288'],
    [
      booked({ alias: ' ' }),
      '/bookings/0/alias',
      'It must be one line of 1 to 60 signs. Try “Sitting 1”.',
    ],
    [booked({ alias: 'a\r\nBEGIN:VEVENT' }), '/bookings/0/alias', 'one line'],
    [booked({ age: 217 }), '/bookings/0/age', 'months from 0 to 216'],
    [booked({ born: '2024-01-01' }), '/bookings/0/born', 'It may have alias, age, naps, wish.'],
    [
      booked({ naps: [{ start: '22:00', end: '05:00' }] }),
      '/bookings/0/naps/0/end',
      'later on the same day',
    ],
    [
      { ...day, bookings: [{ alias: 'A' }, { alias: 'A' }] },
      '/bookings/1/alias',
      'Two bookings are called “A”.',
    ],
  ])('%# says what is wrong, what is allowed and what to try', (raw, at, words) => {
    let caught: unknown;
    try {
      dayPlan(raw);
    } catch (error) {
      caught = error;
    }
    expect(caught).toBeInstanceOf(RangeError);
    expect(caught).toBeInstanceOf(DayError);
    expect((caught as DayError).at).toBe(at);
    expect((caught as DayError).message).toContain(words);
  });

  it('quotes no more than the head of a megabyte', () => {
    expect(() => dayPlan({ ...day, start: '9'.repeat(1_000_000) })).toThrow(/^.{0,200}$/);
  });
});
