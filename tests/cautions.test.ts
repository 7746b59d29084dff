import { describe, expect, it } from 'vitest';
import { readExercises, readLessons } from './support/content.ts';

// Where a number is about something that can hurt, its caution stands beside it and not in a footer.
const hurting = ['StandStability', 'PlatformDrop', 'MainsLoad', 'RecycleBudget', 'DayPlan'];
const lessons = readLessons().filter(({ order }) => order.startsWith('4.'));
const placed = lessons.flatMap(({ slug, body }) =>
  hurting
    .filter((name) => body.includes(`<${name} />`))
    .map((name) => ({ slug, name, after: body.split(`<${name} />`)[1] ?? '' })),
);

describe('the lessons of the sitting', () => {
  it('are seven, numbered without a gap', () => {
    expect(lessons.map(({ order }) => order)).toEqual(
      ['01', '02', '03', '04', '05', '06', '07'].map((number) => `4.${number}`),
    );
    expect(placed.map(({ name }) => name).toSorted()).toEqual(hurting.toSorted());
  });

  it.each(placed)('say a caution right after $name in $slug, and who decides', ({ after }) => {
    const [before = '', caution = ''] = after.split('<Caution ');
    expect(before).not.toMatch(/^## /m);
    expect(before.length).toBeLessThan(500);
    expect(caution).toMatch(/^who="[^"]{8,}">/);
  });

  it.each(lessons)('have a caution of their own in $slug', ({ body }) => {
    expect(body).toMatch(/<Caution who="[^"]+">/);
  });

  it.each(lessons)('call no stand, crate, socket or height safe in $slug', ({ body }) => {
    expect(body).not.toMatch(/\b(?:is|are|be|stays?|holds?|makes? it|perfectly|quite) safe\b/i);
    expect(body).not.toMatch(/\bsafe (?:height|load|distance|stand|pull|weight)\b/i);
  });

  it.each(lessons)('put no name, age or nap into a link in $slug', ({ body }) => {
    for (const [, query = ''] of body.matchAll(/href="\?([^"]*)"/g)) {
      expect(query).not.toMatch(/(?:^|&)(?:name|alias|age|nap|birth)[\w-]*=/);
    }
  });
});

it('asks no question of the sitting whose answer would clear something for use', () => {
  const own = readExercises().filter(({ file }) => file.includes('/4-the-sitting/'));
  expect(own.length).toBeGreaterThanOrEqual(21);
  for (const { file, data } of own) {
    const text = [data['question'], data['explain']].map(String).join(' ');
    expect(text, file).not.toMatch(/\b(?:is|are|was) safe\b|\bsafe height\b/i);
  }
});
