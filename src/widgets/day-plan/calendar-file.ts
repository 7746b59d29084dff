import type { DayPlan } from '../../sitting/day/day-plan.ts';
import { icalendar } from '../../sitting/day/icalendar.ts';

/** Saves the day’s sittings as a calendar file. Throws what the calendar throws, a RangeError in words for the reader. */
export const saveCalendar = (plan: DayPlan, series: string, zone: string): void => {
  const text = icalendar(plan, { stamp: Date.now(), series, ...(zone !== '' && { zone }) });
  const address = URL.createObjectURL(new Blob([text], { type: 'text/calendar;charset=utf-8' }));
  const link = document.createElement('a');
  link.href = address;
  link.download = `sittings-${plan.day.date}.ics`;
  link.click();
  // Some browsers fetch it a moment later.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
};
