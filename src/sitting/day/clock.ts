/**
 * Times of a day as people type and read them. Inside a plan a time is a whole number of minutes after midnight, and
 * 1440 is the midnight the day ends with.
 */

/** A stretch of a day, in minutes after midnight; the end is not part of it. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

export const DAY = 1440;
/** Longer than any time, list of times or length people type. */
const LONGEST = 200;

/** Whether two stretches share a minute. Those that only touch do not. */
export const overlap = (a: Span, b: Span): boolean => a.start < b.end && b.start < a.end;

/** Western digits for Arabic-Indic, Persian and full-width ones, plain signs for their look-alikes, no marks unseen. */
const plain = (text: string): string =>
  text
    .normalize('NFKC')
    .replace(/[\u0660-\u0669\u06f0-\u06f9]/g, (digit) => String(digit.charCodeAt(0) & 15))
    .replace(/[\u200b-\u200f\u202a-\u202e\u2066-\u2069\ufeff\u061c]/g, '')
    .replace(/[\u2010-\u2015\u2212]/g, '-')
    .replace(/\u066b/g, '.')
    .replace(/\s+/g, ' ')
    .trim()
    .toLowerCase();

const CLOCK = /^(\d{1,2})(?:[:.,h ]\s?(\d{2})|(\d{2})|h)?\s?(?:([ap])\.?\s?m\.?|(ص|م))?$/;

/**
 * Reads one time of day.
 *
 * Model: 24-hour and 12-hour clocks, with a colon, point, comma, h or no sign between hours and minutes.
 * Valid: 0:00 to 24:00; an hour alone is a full hour.
 * Throws: nothing; undefined for what is no time.
 * @example readClock('9:30') // 570
 * @example readClock('2.30 pm') // 870
 */
export const readClock = (text: string): number | undefined => {
  if (text.length > LONGEST) return undefined;
  const [all, hours = '', parted, joined, half, arabic] = CLOCK.exec(plain(text)) ?? [];
  if (all === undefined) return undefined;
  const minutes = Number(parted ?? joined ?? 0);
  const afternoon = half === 'p' || arabic === 'م';
  let hour = Number(hours);
  if (half !== undefined || arabic !== undefined) {
    if (hour < 1 || hour > 12) return undefined;
    hour = (hour % 12) + (afternoon ? 12 : 0);
  }
  const at = hour * 60 + minutes;
  return minutes < 60 && at <= DAY ? at : undefined;
};

const two = (n: number): string => String(n).padStart(2, '0');

/**
 * Writes a time the one way links and files do.
 * @example writeClock(570) // '09:30'
 * @example writeClock(1440) // '24:00'
 */
export const writeClock = (minutes: number): string =>
  `${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;

const LENGTH =
  /^(?:(\d{1,4}(?:[.,]\d{1,2})?) ?(?:h|hours?)(?: ?(\d{1,2}) ?(?:m|min|minutes?)?)?|(\d{1,4}) ?(?:m|min|mins|minutes?|′)?)$/;

/**
 * Reads a length of time in whole minutes.
 *
 * Valid: minutes with or without their unit, hours, or both.
 * Throws: nothing; undefined for what is no such length.
 * @example readLength('1 h 15') // 75
 */
export const readLength = (text: string): number | undefined => {
  if (text.length > LONGEST) return undefined;
  const [all, hours, rest, minutes] = LENGTH.exec(plain(text)) ?? [];
  if (all === undefined) return undefined;
  const length =
    minutes === undefined
      ? Number((hours ?? '').replace(',', '.')) * 60 + Number(rest ?? 0)
      : Number(minutes);
  return Number.isInteger(length) ? length : undefined;
};

/**
 * Reads a list of whole numbers, parted by semicolons, commas or spaces.
 * Throws: nothing; undefined where any part is no such number. An empty text is an empty list.
 * @example readCounts('4; 8') // [4, 8]
 */
export const readCounts = (text: string): readonly number[] | undefined => {
  if (text.length > LONGEST) return undefined;
  const parts = plain(text)
    .split(/[;,\u061b\u060c\s]+/)
    .filter((part) => part !== '');
  return parts.every((part) => /^\d{1,4}$/.test(part)) ? parts.map(Number) : undefined;
};

/**
 * Reads a list of stretches, each from one time to another.
 *
 * Model: a stretch is two times with a dash or “to” between; semicolons or “and” part stretches. Where only the second
 * time says am or pm, the first takes the half day that puts it before the second.
 * Throws: nothing; undefined where any part is no stretch. An empty text is an empty list.
 * @example readSpans('9:30-10:15; 12:30 to 14:00') // [{ start: 570, end: 615 }, { start: 750, end: 840 }]
 */
export const readSpans = (text: string): readonly Span[] | undefined => {
  if (text.length > LONGEST) return undefined;
  const parts = plain(text)
    .split(/\s*(?:;|\n|\band\b)\s*/)
    .filter((part) => part !== '');
  const spans = parts.map((part): Span | undefined => {
    const [from = '', to = '', more] = part.split(/\s*(?:-|\bto\b)\s*/);
    const end = readClock(to);
    let start = readClock(from);
    if (start === undefined || end === undefined || more !== undefined) return undefined;
    // 1:30–3 pm: both in the afternoon; 11–1 pm: from before noon.
    if (/[pم]/.test(to) && !/[apصم]/.test(from) && start + 720 < end) start += 720;
    return { start, end };
  });
  return spans.every((span) => span !== undefined) ? spans : undefined;
};

/**
 * Writes a list of stretches the one way links do.
 * @example writeSpans([{ start: 750, end: 795 }]) // '12:30-13:15'
 */
export const writeSpans = (spans: readonly Span[]): string =>
  spans.map(({ start, end }) => `${writeClock(start)}-${writeClock(end)}`).join(';');
