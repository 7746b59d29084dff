import {
  readClock,
  readLength,
  readSpans,
  writeClock,
  writeSpans,
} from '../../sitting/day/clock.ts';
import { dayPlan } from '../../sitting/day/day-plan.ts';
import type { DayTexts, FrameKey } from '../../sitting/day/kept-day.ts';

/** All of a day that a link may hold. No booking, no date: nothing about a child or a family is ever in an address. */
export const LINKED = ['start', 'end', 'slot', 'buffer', 'breaks'] as const satisfies FrameKey[];
type Linked = (typeof LINKED)[number];

/** Longer than any link of ours. */
const LONGEST = 2000;

const clock = (text: string): string | undefined => {
  const at = readClock(text);
  return at === undefined ? undefined : writeClock(at);
};
const minutes = (text: string): string | undefined => {
  const length = readLength(text);
  return length === undefined ? undefined : `${length}min`;
};
const spans = (text: string): string | undefined => {
  const found = readSpans(text);
  return found === undefined ? undefined : writeSpans(found);
};
const READERS: Readonly<Record<Linked, (text: string) => string | undefined>> = {
  start: clock,
  end: clock,
  slot: minutes,
  buffer: minutes,
  breaks: spans,
};

/**
 * The day's frame as a query; undefined while it cannot be read.
 * @example writeFrame(frame) // 'start=09:30&end=16:30&slot=30min&buffer=10min&breaks=12:10-13:00'
 */
export const writeFrame = (frame: DayTexts['frame']): string | undefined => {
  const parts = LINKED.map((key) => [key, READERS[key](frame[key])] as const);
  return parts.every(([, text]) => text !== undefined)
    ? parts.map(([key, text]) => `${key}=${text ?? ''}`).join('&')
    : undefined;
};

const quote = (text: string): string => `“${text.slice(0, 40)}${text.length > 40 ? '…' : ''}”`;

/**
 * Reads a day's frame from an address, whoever wrote it.
 *
 * Model: what cannot be used gives way to what the page starts with, and is named in a notice. Values that do not go
 * together give way all at once.
 * @param query with or without its question mark
 * @param starts the frame the page shows first
 * @returns undefined where the query is empty
 */
export const readFrame = (
  query: string,
  starts: DayTexts['frame'],
): { readonly frame: DayTexts['frame']; readonly notices: readonly string[] } | undefined => {
  if (query.replace(/^\?/, '') === '') return undefined;
  if (query.length > LONGEST)
    return {
      frame: starts,
      notices: ['The link is too long to be one of these; the timetable shows its start.'],
    };
  const pairs = [...new URLSearchParams(query)];
  const notices: string[] = [];
  const frame: Record<FrameKey, string> = { ...starts };
  for (const key of LINKED) {
    const [text, ...more] = pairs.filter(([name]) => name === key).map(([, value]) => value);
    if (text === undefined) continue;
    const read = more.length > 0 ? undefined : READERS[key](text);
    if (read === undefined)
      notices.push(
        more.length > 0
          ? `The link gives ${key} ${more.length + 1} times. The start value stands there instead.`
          : `The link’s ${key}, ${quote(text)}, could not be used. The start value stands there instead.`,
      );
    else frame[key] = read.replace(/min$/, '').replaceAll(';', '; ');
  }
  const strange = [...new Set(pairs.map(([name]) => name))].filter(
    (name) => !(LINKED as readonly string[]).includes(name),
  );
  if (strange.length > 0)
    notices.push(
      `The link also holds ${strange.slice(0, 3).map(quote).join(', ')}, which this timetable does not know.`,
    );
  try {
    dayPlan({
      date: '2026-11-28',
      start: frame.start,
      end: frame.end,
      slot: readLength(frame.slot),
      buffer: readLength(frame.buffer),
      breaks: readSpans(frame.breaks)?.map(({ start, end }) => ({
        start: writeClock(start),
        end: writeClock(end),
      })),
    });
    return { frame, notices };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return {
      frame: starts,
      notices: [
        `The link’s values do not go together: ${error.message} The timetable shows its start.`,
      ],
    };
  }
};
