import { draw } from '../../drawing/mains-load.ts';
import formula from '../../sitting/safety/mains-load.ts';
import type { Calculator } from '../parts/calculator.ts';
import { sentence } from './sentence.ts';

export default {
  formula,
  draw,
  sentence,
  fields: ['load', 'U', 'rating', 'share'],
  more: ['energy', 'cycle', 'efficiency'],
} satisfies Calculator;
