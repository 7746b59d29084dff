import { readDate } from './civil.ts';
import { DAY, writeClock, type Span } from './clock.ts';

/** A child who is booked: an alias, never a name, and no date of birth. */
export interface Booking {
  readonly alias: string;
  /** In months, where it was given. */
  readonly age: number | undefined;
  /** When this child usually sleeps. */
  readonly naps: readonly Span[];
  /** The start the family would like, in minutes after midnight. */
  readonly wish: number | undefined;
}

export interface Break extends Span {
  readonly name: string;
}

/** The set is changed after so many slots, and that takes so many minutes. */
export interface Changeover {
  readonly after: number;
  readonly length: number;
}

/** A day as its plan needs it; times in minutes after midnight, lengths in minutes. */
export interface Day extends Span {
  /** Year-month-day. */
  readonly date: string;
  readonly slot: number;
  readonly buffer: number;
  /** Kept free before a nap and after it. */
  readonly napMargin: number;
  readonly breaks: readonly Break[];
  readonly changeovers: readonly Changeover[];
  readonly bookings: readonly Booking[];
}

/**
 * What is wrong with a day, what is allowed and what to try. `at` is a JSON pointer to the value it is about, so that a
 * page can set the sentence beside its field.
 */
export class DayError extends RangeError {
  readonly at: string;
  constructor(message: string, at: string) {
    super(message);
    this.at = at;
  }
}

/** The longest lists and aliases; breaks and changeovers are `pauses`, since `breaks` is cut from what readers are sent. */
export const MOST = { bookings: 40, pauses: 12, naps: 4, alias: 60 } as const;

const quote = (raw: unknown): string => {
  const text =
    typeof raw === 'string' ? raw : ((JSON.stringify(raw) as string | undefined) ?? 'nothing');
  return `“${text.length > 40 ? `${text.slice(0, 40)}…` : text}”`;
};

const fail = (at: string, what: string, allowed: string, tryThis: string): never => {
  throw new DayError(`${what} ${allowed} ${tryThis}`, at);
};

type Fields = Readonly<Record<string, unknown>>;

const isFields = (raw: unknown): raw is Fields =>
  typeof raw === 'object' && raw !== null && !Array.isArray(raw);

/** An object that has no key but those named. A key misspelt is a value lost, and so is refused. */
const fieldsOf = (raw: unknown, at: string, what: string, keys: readonly string[]): Fields => {
  if (!isFields(raw))
    return fail(
      at,
      `${what} is ${quote(raw)}.`,
      `It must be an object with ${keys.join(', ')}.`,
      'Write it in braces.',
    );
  const strange = Object.keys(raw).find((key) => !keys.includes(key));
  if (strange !== undefined)
    return fail(
      `${at}/${strange}`,
      `${what} has a key ${quote(strange)}.`,
      `It may have ${keys.join(', ')}.`,
      'Correct it or leave it out.',
    );
  return raw;
};

const timeOf = (raw: unknown, at: string, what: string): number => {
  const [all, hours, minutes] =
    /^(2[0-4]|[01]\d):([0-5]\d)$/.exec(typeof raw === 'string' ? raw : '') ?? [];
  const time = Number(hours) * 60 + Number(minutes);
  return all !== undefined && time <= DAY
    ? time
    : fail(at, `${what} is ${quote(raw)}.`, 'It must be a time from 00:00 to 24:00.', 'Try 09:30.');
};

const wholeOf = (
  raw: unknown,
  at: string,
  what: string,
  [low, high]: readonly [number, number],
  unit: string,
  example: number,
): number =>
  typeof raw === 'number' && Number.isInteger(raw) && raw >= low && raw <= high
    ? raw
    : fail(
        at,
        `${what} is ${quote(raw)}.`,
        `It must be a whole number of ${unit} from ${low} to ${high}.`,
        `Try ${example}.`,
      );

const listOf = (raw: unknown, at: string, what: string, most: number): readonly unknown[] => {
  if (raw === undefined) return [];
  return Array.isArray(raw) && raw.length <= most
    ? (raw as readonly unknown[])
    : fail(
        at,
        Array.isArray(raw) ? `There are ${raw.length} ${what}.` : `The ${what} are ${quote(raw)}.`,
        `There may be a list of up to ${most}.`,
        'Leave out those that matter least.',
      );
};

const spanOf = (fields: Fields, at: string, what: string, example: string): Span => {
  const start = timeOf(fields['start'], `${at}/start`, `The start of ${what}`);
  const end = timeOf(fields['end'], `${at}/end`, `The end of ${what}`);
  return end > start
    ? { start, end }
    : fail(
        `${at}/end`,
        `The end of ${what}, ${writeClock(end)}, is not after its start, ${writeClock(start)}.`,
        'It must be later on the same day.',
        `Try ${example}.`,
      );
};

// eslint-disable-next-line no-control-regex
const CONTROL = /[\u0000-\u001f\u007f-\u009f\u2028\u2029\ud800-\udfff]/u;

