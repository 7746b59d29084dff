import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import harbour from '../../shared/tables/day-plan.json' with { type: 'json' };
import { draw } from '../../src/drawing/day-plan.ts';
import type { Sheet } from '../../src/drawing/sheet.ts';
import { writeClock } from '../../src/sitting/day/clock.ts';
import { dayPlan } from '../../src/sitting/day/day-plan.ts';
import { overlaps } from './overlaps.ts';
import { faults, written } from './sheets.ts';

const sheetFor = (raw: object): Sheet => draw(dayPlan(raw));
const day = { date: '2026-11-28', start: '09:00', end: '12:00', slot: 30, buffer: 10 };

/** Upright boxes of one role: left, top, right, bottom. */
const boxes = (sheet: Sheet, role: string): number[][] =>
  sheet.marks.flatMap((mark) => {
    if (mark.kind !== 'path' || mark.role !== role) return [];
    const [, left, top, right, bottom] =
      /^M(\S+) ([^L]+)L(\S+) [^L]+L\S+ ([^L]+)L\S+ \S+Z$/.exec(mark.d) ?? [];
    return left === undefined ? [] : [[left, top, right, bottom].map(Number)];
  });
const words = (sheet: Sheet): string[] =>
  sheet.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));

describe('a drawn day', () => {
  it('is to scale: minutes down the sheet are in proportion, from the start of the day to its end', () => {
    const naps = [{ start: '09:30', end: '11:00' }];
    const sheet = sheetFor({ ...day, bookings: [{ alias: 'A', naps }] });
    // The lane's nap, 30 to 90 min after the start and 90 min long; the sitting, at the start and 30 min long.
    const [nap = []] = boxes(sheet, 'shade');
    const seats = boxes(sheet, 'object').filter(([left = 0]) => left < 200);
    const [, seatTop = 0, , seatFoot = 0] = seats[0] ?? [];
    const scale = (seatFoot - seatTop) / 30;
    expect(scale).toBeGreaterThan(0.5);
    expect((nap[3] ?? 0) - (nap[1] ?? 0)).toBeCloseTo(90 * scale, 1);
    expect((nap[1] ?? 0) - seatTop).toBeCloseTo(30 * scale, 1);
    // Free slots at 9:40, 10:20 and 11:00, dashed.
    const free = boxes(sheet, 'hidden').map(([, top = 0]) => Math.round((top - seatTop) / scale));
    expect(free).toEqual([40, 80, 120]);
  });

  it('marks a conflict with a word, a cross and a heavy line, and nothing else so', () => {
    const naps = [{ start: '08:00', end: '12:30' }];
    const bad = sheetFor({ ...day, bookings: [{ alias: 'A', naps }, { alias: 'B' }] });
    expect(words(bad)).toContain('nap');
    const heavy = bad.marks.filter((mark) => mark.kind === 'path' && mark.role === 'emphasis');
    // Its box and two strokes.
    expect(heavy).toHaveLength(3);
    const good = sheetFor({ ...day, bookings: [{ alias: 'A' }, { alias: 'B' }] });
    expect(good.marks.filter((mark) => mark.role === 'emphasis')).toEqual([]);
  });

  it('names who has no slot', () => {
    const bookings = ['A', 'B'].map((alias) => ({ alias }));
    const sheet = sheetFor({ ...day, end: '09:30', bookings });
    expect(words(sheet)).toContain('no slot: B');
    expect(sheet.table.rows.at(-1)?.slice(0, 2)).toEqual(['no slot', 'B']);
  });

  it('cuts naps off where the day ends, and shortens words to their box', () => {
    const sheet = sheetFor({
      ...day,
      bookings: [{ alias: 'W'.repeat(60), naps: [{ start: '00:00', end: '24:00' }] }],
    });
    const [nap = []] = boxes(sheet, 'shade');
    const seat = boxes(sheet, 'emphasis')[0] ?? [];
    expect(nap[1]).toBe(seat[1]);
    expect(words(sheet).some((text) => text.endsWith('W…'))).toBe(true);
  });

  it('tells the whole day in words and in a table', () => {
    const { says, table } = sheetFor(harbour);
    expect(says).toContain('from 09:30 to 16:30');
    expect(says).toContain('Sitting 4 10:10–10:40');
    expect(says).toContain('no sitting meets one');
    expect(table.rows).toHaveLength(9 + 1 + 1);
    const starts = table.rows.map(([time = '']) => time);
    expect([...starts].sort()).toEqual(starts);
    expect(table.rows.every((row) => row.length === table.head.length)).toBe(true);
  });

  it('looks as it was last looked at', () => {
    expect(written(sheetFor(harbour))).toMatchSnapshot();
  });

  it('lays no words of the harbour day over one another, by either clock', () => {
    const american = new Intl.DateTimeFormat('en-US', {
      hour: 'numeric',
      minute: '2-digit',
      timeZone: 'UTC',
    });
    const twelve = (minutes: number): string => american.format(minutes * 60_000);
    expect(overlaps(sheetFor(harbour))).toEqual([]);
    expect(overlaps(draw(dayPlan(harbour), twelve))).toEqual([]);
    expect(faults(draw(dayPlan(harbour), twelve))).toEqual([]);
  });

  it('stays whole and on its sheet, whatever the day', () => {
    const span = fc
      .tuple(fc.nat(1439), fc.integer({ min: 1, max: 1440 }))
      .map(([start, length]) => ({
        start: writeClock(start),
        end: writeClock(Math.min(1440, start + length)),
      }));
    const any = fc
      .record({
        span,
        slot: fc.integer({ min: 5, max: 240 }),
        breaks: fc.array(span, { maxLength: 4 }),
        changeovers: fc.array(
          fc.record({
            after: fc.integer({ min: 1, max: 6 }),
            length: fc.integer({ min: 1, max: 60 }),
          }),
          { maxLength: 3 },
        ),
        rows: fc.array(fc.array(span, { maxLength: 4 }), { maxLength: 40 }),
      })
      .map(({ span: { start, end }, rows, ...rest }) => ({
        date: '2026-11-28',
        start,
        end,
        ...rest,
        bookings: rows.map((naps, i) => ({ alias: `Sitting ${i + 1}`, naps })),
      }));
    fc.assert(
      fc.property(any, (raw) => {
        const sheet = sheetFor(raw);
        expect(faults(sheet)).toEqual([]);
        expect(sheet.height).toBeLessThan(900);
        expect(sheet.says).not.toMatch(/NaN|undefined|Infinity/);
      }),
    );
  });
});
