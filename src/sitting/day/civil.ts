/** Dates of the Gregorian calendar as numbers of days, with no clock and no zone in them. */
export interface Civil {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

/**
 * Days from 1 January 1970 to a date.
 *
 * Model: proleptic Gregorian calendar; years are counted from March, so that the leap day ends one.
 * Valid: years 1 to 9999, months 1 to 12.
 * @example daysTo({ year: 1970, month: 1, day: 2 }) // 1
 */
export const daysTo = ({ year, month, day }: Civil): number => {
  const y = month > 2 ? year : year - 1;
  const era = Math.floor(y / 400);
  const inEra = y - era * 400;
  const sinceMarch = (month + 9) % 12;
  const inYear = Math.floor((153 * sinceMarch + 2) / 5) + day - 1;
  const leap = Math.floor(inEra / 4) - Math.floor(inEra / 100);
  return era * 146_097 + inEra * 365 + leap + inYear - 719_468;
};

/**
 * The date a number of days from 1 January 1970.
 * @example civilOf(1) // { year: 1970, month: 1, day: 2 }
 */
export const civilOf = (days: number): Civil => {
  const z = days + 719_468;
  const era = Math.floor(z / 146_097);
  const inEra = z - era * 146_097;
  const years = Math.floor(
    (inEra - Math.floor(inEra / 1460) + Math.floor(inEra / 36_524) - Math.floor(inEra / 146_096)) /
      365,
  );
  const inYear = inEra - (365 * years + Math.floor(years / 4) - Math.floor(years / 100));
  const sinceMarch = Math.floor((5 * inYear + 2) / 153);
  const month = sinceMarch < 10 ? sinceMarch + 3 : sinceMarch - 9;
  return {
    year: years + era * 400 + (month <= 2 ? 1 : 0),
    month,
    day: inYear - Math.floor((153 * sinceMarch + 2) / 5) + 1,
  };
};

/**
 * Reads a date written year-month-day.
 * Throws: nothing; undefined for what is no date of the calendar.
 * @example readDate('2026-02-30') // undefined
 */
export const readDate = (text: string): Civil | undefined => {
  const [all, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text) ?? [];
  if (all === undefined) return undefined;
  const date = { year: Number(year), month: Number(month), day: Number(day) };
  if (date.year < 1970 || date.month < 1 || date.month > 12) return undefined;
  const back = civilOf(daysTo(date));
  return back.month === date.month && back.day === date.day ? date : undefined;
};
