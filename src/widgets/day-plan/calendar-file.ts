import type { DayPlan } from '../../sitting/day/day-plan.ts';
import { icalendar } from '../../sitting/day/icalendar.ts';
import { download } from '../parts/download.ts';

/** Saves the day’s sittings as a calendar file. Throws what the calendar throws, a RangeError in words for the reader. */
export const saveCalendar = (plan: DayPlan, series: string, zone: string): void => {
  const text = icalendar(plan, { stamp: Date.now(), series, ...(zone !== '' && { zone }) });
  download(`sittings-${plan.day.date}.ics`, text, 'text/calendar;charset=utf-8');
};
