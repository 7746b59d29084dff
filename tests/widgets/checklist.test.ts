import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { parse } from 'yaml';
import { checklistTicks, tickedIn, withTick, withTicks } from '../../src/site/checklist-ticks.ts';
import { keep, key, recall } from '../../src/site/storage.ts';
import sources from '../../shared/sources.json' with { type: 'json' };
import { readLessons, textOf } from '../support/content.ts';
import { filesUnder } from '../support/files.ts';

interface List {
  readonly title: string;
  readonly order: number;
  readonly lesson: string;
  readonly caution: string;
  readonly decides: string;
  readonly items: readonly { id: string; text: string; why: string; source: string }[];
}
const lists = filesUnder('content/checklists').map((file) => ({
  id: file.replace(/^.*\/|\.yaml$/g, ''),
  ...(parse(textOf(file)) as List),
}));

describe('the checklists', () => {
  it('are six, in an order without a gap', () => {
    expect(lists.map(({ id }) => id).toSorted()).toEqual([
      'before-the-child',
      'consent-and-privacy',
      'file-care',
      'props',
      'safe-on-set',
      'strike-the-set',
    ]);
    expect(lists.map(({ order }) => order).toSorted((a, b) => a - b)).toEqual([1, 2, 3, 4, 5, 6]);
  });

  it.each(lists)(
    '$id has a lesson that places it, and every line its why and its source',
    (list) => {
      const placed = readLessons().filter(({ body }) =>
        body.includes(`<Checklist id="${list.id}" />`),
      );
      expect(placed.map(({ data }) => data['id'])).toEqual([list.lesson]);
      const known = ['common practice, no source', 'from memory', ...sources.map(({ id }) => id)];
      for (const { id, text, why, source } of list.items) {
        expect(id).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
        expect(text, id).toMatch(/[.]$/);
        expect(why, id).toMatch(/[.]$/);
        expect(known, id).toContain(source);
      }
      expect(list.caution.length).toBeGreaterThan(40);
      expect(list.decides.length).toBeGreaterThan(10);
    },
  );

  it('keep what the set lives by: the spotter, the cautions, the aliases', () => {
    const lines = lists.flatMap(({ id, items }) => items.map((item) => `${id}/${item.id}`));
    expect(lines).toEqual(
      expect.arrayContaining([
        'safe-on-set/one-spotter',
        'safe-on-set/not-the-camera',
        'safe-on-set/signs-of-distress',
        'props/no-loop',
        'props/no-free-end',
        'props/nothing-small',
        'consent-and-privacy/aliases',
        'consent-and-privacy/deleted',
        'file-care/two-copies',
        'strike-the-set/copies-first',
      ]),
    );
  });
});

const id = fc.stringMatching(/^[a-z0-9]{1,8}(-[a-z0-9]{1,8}){0,2}$/);
const ticks = fc.dictionary(id, fc.uniqueArray(id, { minLength: 1, maxLength: 8 }), {
  maxKeys: 5,
  noNullPrototype: true,
});

describe('ticks', () => {
  it('come back as they were set, and leave the other lists alone', () => {
    fc.assert(
      fc.property(ticks, id, id, (before, list, item) => {
        const after = withTick(before, list, item, true) ?? {};
        expect(tickedIn(after, list)).toContain(item);
        for (const other of Object.keys(before).filter((one) => one !== list))
          expect(tickedIn(after, other)).toEqual(tickedIn(before, other));
        expect(tickedIn(withTick(after, list, item, false) ?? {}, list)).not.toContain(item);
        expect(checklistTicks.accept(JSON.parse(JSON.stringify(after)))).toEqual(after);
      }),
    );
  });

  it('are set once, however often', () => {
    const once = withTick({}, 'props', 'no-loop', true) ?? {};
    expect(withTick(once, 'props', 'no-loop', true)).toEqual({ props: ['no-loop'] });
  });

  it('leave nothing behind when the last one goes', () => {
    expect(withTick({ props: ['no-loop'] }, 'props', 'no-loop', false)).toBeUndefined();
    expect(withTicks({ props: ['no-loop'] }, 'props', [])).toBeUndefined();
    expect(withTicks({ props: ['a'], 'file-care': ['b'] }, 'props', [])).toEqual({
      'file-care': ['b'],
    });
  });

  it('of a list that has a name of every object’s are not there', () => {
    expect(tickedIn({}, 'constructor')).toEqual([]);
  });

  it.each([
    ['a text', 'props'],
    ['a list', ['props']],
    ['nothing', null],
    ['a number for a list', { props: 3 }],
    ['a tick that is no id', { props: ['<b>'] }],
    ['a list that is no id', { 'Anna, 24 months': ['no-loop'] }],
    ['too many', { props: Array.from({ length: 300 }, (_, i) => `item-${i}`) }],
  ])('damaged to %s are not read', (_, raw) => {
    expect(checklistTicks.accept(raw)).toBeUndefined();
  });
});

describe('the storage', () => {
  const kept = new Map<string, string>();
  beforeEach(() => {
    kept.clear();
    vi.stubGlobal('localStorage', {
      getItem: (name: string) => kept.get(name) ?? null,
      setItem: (name: string, value: string) => void kept.set(name, value),
      removeItem: (name: string) => void kept.delete(name),
    });
  });
  afterEach(() => vi.unstubAllGlobals());

  it('holds ticks under one key, and nothing once they are cleared', () => {
    expect(key(checklistTicks.thing, checklistTicks.version)).toBe('sbn:checklist:v1');
    expect(recall(checklistTicks)).toBeUndefined();
    expect(keep(checklistTicks, withTick({}, 'props', 'no-loop', true))).toBeUndefined();
    expect([...kept.keys()]).toEqual(['sbn:checklist:v1']);
    expect(recall(checklistTicks)).toEqual({ props: ['no-loop'] });
    keep(checklistTicks, withTicks(recall(checklistTicks) ?? {}, 'props', []));
    expect(kept.size).toBe(0);
  });

  it('says so where the browser refuses', () => {
    vi.stubGlobal('localStorage', {
      getItem: () => null,
      setItem: () => {
        throw new DOMException('full', 'QuotaExceededError');
      },
    });
    expect(keep(checklistTicks, { props: ['no-loop'] })).toMatch(/would not keep it/);
  });
});
