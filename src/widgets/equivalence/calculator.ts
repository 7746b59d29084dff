import { draw } from '../../drawing/equivalence.ts';
import formula from '../../optics/lens/equivalence.ts';
import type { Calculator } from '../parts/calculator.ts';
import { sentence } from './sentence.ts';

export default {
  formula,
  draw,
  sentence,
  fields: ['f', 'N', 'format', 'to'],
  more: ['aspect', 'marks'],
} satisfies Calculator;
