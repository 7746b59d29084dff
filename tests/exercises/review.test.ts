import { expect, it } from 'vitest';
import { afterAnswer, dueNow, when, why, type Due } from '../../src/exercises/review.ts';

const noon = new Date(2026, 10, 25, 12).getTime();
/** So many days after that noon, and so many hours; no clock is changed in them. */
const after = (days: number, hours = 0): number => new Date(2026, 10, 25 + days, 12 + hours).getTime(); // prettier-ignore

it('brings back tomorrow what went wrong, then after three, seven and twenty-one days, then no more', () => {
  let list = afterAnswer([], 'walk-back', false, noon);
  expect(dueNow(list, after(0, 11))).toEqual([]);
  let days = 0;
  for (const wait of [1, 3, 7, 21]) {
    days += wait;
    expect(dueNow(list, after(days - 1, 11))).toEqual([]);
    // From the morning of its day on, not only at the hour it went wrong.
    expect(dueNow(list, after(days, -11)).map(({ template }) => template)).toEqual(['walk-back']);
    list = afterAnswer(list, 'walk-back', true, after(days));
  }
  expect(list).toEqual([]);
});

it('begins again when it goes wrong once more, and keeps no list of what never did', () => {
  const once: readonly Due[] = [{ template: 'a', box: 2, at: after(5) }];
  expect(afterAnswer(once, 'a', false, after(5))).toEqual([
    { template: 'a', box: 0, at: after(6) },
  ]);
  expect(afterAnswer(once, 'b', true, noon)).toEqual(once);
});

it('asks the longest overdue first', () => {
  const list: readonly Due[] = [
    { template: 'late', box: 0, at: after(2) },
    { template: 'later', box: 0, at: after(1) },
    { template: 'not yet', box: 0, at: after(9) },
  ];
  expect(dueNow(list, after(5)).map(({ template }) => template)).toEqual(['later', 'late']);
});

it('lets nothing wait longer for coming right before it is due', () => {
  const list = afterAnswer([], 'a', false, noon);
  expect(afterAnswer(list, 'a', true, after(0, 1))).toEqual(list);
  expect(afterAnswer(list, 'a', true, after(1))).toEqual([{ template: 'a', box: 1, at: after(4) }]);
});

it('says why each is there and when it comes', () => {
  const due = (box: number, days: number): Due => ({ template: 'a', box, at: after(days) });
  expect(why(due(0, 1), noon)).toBe('it went wrong today');
  expect(why(due(0, 0), noon)).toBe('it went wrong yesterday');
  expect(why(due(0, -4), noon)).toBe('it went wrong 5 days ago');
  expect(why(due(1, 3), noon)).toBe('it has come right once since it went wrong, last today');
  expect(why(due(2, 1), noon)).toBe('it has come right twice since it went wrong, last 6 days ago');
  expect(why(due(3, 0), noon)).toMatch(/right 3 times .*21 days ago$/);
  expect(when(due(0, 0), noon)).toBe('due now');
  expect(when(due(0, 1), noon)).toBe('comes again tomorrow');
  expect(when(due(1, 3), noon)).toBe('comes again in 3 days');
  expect(when({ template: 'a', box: 0, at: after(0, 3) }, noon)).toBe('due now');
});
