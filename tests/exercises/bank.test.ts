import { describe, expect, it } from 'vitest';
import { formulas } from '../../src/formulas.ts';
import { complaintsOf, difficultyBand, variety } from '../../src/exercises/trial.ts';
import { bank } from '../support/bank.ts';
import { recordOf } from '../support/records.ts';

// The build tries every seed from 0 to 999; here a few of each show which template is ill.
const seeds = [0, 1, 2, 3, 5, 8, 13, 21, 34, 55, 89, 144, 233, 377, 610, 987];

describe.each(bank.map(({ template, file }) => [template.id, file, template] as const))(
  '%s',
  (_id, file, template) => {
    it('marks its own answers as it should', () => {
      expect(
        seeds.flatMap((seed) => complaintsOf(template, recordOf, seed)),
        file,
      ).toEqual([]);
    });

    it('is as hard as it says', () => {
      const [least, most] = difficultyBand(template, recordOf);
      expect(template.difficulty, file).toBeGreaterThanOrEqual(least);
      expect(template.difficulty, file).toBeLessThanOrEqual(most);
    });
  },
);

describe('the bank', () => {
  it('has an id once', () => {
    const ids = bank.map(({ template }) => template.id);
    expect(ids.filter((id, at) => ids.indexOf(id) !== at)).toEqual([]);
  });

  it('asks nothing twice: no two share formula, result and wrong turns', () => {
    const asked = bank.flatMap(({ template }) =>
      'ask' in template
        ? [
            `${template.formula} ${template.ask} ${template.turns.map((turn) => JSON.stringify({ ...turn, say: '', credit: 0 })).join(' ')}`,
          ]
        : [],
    );
    expect(asked.filter((one, at) => asked.indexOf(one) !== at)).toEqual([]);
  });

  it('has enough for every unit and of every kind, and asks every formula', () => {
    const count = (of: (one: (typeof bank)[number]) => string): Record<string, number> =>
      bank.reduce<Record<string, number>>(
        (sum, one) => ({ ...sum, [of(one)]: (sum[of(one)] ?? 0) + 1 }),
        {},
      );
    expect(bank.length).toBeGreaterThanOrEqual(60);
    const units = count(({ file }) => /^content\/lessons\/([^/]+)\//.exec(file)?.[1] ?? 'across');
    for (const unit of ['1-focal-length', '2-aperture', '3-lighting', '4-the-sitting'])
      expect(units[unit], unit).toBeGreaterThanOrEqual(12);
    const kinds = count(({ template }) => template.kind);
    const least = { numeric: 6, choice: 6, reading: 6, mistake: 6, design: 12, practical: 8 };
    for (const [kind, most] of Object.entries(least))
      expect(kinds[kind], kind).toBeGreaterThanOrEqual(most);
    const asked = new Set(bank.map(({ template }) => template.formula));
    expect(Object.keys(formulas).filter((id) => !asked.has(id))).toEqual([]);
  });

  it('draws enough different numbers for a class', () => {
    const few = bank.filter(
      ({ template }) =>
        ['numeric', 'reading', 'mistake'].includes(template.kind) && variety(template) < 12,
    );
    expect(few.map(({ file }) => file)).toEqual([]);
  });
});
