import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  overlap,
  readClock,
  readCounts,
  readLength,
  readSpans,
  writeClock,
  writeSpans,
} from '../../../src/sitting/day/clock.ts';
import { civilOf, daysTo, readDate } from '../../../src/sitting/day/civil.ts';

const rubbish = ['', ' ', '.', ',', '-', ':', '1e309', 'NaN', 'Infinity', '24:01', '9:60', '25', '-9:30', '9:3', '13 pm', '0 am', 'half past', '9:30:00', '👶', '9:30'.repeat(200_000)]; // prettier-ignore

describe('a time of day', () => {
  it.each([
    ['9:30', 570],
    ['09:30', 570],
    ['9.30', 570],
    ['9,30', 570],
    ['9 30', 570],
    ['9h30', 570],
    ['930', 570],
    ['0930', 570],
    ['1430', 870],
    ['9', 540],
    ['9h', 540],
    ['2:30 pm', 870],
    ['2:30 p.m.', 870],
    ['2:30\u202fPM', 870],
    ['2:30 p. m.', 870],
    ['12:15 am', 15],
    ['12 pm', 720],
    ['٩:٣٠', 570],
    ['۹:۳۰', 570],
    ['９：３０', 570],
    ['\u200e9:30\u200f', 570],
    ['٢:٣٠ م', 870],
    ['٩:٣٠ ص', 570],
    ['0:00', 0],
    ['24:00', 1440],
  ])('reads %s', (text, minutes) => {
    expect(readClock(text)).toBe(minutes);
  });

  it.each(rubbish)('does not read rubbish %#', (text) => {
    expect(readClock(text)).toBeUndefined();
  });

  it('reads back every minute it writes', () => {
    for (let at = 0; at <= 1440; at += 1) expect(readClock(writeClock(at))).toBe(at);
  });
});

describe('a length of time', () => {
  it.each([
    ['20', 20],
    ['20 min', 20],
    ['20min', 20],
    ['1 h', 60],
    ['1.5 h', 90],
    ['1,5h', 90],
    ['1 h 15', 75],
    ['1h15min', 75],
    ['٢٠', 20],
    ['0', 0],
  ])('reads %s', (text, minutes) => {
    expect(readLength(text)).toBe(minutes);
  });

  it.each(['', 'ten', '-5', '2.5', '1e3', 'NaN', '9'.repeat(1_000_000), '0.51 h'])(
    'does not read rubbish %#',
    (text) => {
      expect(readLength(text)).toBeUndefined();
    },
  );
});

describe('counts', () => {
  it.each([
    ['', []],
    ['4', [4]],
    ['4; 8', [4, 8]],
    ['4,8 12', [4, 8, 12]],
    ['٤؛ ٨', [4, 8]],
  ])('%j', (text, counts) => {
    expect(readCounts(text)).toEqual(counts);
  });
  it.each(['x', '-1', '2.5', '1e3', '12345', '4'.repeat(300)])(
    'does not read rubbish %#',
    (text) => {
      expect(readCounts(text)).toBeUndefined();
    },
  );
});

describe('stretches of time', () => {
  it.each([
    ['', ''],
    ['12:30-14:00', '12:30-14:00'],
    ['12:30–14:00', '12:30-14:00'],
    ['12.30 to 14', '12:30-14:00'],
    ['9:30–10:15; 13:00–14:30', '09:30-10:15;13:00-14:30'],
    ['9:30-10:15 and 13-14:30;', '09:30-10:15;13:00-14:30'],
    ['1:30–3 pm', '13:30-15:00'],
    ['11–1 pm', '11:00-13:00'],
    ['12:30–2 pm', '12:30-14:00'],
    ['11 am–1 pm', '11:00-13:00'],
    ['9:30 AM–10:15 AM', '09:30-10:15'],
  ])('reads %s', (text, wanted) => {
    const spans = readSpans(text);
    expect(spans && writeSpans(spans)).toBe(wanted);
  });

  it.each([
    '12:30',
    '12:30-',
    '-14:00',
    '12-13-14',
    'noon to one',
    '12:30-25:00',
    '-',
    'x'.repeat(1e6),
  ])('does not read rubbish %#', (text) => {
    expect(readSpans(text)).toBeUndefined();
  });

  it('share a minute or only touch', () => {
    expect(overlap({ start: 0, end: 10 }, { start: 9, end: 20 })).toBe(true);
    expect(overlap({ start: 0, end: 10 }, { start: 10, end: 20 })).toBe(false);
  });
});

it('reads no text in a way that throws or leaves the day', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary', maxLength: 60 }), (text) => {
      const at = readClock(text);
      expect(at === undefined || (Number.isInteger(at) && at >= 0 && at <= 1440)).toBe(true);
      const length = readLength(text);
      expect(length === undefined || (Number.isInteger(length) && length >= 0)).toBe(true);
      expect(() => readSpans(text)).not.toThrow();
    }),
  );
});

describe('a date', () => {
  it('agrees with the calendar of the machine from 1970 to 2200', () => {
    for (let days = 0; days < 84_006; days += 1) {
      const [year = '', month = '', day = ''] = new Date(days * 86_400_000)
        .toISOString()
        .slice(0, 10)
        .split('-');
      const date = { year: Number(year), month: Number(month), day: Number(day) };
      if (daysTo(date) !== days) throw new Error(`${year}-${month}-${day} is day ${daysTo(date)}`);
      const back = civilOf(days);
      if (back.year !== date.year || back.month !== date.month || back.day !== date.day)
        throw new Error(`day ${days} is ${JSON.stringify(back)}`);
    }
  });

  it.each(['2026-02-29', '2026-13-01', '2026-00-10', '2026-04-31', '26-01-01', '2026-1-1', ''])(
    'is not %s',
    (text) => {
      expect(readDate(text)).toBeUndefined();
    },
  );
  it('may be a leap day', () => {
    expect(readDate('2028-02-29')).toEqual({ year: 2028, month: 2, day: 29 });
  });
});
