/** A template that went wrong and is to come again. */
export interface Due {
  readonly template: string;
  /** How often it has come right since. */
  readonly box: number;
  /** When it is due, in milliseconds since 1970. */
  readonly at: number;
}

const DAY = 86_400_000;
/** Days until a template comes again, by how often it came right since it went wrong. */
export const SPACES = [1, 3, 7, 21] as const;
const MOST = 200;

/** Days from one moment to another as a calendar counts them. */
const daysBetween = (from: number, to: number): number => {
  const midnight = (at: number): number => new Date(at).setHours(0, 0, 0, 0);
  // A day in which the clock is changed has 23 hours or 25.
  return Math.round((midnight(to) - midnight(from)) / DAY);
};

/** Due is what is due at any time of the day: whoever worked in the evening finds it the next morning. */
export const isDue = ({ at }: Due, now: number): boolean => daysBetween(now, at) <= 0;

/**
 * The list after one more answer: what went wrong comes again tomorrow, and each time it comes right it waits longer;
 * after the last space it is done with. What comes right before it is due is left waiting: it was not yet time to forget
 * it. (Common practice, no source, for the spaces themselves.)
 * @param now milliseconds since 1970
 */
export const afterAnswer = (
  list: readonly Due[],
  template: string,
  right: boolean,
  now: number,
): readonly Due[] => {
  const before = list.find((one) => one.template === template);
  const others = list.filter((one) => one.template !== template);
  if (!right) return [...others, { template, box: 0, at: now + DAY * SPACES[0] }].slice(-MOST);
  if (!before || !isDue(before, now)) return list;
  const box = before.box + 1;
  const space = SPACES[box];
  return space === undefined ? others : [...others, { template, box, at: now + DAY * space }];
};

/** What is due, longest overdue first. */
export const dueNow = (list: readonly Due[], now: number): readonly Due[] =>
  list.filter((one) => isDue(one, now)).toSorted((a, b) => a.at - b.at);

const ago = (days: number): string =>
  days <= 0 ? 'today' : days === 1 ? 'yesterday' : `${days} days ago`;
const ahead = (days: number): string => (days === 1 ? 'tomorrow' : `in ${days} days`);

/** Why a template is on the list: “it went wrong yesterday”. */
export const why = ({ box, at }: Due, now: number): string => {
  const last = at - DAY * (SPACES[box] ?? 0);
  const when = ago(daysBetween(last, now));
  if (box === 0) return `it went wrong ${when}`;
  return `it has come right ${box === 1 ? 'once' : box === 2 ? 'twice' : `${box} times`} since it went wrong, last ${when}`;
};

/** When it comes: “due now”, “comes again in 3 days”. */
export const when = (due: Due, now: number): string =>
  isDue(due, now) ? 'due now' : `comes again ${ahead(daysBetween(now, due.at))}`;
