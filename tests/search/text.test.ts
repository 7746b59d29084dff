import { describe, expect, it } from 'vitest';
import { fold, termsOf, tidy, whole, wordsOf } from '../../src/search/text.ts';

describe('a word as the index keeps it', () => {
  it.each([
    ['colour', 'color'],
    ['colours', 'Color'],
    ['metre', 'meters'],
    ['centre', 'center'],
    ['grey', 'gray'],
    ['organise', 'organize'],
    ['focused', 'focusing'],
    ['lens', 'lenses'],
    ['flash', 'flashes'],
    ['box', 'boxes'],
    ['body', 'bodies'],
    ['stop', 'stopped'],
    ['stop', 'stops'],
    ['freeze', 'freezing'],
    ['print', 'printed'],
  ])('is the same for %s and %s', (one, other) => {
    expect(fold(one)).toBe(fold(other));
  });

  it.each([
    ['lens', 'len'],
    ['gel', 'gels2'],
    ['angle', 'angel'],
    ['focus', 'focal'],
    ['mass', 'mast'],
  ])('is not the same for %s and %s', (one, other) => {
    expect(fold(one)).not.toBe(fold(other));
  });
});

it('reads words whatever joins them, and leaves numbers whole', () => {
  expect(wordsOf('The child’s f-number: 2.8, or 1,4')).toEqual([
    'The',
    'child',
    'f',
    'number',
    '2.8',
    'or',
    '1,4',
  ]);
  expect(termsOf('How far is the child from the lens?')).toEqual(['far', 'child', 'lens']);
});

it('knows a phrase in its other spellings', () => {
  const spellings = ['f-stop', 'fstop', 'F stop', 'f‑stops', 'Fstop'].map((one) =>
    whole(tidy(one)),
  );
  expect(new Set(spellings).size).toBe(1);
  expect(whole('f-number')).not.toBe(spellings[0]);
});

it('makes ordinary text of what nobody types on purpose', () => {
  expect(tidy('\u202Edof\u202C\u200B')).toBe('dof');
  expect(tidy('ｄｏｆ')).toBe('dof');
  expect(tidy('x'.repeat(1_000_000)).length).toBeLessThan(200);
  expect(tidy('a\nb')).toBe('a b');
});
