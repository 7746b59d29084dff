import { describe, expect, it, vi } from 'vitest';
import { questionsOf, readAssignment, writeAssignment } from '../../src/exercises/assignment.ts';
import {
  isMissing,
  joinTexts,
  joinWorks,
  withoutWork,
  withWork,
  workIn,
  worksIn,
} from '../../src/exercises/begun.ts';
import { BLANK, isBlank } from '../../src/exercises/blank.ts';
import { readWork, writeWork, type Work } from '../../src/exercises/result-file.ts';
import { fileOf, importAll } from '../../src/site/storage-file.ts';
import { workBegun } from '../../src/site/work.ts';

const assignment = {
  title: 'Light & room, 50 %',
  due: 'Friday',
  seeds: 'alias',
  hints: 'tenth',
  draw: 7,
  items: [{ template: 'step-back-for-the-frame', version: 1, count: 3 }],
} as const;
const link = writeAssignment(assignment);
const time = (minute: number): string => `2026-11-25T09:${String(minute).padStart(2, '0')}:00.000Z`;

/** Work with a text for each question that has one, each typed at its minute. */
const workOf = (
  alias: string,
  saved: number,
  texts: readonly (readonly [text: string, minute: number] | undefined)[],
): Work => ({
  assignment,
  link,
  alias,
  started: time(0),
  saved: time(saved),
  answers: questionsOf(assignment, alias).flatMap((question, i) => {
    const typed = texts[i];
    return typed ? [{ ...question, raw: typed[0], hints: 0, at: time(typed[1]) }] : [];
  }),
});
const rawsOf = (work: Work | undefined): Record<number, unknown> =>
  Object.fromEntries(
    questionsOf(assignment, work?.alias ?? '').flatMap(({ seed }, i) => {
      const answer = work?.answers.find((one) => one.seed === seed);
      return answer ? [[i, answer.raw]] : [];
    }),
  );

describe('work begun in a browser', () => {
  const texts = [
    writeWork(workOf('heron', 3, [['1 m', 2]])),
    '{"from":"another edition"}',
    writeWork(workOf('gull', 9, [['2 m', 8]])),
  ];

  it('is found by its alias however that is written, last touched first', () => {
    expect(rawsOf(workIn(texts, { link, alias: '  HERON ' }))).toEqual({ 0: '1 m' });
    expect(workIn(texts, { link: `${link}x`, alias: 'heron' })).toBeUndefined();
    expect(worksIn(texts).map(({ alias }) => alias)).toEqual(['gull', 'heron']);
  });

  it('takes its own place and no other’s, and what cannot be read stays', () => {
    const next = withWork(texts, workOf('Heron', 20, [['3 m', 19]]));
    expect(worksIn(next).map(({ alias }) => alias)).toEqual(['Heron', 'gull']);
    expect(next).toContain(texts[1]);
    expect(withoutWork(next, { link, alias: 'heron' })).toEqual([texts[1], texts[2]]);
  });

  it('is never dropped to make room', () => {
    const many = Array.from({ length: 60 }, (_, i) => workOf(`bird ${i}`, 1, [['1 m', 1]]));
    const kept = many.reduce<readonly string[]>(withWork, []);
    expect(worksIn(kept)).toHaveLength(60);
    expect(workBegun.accept(JSON.parse(JSON.stringify(kept)))).toEqual(kept);
  });

  it('is not lost with one text that cannot be read', () => {
    expect(workBegun.accept(texts)).toEqual(texts);
    expect(workBegun.accept([...texts, 5])).toBeUndefined();
    expect(workBegun.accept(['x'.repeat(700_000)])).toBeUndefined();
  });
});

describe('two states of one work', () => {
  const here = workOf('heron', 20, [['here', 10], ['here', 5], undefined]);
  const file = workOf('Heron', 15, [
    ['file', 4],
    ['file', 12],
    ['file', 3],
  ]);

  it('are joined by the later answer to each question, whichever comes first', () => {
    for (const joined of [joinWorks(here, file), joinWorks(file, here)]) {
      expect(rawsOf(joined)).toEqual({ 0: 'here', 1: 'file', 2: 'file' });
      expect([joined.alias, joined.saved, joined.started]).toEqual(['heron', time(20), time(0)]);
    }
  });

  it('know what the other lacks, and what it has later', () => {
    expect(isMissing(here.answers, file.answers)).toBe(true);
    expect(isMissing(file.answers, joinWorks(here, file).answers)).toBe(false);
    expect(isMissing(workOf('heron', 1, [undefined, ['x', 12]]).answers, file.answers)).toBe(false);
  });

  it('stay as one when a file of everything is read back in', () => {
    const strange = '{"from":"another edition"}';
    const mine = [writeWork(here), strange];
    const theirs = [writeWork(file), writeWork(workOf('gull', 1, [['1 m', 1]])), strange];
    const joined = joinTexts(mine, theirs);
    expect(joined).toHaveLength(3);
    expect(rawsOf(workIn(joined, here))).toEqual({ 0: 'here', 1: 'file', 2: 'file' });
    expect(rawsOf(workIn(joined, { link, alias: 'gull' }))).toEqual({ 0: '1 m' });
  });
});

it('is joined to, and not replaced by, what a file of everything brings', () => {
  const shelf = new Map<string, string>();
  vi.stubGlobal('localStorage', {
    getItem: (key: string) => shelf.get(key) ?? null,
    setItem: (key: string, text: string) => shelf.set(key, text),
  });
  try {
    const mine = workOf('heron', 20, [['here', 10]]);
    const theirs = [workOf('heron', 15, [undefined, ['file', 4]]), workOf('gull', 1, [])];
    shelf.set('sbn:work:v1', JSON.stringify([writeWork(mine)]));
    expect(importAll(fileOf({ 'sbn:work:v1': theirs.map(writeWork) }), [workBegun])).toMatch(
      /^Read/,
    );
    const kept = JSON.parse(shelf.get('sbn:work:v1') ?? '') as string[];
    expect(rawsOf(workIn(kept, mine))).toEqual({ 0: 'here', 1: 'file' });
    expect(worksIn(kept)).toHaveLength(2);
  } finally {
    vi.unstubAllGlobals();
  }
});

it('belongs to one assignment whatever was added to the link on its way', () => {
  const strayed = writeWork({ ...workOf('heron', 1, []), link: `utm_source=post&${link}&x=1` });
  const read = readWork(strayed);
  expect(read.ok && read.value.link).toBe(link);
  expect(readAssignment(link).ok).toBe(true);
});

it('tells what was left blank from what was typed', () => {
  for (const raw of [...Object.values(BLANK), '  ', { line: '', number: '' }])
    expect(isBlank(raw), JSON.stringify(raw)).toBe(true);
  for (const raw of ['0', [0], { number: 'x' }]) expect(isBlank(raw)).toBe(false);
});
