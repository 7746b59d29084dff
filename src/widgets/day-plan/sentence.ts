import type { DayPlan } from '../../sitting/day/day-plan.ts';

const many = (n: number, one: string, more: string): string =>
  `${n === 0 ? 'no' : n} ${n === 1 ? one : more}`;

/** How many sittings fit, how many are booked, and how many conflicts are left; the first is the large one. */
export const sentence = ({ slots, day, conflicts }: DayPlan): readonly [string, string] => {
  const booked = day.bookings.length;
  const fit = slots.length;
  return [
    fit === 0 ? 'No sitting' : many(fit, 'sitting', 'sittings'),
    ` ${fit < 2 ? 'fits' : 'fit'} in this day; ${
      booked === 0
        ? 'nobody is booked.'
        : `${booked} ${booked === 1 ? 'is' : 'are'} booked, with ${many(conflicts.length, 'conflict', 'conflicts')}.`
    }`,
  ];
};

/** Under the sentence: what stands in the way, and that no other order would do better. */
export const conflictLines = ({ conflicts, day }: DayPlan): readonly string[] => [
  ...conflicts.map(({ says }) => says),
  ...(conflicts.length > 0 && day.bookings.length > 1
    ? ['No other order of these bookings in these slots has fewer conflicts.']
    : []),
];
