import type { DayPlan } from '../../sitting/day/day-plan.ts';

const many = (n: number, one: string): string => `${n === 0 ? 'no' : n} ${one}${n > 1 ? 's' : ''}`;

/** How many sittings fit, how many are booked, and how many conflicts are left; the first is the large one. */
export const sentence = ({ slots, day, conflicts }: DayPlan): readonly [string, string] => {
  const booked = day.bookings.length;
  const fit = slots.length;
  return [
    fit === 0 ? 'No sitting' : many(fit, 'sitting'),
    ` ${fit < 2 ? 'fits' : 'fit'} in this day; ${
      booked === 0
        ? 'nobody is booked.'
        : `${booked} ${booked === 1 ? 'is' : 'are'} booked, with ${many(conflicts.length, 'conflict')}.`
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
