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
const SPACES = [1, 3, 7, 21] as const;
const MOST = 200;

/**
 * The list after one more answer: what went wrong comes again tomorrow, and each time it comes right it waits longer;
 * after the last space it is done with. (Common practice, no source, for the spaces themselves.)
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
  if (!before) return list;
  const box = before.box + 1;
  const space = SPACES[box];
  return space === undefined ? others : [...others, { template, box, at: now + DAY * space }];
};

/** What is due, longest overdue first. */
export const dueNow = (list: readonly Due[], now: number): readonly Due[] =>
  list.filter(({ at }) => at <= now).toSorted((a, b) => a.at - b.at);
