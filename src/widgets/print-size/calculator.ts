import { draw } from '../../drawing/print-size.ts';
import formula from '../../sitting/print/print-size.ts';
import type { Calculator } from '../parts/calculator.ts';
import { sentence } from './sentence.ts';

export default {
  formula,
  draw,
  sentence,
  fields: ['W', 'H', 'w', 'h', 'aspect', 'wanted'],
  more: ['hidden'],
} satisfies Calculator;
