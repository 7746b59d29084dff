import { expect, it } from 'vitest';
import { afterAnswer, dueNow, type Due } from '../../src/exercises/review.ts';

const day = 86_400_000;

it('brings back tomorrow what went wrong, then after three, seven and twenty-one days, then no more', () => {
  let list = afterAnswer([], 'walk-back', false, 0);
  expect(dueNow(list, day - 1)).toEqual([]);
  let now = 0;
  for (const days of [1, 3, 7, 21]) {
    now += days * day;
    expect(dueNow(list, now - 1)).toEqual([]);
    expect(dueNow(list, now).map(({ template }) => template)).toEqual(['walk-back']);
    list = afterAnswer(list, 'walk-back', true, now);
  }
  expect(list).toEqual([]);
});

it('begins again when it goes wrong once more, and keeps no list of what never did', () => {
  const once: readonly Due[] = [{ template: 'a', box: 2, at: 5 * day }];
  expect(afterAnswer(once, 'a', false, 5 * day)).toEqual([{ template: 'a', box: 0, at: 6 * day }]);
  expect(afterAnswer(once, 'b', true, 0)).toEqual(once);
});

it('asks the longest overdue first', () => {
  const list: readonly Due[] = [
    { template: 'late', box: 0, at: 2 },
    { template: 'later', box: 0, at: 1 },
    { template: 'not yet', box: 0, at: 9 },
  ];
  expect(dueNow(list, 5).map(({ template }) => template)).toEqual(['later', 'late']);
});
