import { draw } from '../../drawing/angle-of-view.ts';
import formula from '../../optics/lens/angle-of-view.ts';
import type { Calculator } from '../parts/calculator.ts';
import { sentence } from './sentence.ts';

export default {
  formula,
  draw,
  sentence,
  fields: ['f', 's', 'format'],
  more: ['from', 'o'],
} satisfies Calculator;
