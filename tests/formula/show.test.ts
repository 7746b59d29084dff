import { describe, expect, it } from 'vitest';
import { showResult, showWorked } from '../../src/formula/show.ts';

describe('a number of the worked line', () => {
  it('is shown in its unit and digits, in feet for imperial readers, with the reader’s decimal mark', () => {
    const metres = { value: 1.1303, unit: 'm', digits: { decimals: 2 } } as const;
    expect(showWorked(metres)).toBe('1.13 m');
    expect(showWorked(metres, { decimal: 'comma' })).toBe('1,13 m');
    // 44.5 inches
    expect(showWorked(metres, { system: 'imperial' })).toBe('3′ 8½″');
  });

  it('is an ellipsis where there is none', () => {
    expect(showWorked({ value: undefined, unit: 'm', digits: 3 })).toBe('…');
  });
});

describe('a result', () => {
  it.each([
    [undefined, 'not given'],
    [true, 'yes'],
    [false, 'no'],
  ])('of %s reads “%s”', (value, text) => {
    expect(showResult({ name: 'fits', kind: 'yes-no' }, value)).toBe(text);
  });

  it('in words is said in the record’s own where it has them', () => {
    const output = { name: 'side', kind: 'choice', labels: { ahead: 'ahead of the eye' } } as const;
    expect(showResult(output, 'ahead')).toBe('ahead of the eye');
    expect(showResult(output, 'behind')).toBe('behind');
    expect(showResult({ name: 'side', kind: 'choice' }, 'behind')).toBe('behind');
    const fits = {
      name: 'fits',
      kind: 'yes-no',
      labels: { yes: 'it fits', no: 'too tight' },
    } as const;
    expect([showResult(fits, true), showResult(fits, false)]).toEqual(['it fits', 'too tight']);
  });

  it('without digits of its own has three figures, and without a unit none', () => {
    expect(showResult({ name: 'ratio' }, 1.23456)).toBe('1.23');
  });
});
