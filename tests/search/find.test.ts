import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Source } from '../../src/search/entry.ts';
import { find, nearest } from '../../src/search/find.ts';
import { buildIndex, openIndex, type IndexFile } from '../../src/search/index.ts';

const source = (kind: Source['kind'], title: string, more: Partial<Source> = {}): Source => ({
  kind,
  title,
  address: `/${kind}/${title}/`,
  says: '',
  ...more,
});

const sources = [
  source('Word', 'aperture', { names: ['iris'], text: 'The opening inside the lens.' }),
  source('Word', 'f-number', { names: ['f-stop'], symbols: ['N'] }),
  source('Word', 'fall-off', { text: 'How light weakens with distance.' }),
  source('Word', 'catchlight', { text: 'The bright point in an eye.' }),
  source('Plate', 'Depth of field', { number: '2.3', about: 'f-number. focal length' }),
  source('Symbol', 'f-number', { symbol: 'N', symbols: ['N'] }),
  source('Symbol', 'the beam’s exponent', { symbol: 'n', symbols: ['n'] }),
  source('Symbol', 'working f-number', { symbol: 'N_w', symbols: ['N_w'] }),
  source('Lesson', 'Depth of field', { number: '2.3', text: 'neither nap nor noise' }),
  source('Part of a lesson', 'Look', { about: 'Depth of field', address: '/a/#look' }),
  source('Part of a lesson', 'Explain', { about: 'Depth of field', address: '/a/#explain' }),
  source('Part of a lesson', 'Predict', { about: 'Depth of field', address: '/a/#predict' }),
];
/** Letters and signs that mean something to some part of a search, and some that mean nothing to any. */
const SIGNS = Array.from('aefmnsAFN0149.,/ -+=#_:;°′"%<&\u202e\u0000\u0301é漢🙂');
const groups = [
  ['f-number', 'aperture', 'f-stop', 'N'],
  ['depth of field', 'dof'],
];
const index = openIndex(JSON.parse(JSON.stringify(buildIndex(sources, groups))) as IndexFile);
const found = (query: string): string[] =>
  find(index, query).map(({ entry }) => `${entry.kind} ${entry.symbol ?? entry.title}`);

describe('a search', () => {
  it.each(['f-stop', 'fstop', 'F stop', 'f stops', 'aperture', 'f-number', 'fnumber'])(
    'for “%s” finds the word, its sister and the symbol',
    (query) => {
      expect(found(query).slice(0, 3).toSorted()).toEqual(
        ['Symbol N', 'Word aperture', 'Word f-number'].toSorted(),
      );
    },
  );

  it('for a letter finds the symbol in that case, then the other, and no word that only has it', () => {
    expect(found('N')[0]).toBe('Symbol N');
    expect(found('n')[0]).toBe('Symbol n');
    expect(found('N')).not.toContain('Lesson Depth of field');
    expect(found('n')).toContain('Symbol N');
    expect(found('N_w')[0]).toBe('Symbol N_w');
    expect(found('Nw')[0]).toBe('Symbol N_w');
  });

  it.each([
    ['catch light', 'Word catchlight'],
    ['catch-lights', 'Word catchlight'],
    ['catchlihgt', 'Word catchlight'],
    ['falloff', 'Word fall-off'],
    ['fall off', 'Word fall-off'],
    ['aperure', 'Word aperture'],
    ['dof', 'Plate Depth of field'],
    ['depht of feild', 'Plate Depth of field'],
    ['depth of', 'Plate Depth of field'],
  ])('for “%s” is forgiven', (query, first) => {
    expect(found(query)[0]).toBe(first);
  });

  it('puts the thing itself before what speaks of it, and two parts of a lesson are enough', () => {
    const kinds = find(index, 'depth of field').map(({ entry }) => entry.kind);
    expect(kinds.slice(0, 2)).toEqual(['Plate', 'Lesson']);
    expect(found('predict look explain')).toHaveLength(2);
  });

  it('leaves the numbers to the plate', () => {
    expect(found('depth of field 85 mm f/4 2,2 m')[0]).toBe('Plate Depth of field');
    expect(found('f/4')[0]).toBe('Word f-number');
  });

  it('that finds nothing names what is near', () => {
    expect(found('zyxwv')).toEqual([]);
    expect(nearest(index, 'catcht')).toContain('catchlight');
  });

  it('takes a megabyte', () => {
    expect(found('aperture '.repeat(120_000))).toContain('Word aperture');
  });

  it('takes whatever anyone types', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: fc.constantFrom(...SIGNS), maxLength: 60 }), fc.constantFrom('__proto__', 'constructor', '= =', '#1', '=N', '<b>x</b>', '\u0000', '🙂 85mm')), (typed) => {
        const hits = find(index, typed);
        return hits.every(({ score, entry }) => score > 0 && entry.title !== '') && nearest(index, typed).length < 5;
      }),
      { numRuns: 300 },
    ); // prettier-ignore
  });
});
