import { keptDayOf, type KeptDay } from '../sitting/day/kept-day.ts';
import type { Kept } from './storage.ts';

/** The day's timetable, once its reader asked for it to be kept. */
export const keptDay: Kept<KeptDay> = { thing: 'day-plan', version: 1, accept: keptDayOf };
