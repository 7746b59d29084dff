import { overlap, writeClock, type Span } from '../sitting/day/clock.ts';
import type { Conflict, DayPlan } from '../sitting/day/day-plan.ts';
import type { Mark, Role, Sheet } from './sheet.ts';

const WIDTH = 360;
/** Where the set's own column stands, and the children's lanes beside it. */
const SET = [62, 230] as const;
const LANES = [238, 356] as const;
const [TOP, FOOT] = [36, 12];
/** A line of words is this high, a wide letter this wide. */
const [LINE, LETTER] = [16, 6.5];

const round = (x: number): number => Math.round(x * 100) / 100;

const KINDS: Readonly<Record<Conflict['kind'], string>> = {
  nap: 'nap',
  break: 'wish in a break',
  end: 'day too short',
};

/** What stands in the way of a booking, in a word or two; empty where nothing does. */
const wordsFor = (conflicts: readonly Conflict[], booking: number): string =>
  [
    ...new Set(conflicts.filter((one) => one.booking === booking).map(({ kind }) => KINDS[kind])),
  ].join(', ');

const cut = (text: string, room: number): string => {
  const signs = Array.from(text);
  const most = Math.floor(room / LETTER);
  return signs.length <= most ? text : most < 4 ? '' : `${signs.slice(0, most - 1).join('')}…`;
};

/**
 * A day to scale, its hours down the sheet: the set’s own column with sittings, breaks and changes, and beside it a lane
 * for each booking with its naps and its sitting.
 * @param time how times are written
 */
