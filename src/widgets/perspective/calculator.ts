import { draw } from '../../drawing/perspective.ts';
import formula from '../../optics/lens/perspective.ts';
import type { Calculator } from '../parts/calculator.ts';
import { sentence } from './sentence.ts';

export default {
  formula,
  draw,
  sentence,
  fields: ['s', 'compare', 'depth'],
  more: [],
} satisfies Calculator;