/** Text of one line without control signs; directions and joiners stay, since names in other scripts need them. */
const lineOf = (raw: unknown, at: string, what: string, example: string): string => {
  const text = typeof raw === 'string' ? raw : '';
  return text.trim() !== '' && Array.from(text).length <= MOST.alias && !CONTROL.test(text)
    ? text.trim()
    : fail(
        at,
        `${what} is ${quote(raw)}.`,
        `It must be one line of 1 to ${MOST.alias} signs.`,
        `Try ${example}.`,
      );
};

const bookingOf = (raw: unknown, i: number): Booking => {
  const at = `/bookings/${i}`;
  const fields = fieldsOf(raw, at, `Booking ${i + 1}`, ['alias', 'age', 'naps', 'wish']);
  const alias = lineOf(
    fields['alias'],
    `${at}/alias`,
    `The alias of booking ${i + 1}`,
    `“Sitting ${i + 1}”`,
  );
  return {
    alias,
    age:
      fields['age'] === undefined
        ? undefined
        : wholeOf(fields['age'], `${at}/age`, `The age of ${alias}`, [0, 216], 'months', 24),
    naps: listOf(fields['naps'], `${at}/naps`, `naps of ${alias}`, MOST.naps).map((nap, k) => {
      const where = `${at}/naps/${k}`;
      return spanOf(
        fieldsOf(nap, where, `A nap of ${alias}`, ['start', 'end']),
        where,
        `a nap of ${alias}`,
        '12:30 to 14:00',
      );
    }),
    wish:
      fields['wish'] === undefined
        ? undefined
        : timeOf(fields['wish'], `${at}/wish`, `The time ${alias} would like`),
  };
};

/**
 * Reads a day from JSON that anyone may have written.
 *
 * Model: what `shared/schema/day-plan.schema.json` describes, and that ends come after starts and no alias stands twice.
 * Valid: one calendar day, whole minutes, up to 40 bookings.
 * Throws: DayError (a RangeError) that says what is wrong, what is allowed and what to try.
 * @example readDay({ date: '2026-11-28', start: '09:30', end: '12:00', slot: 30 }).bookings // []
 */
export const readDay = (raw: unknown): Day => {
  const fields = fieldsOf(raw, '', 'The day', [
    'about', 'kind', 'date', 'start', 'end', 'slot', 'buffer', 'nap-margin', 'breaks', 'changeovers', 'bookings',
  ]); // prettier-ignore
  const { date } = fields;
  const given = (key: string): unknown => (fields[key] === undefined ? 0 : fields[key]);
  if (typeof date !== 'string' || readDate(date) === undefined)
    return fail(
      '/date',
      `The date is ${quote(date)}.`,
      'It must be a day of the calendar, written year-month-day.',
      'Try 2026-11-28.',
    );
  const day = {
    date,
    ...spanOf(fields, '', 'the day', '09:30 to 16:00'),
    slot: wholeOf(fields['slot'], '/slot', 'The length of a slot', [5, 240], 'minutes', 30),
    buffer: wholeOf(given('buffer'), '/buffer', 'The buffer', [0, 240], 'minutes', 10),
    napMargin: wholeOf(
      given('nap-margin'),
      '/nap-margin',
      'The margin about a nap',
      [0, 120],
      'minutes',
      15,
    ),
    breaks: listOf(fields['breaks'], '/breaks', 'breaks', MOST.pauses).map((one, i) => {
      const at = `/breaks/${i}`;
      const its = fieldsOf(one, at, `Break ${i + 1}`, ['name', 'start', 'end']);
      const name =
        its['name'] === undefined
          ? 'break'
          : lineOf(its['name'], `${at}/name`, `The name of break ${i + 1}`, '“lunch”');
      return { name, ...spanOf(its, at, `break ${i + 1}`, '12:30 to 13:15') };
    }),
    changeovers: listOf(fields['changeovers'], '/changeovers', 'changeovers', MOST.pauses).map(
      (one, i) => {
        const at = `/changeovers/${i}`;
        const its = fieldsOf(one, at, `Changeover ${i + 1}`, ['after', 'length']);
        return {
          after: wholeOf(
            its['after'],
            `${at}/after`,
            `What changeover ${i + 1} comes after`,
            [1, 288],
            'slots',
            4,
          ),
          length: wholeOf(
            its['length'],
            `${at}/length`,
            `The length of changeover ${i + 1}`,
            [1, 480],
            'minutes',
            20,
          ),
        };
      },
    ),
    bookings: listOf(fields['bookings'], '/bookings', 'bookings', MOST.bookings).map(bookingOf),
  };
  day.bookings.forEach(({ alias }, i) => {
    if (day.bookings.findIndex((one) => one.alias === alias) < i)
      fail(
        `/bookings/${i}/alias`,
        `Two bookings are called ${quote(alias)}.`,
        'Each alias may stand once.',
        'Number them.',
      );
  });
  return day;
};
