import { describe, expect, it } from 'vitest';
import { complaintOfAlias, foldAlias } from '../../src/exercises/alias.ts';
import {
  idOfAssignment,
  questionsOf,
  readAssignment,
  SEEDS,
  writeAssignment,
  type Assignment,
} from '../../src/exercises/assignment.ts';
import { itemsOf, markWork, type Ruling } from '../../src/exercises/desk.ts';
import { isWhole, readWork, writeWork, type Work } from '../../src/exercises/result-file.ts';
import { overrideKey, sumOfAnswer } from '../../src/exercises/rulings.ts';
import { commonest, correlation, itemRest } from '../../src/exercises/statistics.ts';
import { variantOf } from '../../src/exercises/variant.ts';
import { workOut } from '../../src/exercises/variant.ts';
import { bank } from '../support/bank.ts';
import { recordOf } from '../support/records.ts';

const assignment: Assignment = {
  title: 'Light & room, 50 %',
  due: 'Friday; before the set',
  seeds: 'alias',
  hints: 'tenth',
  draw: 7,
  items: [{ template: 'step-back-for-the-frame', version: 1, count: 3 }],
};
const templates = new Map(bank.map(({ template }) => [template.id, template]));
const at = '2026-11-25T09:30:00.000Z';

/** Work with the right answers, but for those at `wrong`. */
const workOf = (alias: string, wrong: readonly number[] = []): Work => ({
  assignment,
  link: writeAssignment(assignment),
  alias,
  started: at,
  saved: at,
  answers: questionsOf(assignment, alias).map((question, i) => {
    const template = templates.get(question.template);
    if (template?.kind !== 'numeric') throw new Error('The sample template is gone.');
    const { given } = variantOf(template, recordOf, question.seed);
    const right = workOut(recordOf, { formula: template.formula, given, result: template.ask });
    return {
      ...question,
      raw: wrong.includes(i) ? '17 m' : `${String(right.value)} m`,
      hints: 0,
      at,
    };
  }),
});

describe('an alias', () => {
  it('is one alias however it is written', () => {
    // A letter with its accent apart, and in one.
    expect(foldAlias('  Blue  HE\u0301RON ')).toBe(foldAlias('blue hÉron'));
  });

  it.each(['', '   ', 'x'.repeat(41), 'a\u202Eb', 'a\u0000b'])('refuses %j', (alias) => {
    expect(complaintOfAlias(alias)).toBeDefined();
  });
});

describe('an assignment', () => {
  it('comes back from its link as it was', () => {
    const read = readAssignment(`?${writeAssignment(assignment)}`);
    expect(read).toEqual({ ok: true, value: assignment });
  });

  it.each([
    ['', 'holds no questions'],
    ['title=x', 'holds no questions'],
    [`${writeAssignment(assignment)}&draw=8`, 'more than once'],
    [writeAssignment(assignment).replace('alias', 'mine'), 'whose numbers'],
    [writeAssignment(assignment).replace('tenth', 'dear'), 'what hints cost'],
    [writeAssignment(assignment).replace('draw=7', 'draw=-1'), 'not a whole number'],
    [writeAssignment(assignment).replace('.1.3', '.1.0'), 'From 1 to 20'],
    [writeAssignment(assignment).replace('.1.3', '.1.99'), 'From 1 to 20'],
    [writeAssignment(assignment).replace('step-back', '<script>'), 'names no question'],
    [`${writeAssignment(assignment)},step-back-for-the-frame.1.1`, 'twice'],
    ['x'.repeat(7000), 'too long'],
  ])('refuses %s', (query, why) => {
    const read = readAssignment(query);
    expect(read.ok ? '' : read.why).toContain(why);
  });

  it('draws each alias its own seeds, all of them tried ones, and none twice', () => {
    const copies = ['heron', 'gull', 'tern'].map((alias) => questionsOf(assignment, alias));
    for (const questions of copies) {
      expect(questions).toHaveLength(3);
      expect(new Set(questions.map(({ seed }) => seed)).size).toBe(3);
      for (const { seed } of questions) expect(seed).toBeLessThan(SEEDS);
    }
    expect(new Set(copies.map((copy) => JSON.stringify(copy))).size).toBe(3);
    expect(questionsOf(assignment, ' HERON ')).toEqual(questionsOf(assignment, 'heron'));
  });

  it('draws all the same where it says so, and others for another draw', () => {
    const same = { ...assignment, seeds: 'same' as const };
    expect(questionsOf(same, 'heron')).toEqual(questionsOf(same, 'gull'));
    expect(questionsOf({ ...same, draw: 8 }, 'heron')).not.toEqual(questionsOf(same, 'heron'));
    expect(idOfAssignment(same)).not.toBe(idOfAssignment(assignment));
  });
});

