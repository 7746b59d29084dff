import { expect, it } from 'vitest';
import { afterAnswer, dueNow, when, why, type Due } from '../../src/exercises/review.ts';

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

it('lets nothing wait longer for coming right before it is due', () => {
  const list = afterAnswer([], 'a', false, 0);
  expect(afterAnswer(list, 'a', true, 1000)).toEqual(list);
  expect(afterAnswer(list, 'a', true, day)).toEqual([{ template: 'a', box: 1, at: 4 * day }]);
});

it('says why each is there and when it comes', () => {
  const noon = new Date(2026, 10, 25, 12).getTime();
  const due = (box: number, days: number): Due => ({ template: 'a', box, at: noon + days * day });
  expect(why(due(0, 1), noon)).toBe('it went wrong today');
  expect(why(due(0, 0), noon)).toBe('it went wrong yesterday');
  expect(why(due(0, -4), noon)).toBe('it went wrong 5 days ago');
  expect(why(due(1, 3), noon)).toBe('it has come right once since it went wrong, last today');
  expect(why(due(2, 1), noon)).toBe('it has come right twice since it went wrong, last 6 days ago');
  expect(why(due(3, 0), noon)).toMatch(/right 3 times .*21 days ago$/);
  expect(when(due(0, 0), noon)).toBe('due now');
  expect(when(due(0, 1), noon)).toBe('comes again tomorrow');
  expect(when(due(1, 3), noon)).toBe('comes again in 3 days');
  expect(when({ template: 'a', box: 0, at: noon + 1000 }, noon)).toBe('comes again later today');
});
