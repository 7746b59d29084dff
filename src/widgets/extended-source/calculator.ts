import { draw } from '../../drawing/extended-source.ts';
import formula from '../../optics/light/extended-source.ts';
import type { Calculator } from '../parts/calculator.ts';
import { sentence } from './sentence.ts';

export default {
  formula,
  draw,
  sentence,
  fields: ['shape', 'w', 'h', 'd', 'L'],
  more: ['reading', 'at'],
} satisfies Calculator;