export const draw = (plan: DayPlan, time: (minutes: number) => string = writeClock): Sheet => {
  const { day, slots, changes, conflicts } = plan;
  const { start, end, bookings } = day;
  const length = end - start;
  // Tall enough for a line of words in every slot, within what a page can hold.
  const scale = Math.max(300 / length, Math.min((LINE + 2) / day.slot, 780 / length));
  const y = (minutes: number): number =>
    TOP + (Math.min(end, Math.max(start, minutes)) - start) * scale;
  const marks: Mark[] = [];
  const box = (
    role: Role,
    [left, right]: readonly [number, number],
    at: Span,
    filled = false,
  ): void => {
    const [x, far, top, foot] = [left, right, y(at.start), y(at.end)].map(round);
    if (foot !== top)
      marks.push({
        kind: 'path',
        role,
        filled,
        d: `M${x} ${top}L${far} ${top}L${far} ${foot}L${x} ${foot}Z`,
      });
  };
  const line = (role: Role, points: readonly (readonly [number, number])[]): void => {
    marks.push({
      kind: 'path',
      role,
      d: `M${points.map((one) => one.map(round).join(' ')).join('L')}`,
    });
  };
  const text = (
    x: number,
    at: number,
    words: string,
    anchor: 'start' | 'middle' | 'end' = 'start',
    role?: Role,
  ): void => {
    if (words !== '')
      marks.push({
        kind: 'text',
        x: round(x),
        y: round(at),
        text: words,
        anchor,
        ...(role && { role }),
      });
  };
  const [left, right] = SET;

  text(left, 14, 'on the set');
  text(LANES[1], 14, 'each child’s naps', 'end');
  // The hours.
  const every = [60, 120, 180, 240].find((step) => step * scale >= LINE) ?? 360;
  line('object', [
    [left, y(start)],
    [left, y(end)],
  ]);
  let last = -Infinity;
  for (let at = Math.ceil(start / every) * every; at <= end; at += every) {
    // Not through the set's column, where there are words.
    line('dimension', [
      [left - 5, y(at)],
      [left, y(at)],
    ]);
    line('dimension', [
      [right, y(at)],
      [LANES[1], y(at)],
    ]);
    text(left - 8, y(at) + 4, time(at), 'end');
    last = y(at);
  }
  if (last === -Infinity) text(left - 8, y(start) + 4, time(start), 'end');

  // One line of words in a box, where the box is high enough for one.
  const words = (at: Span, says: string, note = '', role?: Role): void => {
    if ((at.end - at.start) * scale < LINE - 2) return;
    const middle = (y(at.start) + y(at.end)) / 2 + 4.5;
    const room = right - left - 12;
    const kept = cut(note, room / 2);
    text(
      left + 6,
      middle,
      cut(says, room - (kept === '' ? 0 : (Array.from(kept).length + 1) * LETTER)),
      'start',
      role,
    );
    text(right - 6, middle, kept, 'end', 'emphasis');
  };
  for (const one of day.breaks) {
    box('shade', SET, one, true);
    words(one, one.name, '', 'dimension');
  }
  for (const one of changes) {
    box('hidden', SET, one);
    words(one, 'the set is changed', '', 'dimension');
  }
  for (const one of slots) {
    const booked = one.booking === undefined ? undefined : bookings[one.booking];
    const wrong = one.booking === undefined ? '' : wordsFor(conflicts, one.booking);
    box(
      booked ? (wrong ? 'emphasis' : 'object') : 'hidden',
      SET,
      one,
      booked !== undefined && !wrong,
    );
    words(one, `${time(one.start)} ${booked?.alias ?? 'free'}`, wrong);
  }

  const lane = Math.min(18, (LANES[1] - LANES[0]) / Math.max(1, bookings.length));
  const number = Math.ceil((bookings.length > 9 ? 15 : 9) / lane);
  bookings.forEach(({ naps }, i) => {
    const middle = LANES[0] + (i + 0.5) * lane;
    const sides = [middle - lane * 0.36, middle + lane * 0.36] as const;
    if (i % number === 0) text(middle, TOP - 5, String(i + 1), 'middle', 'dimension');
    if (lane >= 8)
      line('construction', [
        [middle, y(start)],
        [middle, y(end)],
      ]);
    // In a lane too narrow for an outline a nap is a line.
    for (const nap of naps)
      if (lane >= 8) box('shade', sides, nap, true);
      else if (overlap(nap, day))
        line('shade', [
          [middle, y(nap.start)],
          [middle, y(nap.end)],
        ]);
    const mine = slots.find(({ booking }) => booking === i);
    if (!mine) return;
    box('object', sides, mine);
    if (!conflicts.some(({ kind, booking }) => kind === 'nap' && booking === i)) return;
    const [a, b] = [y(mine.start), y(mine.end)];
    const half = Math.min(lane * 0.45, 6);
    const at = (a + b) / 2;
    line('emphasis', [
      [middle - half, at - half],
      [middle + half, at + half],
    ]);
    line('emphasis', [
      [middle - half, at + half],
      [middle + half, at - half],
    ]);
  });

  const without = bookings.filter((_one, i) => !slots.some(({ booking }) => booking === i));
  let foot = y(end) + FOOT;
  if (without.length > 0) {
    foot += LINE;
    text(
      left,
      foot - 6,
      cut(`no slot: ${without.map(({ alias }) => alias).join(', ')}`, LANES[1] - left),
      'start',
      'emphasis',
    );
  }

  const span = (at: Span): string => `${time(at.start)}–${time(at.end)}`;
  const aboutOf = (i: number): readonly string[] => {
    const { age, naps } = bookings[i] ?? { age: undefined, naps: [] };
    return [
      age === undefined ? '–' : String(age),
      naps.map(span).join(', ') || '–',
      wordsFor(conflicts, i) || '–',
    ];
  };
  const rows = [
    ...slots.map((one) => ({
      at: one.start,
      row:
        one.booking === undefined
          ? [span(one), 'free', '–', '–', '–']
          : [span(one), bookings[one.booking]?.alias ?? '', ...aboutOf(one.booking)],
    })),
    ...day.breaks.map((one) => ({ at: one.start, row: [span(one), one.name, '–', '–', '–'] })),
    ...changes.map((one) => ({
      at: one.start,
      row: [span(one), 'the set is changed', '–', '–', '–'],
    })),
  ].sort((a, b) => a.at - b.at);

  const sits = slots.flatMap(({ booking, ...one }) =>
    booking === undefined ? [] : [`${bookings[booking]?.alias ?? ''} ${span(one)}`],
  );
  const napping = conflicts.filter(({ kind }) => kind === 'nap').length;
  return {
    width: WIDTH,
    height: round(foot),
    marks,
    says: `The day from ${time(start)} to ${time(end)}, its hours down the sheet. ${slots.length} ${slots.length === 1 ? 'slot' : 'slots'}: ${sits.join(', ') || 'nobody is booked'}. ${
      day.breaks.filter((one) => overlap(one, day)).length > 0
        ? `Breaks ${day.breaks.map(span).join(', ')}. `
        : ''
    }A lane for each booking shows its naps; ${napping === 0 ? 'no sitting meets one' : `a cross marks ${napping} that a sitting meets`}.`,
    table: {
      head: ['Time', 'On the set', 'Age, months', 'Usual naps', 'Conflict'],
      rows: [
        ...rows.map(({ row }) => row),
        ...bookings.flatMap((one, i) =>
          without.includes(one) ? [['no slot', one.alias, ...aboutOf(i)]] : [],
        ),
      ],
    },
  };
};
