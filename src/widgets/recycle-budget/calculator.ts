import { draw } from '../../drawing/recycle-budget.ts';
import formula from '../../sitting/safety/recycle-budget.ts';
import type { Calculator } from '../parts/calculator.ts';
import { sentence } from './sentence.ts';

export default {
  formula,
  draw,
  sentence,
  fields: ['recycle', 'rate', 'energy'],
  more: [],
} satisfies Calculator;
