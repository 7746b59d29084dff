import { factorOf, type Unit } from '../../formula/units.ts';
import type { Shown } from '../../formula/record.ts';

/**
 * A number of the worked line with the digits it has, and no noughts that say nothing: 85 mm, not 85.00 mm.
 *
 * Model: at most four figures; metres keep their centimetres, as tapes are read.
 * Example: plain(0.0236, 'mm') // shown as 23.6 mm
 */
export const plain = (value: number | undefined, unit: Unit, figures = 4): Shown => {
  if (value === undefined) return { value, unit, digits: figures };
  const text = `${Number((value / factorOf(unit)).toPrecision(figures))}`;
  const [, fraction = ''] = text.split('.');
  return {
    value,
    unit,
    digits: text.includes('e')
      ? { significant: figures }
      : { decimals: Math.max(fraction.length, unit === 'm' ? 2 : 0) },
  };
};
