import type { Due } from './review.ts';

/** Practice that a reader asked to keep: how many came right in a row, and what is to come again. */
export interface Practice {
  readonly streak: number;
  readonly best: number;
  readonly due: readonly Due[];
}

const isCount = (raw: unknown): raw is number =>
  Number.isInteger(raw) && (raw as number) >= 0 && (raw as number) <= 1e15;
const isDue = (raw: unknown): raw is Due =>
  typeof raw === 'object' &&
  raw !== null &&
  'template' in raw &&
  typeof raw.template === 'string' &&
  /^[a-z0-9-]{1,64}$/.test(raw.template) &&
  'box' in raw &&
  isCount(raw.box) &&
  raw.box < 10 &&
  'at' in raw &&
  isCount(raw.at);

/** What was kept, if it is sound. */
export const acceptPractice = (raw: unknown): Practice | undefined =>
  typeof raw === 'object' &&
  raw !== null &&
  'streak' in raw &&
  isCount(raw.streak) &&
  'best' in raw &&
  isCount(raw.best) &&
  'due' in raw &&
  Array.isArray(raw.due) &&
  raw.due.length <= 200 &&
  raw.due.every(isDue)
    ? { streak: raw.streak, best: raw.best, due: raw.due }
    : undefined;
