import { draw } from '../../drawing/gel.ts';
import formula from '../../optics/light/gel.ts';
import type { Calculator } from '../parts/calculator.ts';
import { sentence } from './sentence.ts';

export default {
  formula,
  draw,
  sentence,
  fields: ['source', 'by', 'target', 'tau', 'power'],
  more: [],
} satisfies Calculator;
