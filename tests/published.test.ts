import { describe, expect, it } from 'vitest';
import { formulas } from '../src/formulas.ts';
import { compareCheck } from '../src/reference/compare.ts';
import { checks } from '../src/reference/load.ts';
import { admits, claimOf } from '../src/reference/tolerance.ts';
import { records } from './support/records.ts';

/**
 * Formulas that may rest on less than three published values from two sources, and why. Composite formulas name their
 * parts in their own file instead.
 */
const thinner: Readonly<Record<string, string>> = {
  perspective:
    'One work prints a ratio that can be reproduced; no published table of size against distance was found.',
};

describe('published values', () => {
  it('has a file for every formula, and no other', () => {
    expect([...checks.keys()].sort()).toEqual(Object.keys(formulas).sort());
  });

  describe.each(records.map((record) => [record.id, record] as const))('%s', (id, record) => {
    const file = checks.get(id);
    const values = file?.values ?? [];

    it.each(values.map((value) => [value.id, value] as const))(
      '%s comes out as it says',
      (_id, value) => {
        expect(compareCheck(record, value).complaint).toBeUndefined();
      },
    );

    it('stands on enough of them', () => {
      const published = values.filter(
        ({ kind, verdict }) => kind === 'published' && verdict === 'agrees',
      );
      const derived = values.filter(
        ({ kind, verdict }) => kind === 'derived' && verdict === 'agrees',
      );
      const enough =
        published.length >= 3 && new Set(published.map(({ source }) => source)).size >= 2;
      const parts = file?.parts ?? [];
      for (const part of parts)
        expect(checks.get(part)?.values.some(({ kind }) => kind === 'published')).toBe(true);
      if (parts.length > 0) expect(enough || derived.length >= 2).toBe(true);
      else if (id in thinner) expect(enough).toBe(false);
      else expect(enough).toBe(true);
    });

    it('gives a reason wherever a value differs or has slack', () => {
      for (const { verdict, slack, because } of values)
        if (verdict === 'differs' || slack !== undefined) expect(because).toMatch(/\w/);
    });
  });

  it('refuses a value that no longer comes out as it says', () => {
    const [first] = checks.get('angle-of-view')?.values ?? [];
    const record = records.find(({ id }) => id === 'angle-of-view');
    if (!first || !record) throw new Error('angle-of-view has no values');
    const turned = first.verdict === 'agrees' ? 'differs' : 'agrees';
    expect(compareCheck(record, { ...first, verdict: turned }).complaint).toMatch(/never widen/i);
  });
});

describe('what printed digits admit', () => {
  const angle = { name: 'angle', unit: 'deg', digits: 3 } as const;
  const plain = { name: 'ratio', unit: '1', digits: 3 } as const;
  const deg = (x: number): number => (x * Math.PI) / 180;

  it.each([
    ['46°', 'nearest', deg(46.4), true],
    ['46°', 'nearest', deg(46.793), false],
    ['52°', 'truncated', deg(52.79), true],
    ['52°', 'nearest', deg(52.79), false],
    ['52°', 'truncated', deg(53.0001), false],
  ] as const)('%s (%s) admits %d: %s', (text, rounding, ours, ok) => {
    expect(admits(claimOf(text, angle, rounding), ours)).toBe(ok);
  });

  it.each([
    ['1:7.9', 1 / 7.87, true],
    ['1:7.9', 1 / 7.84, false],
    ['0.21', 0.2087, true],
    ['0.21', 0.2049, false],
    ['1.95-2.05', 1.946, true],
    ['1.95-2.05', 2.056, false],
    ['<1 %', 0.0099, true],
    ['<1 %', 0.01, false],
    ['∞', Infinity, true],
    ['∞', 1e9, false],
  ] as const)('%s admits %d: %s', (text, ours, ok) => {
    expect(admits(claimOf(text, plain, 'nearest'), ours)).toBe(ok);
  });

  it('wants a step where a nought may only hold a place', () => {
    expect(() => claimOf('40°', angle, 'nearest')).toThrow(/needs a step/);
    expect(admits(claimOf({ text: '40°', step: '1°' }, angle, 'nearest'), deg(39.598))).toBe(true);
    expect(admits(claimOf({ text: '40°', step: '1°' }, angle, 'nearest'), deg(39.499))).toBe(false);
  });

  it('takes the step a source rounded to, where its digits do not say', () => {
    const printed = { text: '28° 30′', step: '10′' };
    expect(admits(claimOf(printed, angle, 'nearest'), deg(28.558))).toBe(true);
    expect(admits(claimOf(printed, angle, 'nearest'), deg(28.59))).toBe(false);
  });
});
