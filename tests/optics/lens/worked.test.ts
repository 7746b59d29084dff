import { describe, expect, it } from 'vitest';
import { writeQuantity } from '~/formula/notation/write.ts';
import { plain } from '~/optics/lens/worked.ts';

const shown = (...given: Parameters<typeof plain>): string => {
  const { value = NaN, unit, digits } = plain(...given);
  return writeQuantity(value, unit, digits);
};

describe('a number of the worked line', () => {
  it('has no noughts that say nothing', () => {
    expect(shown(0.085, 'mm')).toBe('85 mm');
    expect(shown(0.0236, 'mm')).toBe('23.6 mm');
    expect(shown(0.04, '1', 3)).toBe('0.04');
  });

  it('keeps a tape’s centimetres', () => {
    expect(shown(1.5, 'm')).toBe('1.50 m');
    expect(shown(2.2098, 'm')).toBe('2.21 m');
  });

  it('rounds to four figures, also far from one', () => {
    expect(shown(0.0884, 'mm')).toBe('88.4 mm');
    expect(shown(0.04326661, 'mm')).toBe('43.27 mm');
    expect(shown(1.23456e-8, '1')).toBe('0.00000001235');
    expect(shown(Infinity, 'm')).toBe('∞');
  });
});
