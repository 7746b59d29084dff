import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { writeAssignment, type Assignment } from '../../src/exercises/assignment.ts';
import { MOST_ALIASES, readClassList } from '../../src/exercises/class-list.ts';
import { blankDraft, readDraft, withBank } from '../../src/exercises/draft.ts';

describe('a draft in the address', () => {
  it('comes back as it was written, with questions and without', () => {
    const words = fc.stringMatching(/^[\p{L}\p{N} &=;,%+#]{1,40}$/u).map((text) => text.trim());
    const draft: fc.Arbitrary<Assignment> = fc.record({
      title: words.map((text) => text || 'Exercises'),
      due: words,
      seeds: fc.constantFrom('same' as const, 'alias' as const),
      hints: fc.constantFrom('free' as const, 'tenth' as const, 'none' as const),
      draw: fc.nat(999_999_999),
      items: fc.uniqueArray(
        fc.record({
          template: fc.stringMatching(/^[a-z]{1,9}(-[a-z0-9]{1,5})?$/),
          version: fc.integer({ min: 0, max: 999 }),
          count: fc.integer({ min: 1, max: 20 }),
        }),
        { selector: ({ template }) => template, maxLength: 8 },
      ),
    });
    fc.assert(
      fc.property(draft, (one) => {
        expect(readDraft(writeAssignment(one), 5)).toEqual({ ok: true, value: one });
      }),
    );
  });

  it('begins blank where the address says nothing of it', () => {
    expect(readDraft('', 5)).toEqual({ ok: true, value: blankDraft(5) });
    expect(readDraft('units=imperial', 5)).toEqual({ ok: true, value: blankDraft(5) });
  });

  it.each([
    'title=x&ask=',
    'title=a&title=b&due=&seeds=same&hints=none&draw=1&ask=',
    'title=a&due=&seeds=all&hints=none&draw=1&ask=',
    `title=${'x'.repeat(7000)}&due=&seeds=same&hints=none&draw=1&ask=`,
    'title=a&due=&seeds=same&hints=none&draw=1&ask=&ask=<b>.1.1',
  ])('refuses %.60s', (query) => {
    expect(readDraft(query, 5).ok).toBe(false);
  });

  it('leaves out what is not there today, and says which and why', () => {
    const items = [
      { template: 'now', version: 2, count: 1 },
      { template: 'changed', version: 1, count: 1 },
      { template: 'gone', version: 1, count: 1 },
    ];
    const { items: kept, dropped } = withBank(items, (id) => (id === 'gone' ? undefined : 2));
    expect(kept).toEqual(items.slice(0, 1));
    expect(dropped).toHaveLength(2);
    expect(dropped[0]).toMatch(/changed.*version 1, now 2/);
    expect(dropped[1]).toMatch(/gone.*not an exercise/);
  });
});

describe('a class list', () => {
  it('takes each alias once, however it is written, and says what it did not take', () => {
    const { aliases, complaints } = readClassList(
      `Blue  Heron\r\n\n otter\nblue heron\nha\u202Ewk\n${'x'.repeat(41)}\nhe\u0301ron\nh\u00e9ron`,
    );
    expect(aliases).toEqual(['Blue Heron', 'otter', 'h\u00e9ron']);
    expect(complaints.map((text) => /^Line (\d+):/.exec(text)?.[1])).toEqual(['4', '5', '6', '8']);
    expect(complaints[0]).toContain('line 1');
  });

  it('ends at a number of sheets a class may have', () => {
    const { aliases, complaints } = readClassList(
      Array.from({ length: MOST_ALIASES + 5 }, (_none, i) => `alias ${i}`).join('\n'),
    );
    expect(aliases).toHaveLength(MOST_ALIASES);
    expect(complaints).toHaveLength(1);
  });
});