describe('a result file', () => {
  const work = workOf('heron');
  const text = writeWork(work);
  const changed = (change: (file: Record<string, unknown>) => void): string => {
    const file = JSON.parse(text) as Record<string, unknown>;
    change(file);
    return JSON.stringify(file);
  };

  it('comes back as it was, and whole', () => {
    expect(readWork(text)).toEqual({ ok: true, value: work });
    expect(isWhole(text)).toBe(true);
    expect(isWhole(changed((file) => (file['alias'] = 'gull')))).toBe(false);
  });

  it.each<[string, string, string]>([
    ['huge', ' '.repeat(600_000), 'half a megabyte'],
    ['deep', '['.repeat(5000), 'nested deeper'],
    ['cut off', text.slice(0, 200), 'cut off'],
    ['not ours', '{"a":1}', 'no work saved'],
    ['a list', '[1,2]', 'no work saved'],
    [
      'of a newer edition',
      changed((file) => (file['sitting-by-numbers-work'] = 9)),
      'newer edition',
    ],
    [
      'of no version',
      changed((file) => (file['sitting-by-numbers-work'] = 'x')),
      'has the version',
    ],
    ['without its link', changed((file) => (file['link'] = 4)), 'which assignment'],
    [
      'with a hostile link',
      changed((file) => (file['link'] = 'ask=<script>alert(1)</script>')),
      'cannot be read',
    ],
    ['of no alias', changed((file) => (file['alias'] = '')), 'no alias'],
    ['of another alias', changed((file) => (file['alias'] = 'gull')), 'belongs to no question'],
    ['without times', changed((file) => (file['saved'] = 'yesterday')), 'begun and saved'],
    ['without answers', changed((file) => (file['answers'] = 'all')), 'holds no answers'],
    [
      'with an answer twice',
      changed((file) => {
        const all = file['answers'] as unknown[];
        all[1] = all[0];
      }),
      'twice',
    ],
    [
      'with too many answers',
      changed((file) => {
        const all = file['answers'] as unknown[];
        all.push(all[0]);
      }),
      'more answers',
    ],
    [
      'with a monstrous answer',
      changed((file) => {
        ((file['answers'] as { raw: unknown }[])[0] ?? { raw: 0 }).raw = 'x'.repeat(300);
      }),
      'nothing that can be typed',
    ],
  ])('is refused with the reason when it is %s', (_name, file, why) => {
    const read = readWork(file);
    expect(read.ok ? 'taken' : read.why).toContain(why);
  });

  it('is not fooled by a brace inside a text', () => {
    const braces = changed((file) => {
      ((file['answers'] as { raw: unknown }[])[0] ?? { raw: 0 }).raw = '{{{{{{{{{{"[[[[';
    });
    expect(readWork(braces).ok).toBe(true);
  });
});

describe('the desk', () => {
  const ruling: Ruling = { tolerances: new Map(), overrides: new Map(), hintCost: 0.1 };
  const mark = (work: Work, rules = ruling) =>
    markWork(work, questionsOf(assignment, work.alias), { templates, formulas: recordOf }, rules);

  it('marks from raw answers alone', () => {
    expect(mark(workOf('heron')).map(({ credit }) => credit)).toEqual([1, 1, 1]);
    expect(mark(workOf('heron', [1])).map(({ credit }) => credit)).toEqual([1, 0, 1]);
  });

  it('takes off what hints cost, never below nothing, and gives nothing for what is missing', () => {
    const work = workOf('heron', [1]);
    const dear = {
      ...work,
      answers: work.answers.slice(0, 2).map((one) => ({ ...one, hints: 2 })),
    };
    expect(mark(dear).map(({ credit }) => credit)).toEqual([0.8, 0, 0]);
  });

  it('lets the instructor decide, and another tolerance count at once', () => {
    const work = workOf('heron', [1]);
    const [, second] = questionsOf(assignment, 'heron');
    if (!second) throw new Error('There is no second question.');
    const override = {
      ...second,
      alias: 'heron',
      credit: 0.5,
      note: 'Method shown.',
      answer: sumOfAnswer('17 m'),
      at,
    };
    const overrides = new Map([[overrideKey(' HERON', second), override]]);
    expect(mark(work, { ...ruling, overrides }).map(({ credit }) => credit)).toEqual([1, 0.5, 1]);
    expect(mark(work, { ...ruling, overrides })[1]).toMatchObject({ worked: 0, stale: false });
    // The same ruling over another answer says so.
    expect(mark(workOf('heron'), { ...ruling, overrides })[1]?.stale).toBe(true);
    const wide = new Map([['step-back-for-the-frame', { relative: 30, absolute: 0 }]]);
    expect(mark(work, { ...ruling, tolerances: wide }).map(({ credit }) => credit)).toEqual([
      1, 1, 1,
    ]);
  });

  it('counts a class: easiness, and how an item goes with the rest once there are ten', () => {
    const class_ = Array.from({ length: 10 }, (_, i) =>
      mark(workOf(`bird ${i}`, i < 4 ? [0, 1] : [])),
    );
    const [first, , third] = itemsOf(class_);
    expect(first?.easiness).toBeCloseTo(0.6, 12);
    // Item 1 is wrong where item 2 is, and item 3 always right: the rest is 1 or 2, in step with it.
    expect(first?.itemRest).toBeCloseTo(1, 12);
    expect(third?.easiness).toBe(1);
    expect(third?.itemRest).toBeUndefined();
    expect(itemsOf(class_.slice(0, 9))[0]?.itemRest).toBeUndefined();
  });
});

describe('statistics', () => {
  it('correlates as by hand', () => {
    // Means 2 and 4; deviations −1 0 1 and −2 1 1: 3 / √(2 × 6).
    expect(correlation([1, 2, 3], [2, 5, 5])).toBeCloseTo(3 / Math.sqrt(12), 12);
    expect(correlation([1, 1, 1], [2, 5, 5])).toBeUndefined();
    expect(
      itemRest(
        [
          [1, 0, 0],
          [0, 1, 1],
          [1, 0, 1],
        ],
        0,
      ),
    ).toBeCloseTo(-Math.sqrt(3) / 2, 12);
    expect(commonest([2, 1, 1, 2, 3])).toEqual([2, 2]);
    expect(commonest([])).toBeUndefined();
  });
});
