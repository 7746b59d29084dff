import { draw } from '../../drawing/spotter-reach.ts';
import formula from '../../optics/lens/spotter-reach.ts';
import type { Calculator } from '../parts/calculator.ts';
import { sentence } from './sentence.ts';

export default {
  formula,
  draw,
  sentence,
  fields: ['W', 'e', 'k', 'r'],
  more: [],
} satisfies Calculator;
