import { describe, expect, it } from 'vitest';
import {
  FACETS,
  facetOf,
  fits,
  offered,
  readChoice,
  type Choice,
} from '../../src/exercises/choose.ts';
import { bank } from '../support/bank.ts';

const exercises = bank.map(({ file, template }) => ({
  template,
  unit: /lessons\/\d-([a-z-]+)\//.exec(file)?.[1] ?? '',
}));
const under = (choice: Choice) => exercises.filter((exercise) => fits(exercise, choice));

describe('choosing exercises', () => {
  it('offers only what there are exercises for, with how many, whatever else is chosen', () => {
    for (const first of FACETS)
      for (const [value, count] of offered(exercises, {}, first)) {
        const one = { [first]: value };
        expect(under(one)).toHaveLength(count);
        for (const second of FACETS.filter((facet) => facet !== first))
          for (const [other, both] of offered(exercises, one, second)) {
            expect(under({ ...one, [second]: other })).toHaveLength(both);
            expect(both).toBeGreaterThan(0);
          }
      }
  });

  it('leaves out what does not go together', () => {
    const skills = offered(exercises, { unit: 'the-sitting' }, 'skill');
    expect(skills.has('falloff')).toBe(false);
    expect([...skills.values()].reduce((sum, count) => sum + count, 0)).toBe(
      under({ unit: 'the-sitting' }).length,
    );
    // The facet that is asked about is free: what is chosen in it can be changed.
    expect(offered(exercises, { unit: 'the-sitting' }, 'unit').size).toBe(
      new Set(exercises.map((one) => facetOf(one, 'unit'))).size,
    );
  });

  it('calls what belongs to no unit across units', () => {
    const template = bank[0]?.template;
    if (!template) throw new Error('The bank is empty.');
    expect(facetOf({ template, unit: '' }, 'unit')).toBe('across');
  });

  it('reads an address, and takes of it what has exercises', () => {
    const read = (query: string) => readChoice(new URLSearchParams(query), exercises);
    expect(read('unit=lighting&kind=design')).toEqual({
      choice: { unit: 'lighting', kind: 'design' },
      refused: [],
    });
    expect(read('skill=reading+tables&difficulty=3').choice).toEqual({
      skill: 'reading tables',
      difficulty: '3',
    });
    expect(read('exercise=x&seed=1')).toEqual({ choice: {}, refused: [] });
    expect(read('unit=lighting&skill=perspective')).toEqual({
      choice: { unit: 'lighting' },
      refused: ['skill'],
    });
    for (const hostile of ['<script>', '__proto__', 'constructor', '', 'x'.repeat(5000)])
      for (const facet of FACETS)
        expect(read(`${facet}=${encodeURIComponent(hostile)}`)).toEqual({
          choice: {},
          refused: [facet],
        });
    expect(read('unit=lighting&unit=aperture')).toEqual({ choice: {}, refused: ['unit'] });
  });
});
