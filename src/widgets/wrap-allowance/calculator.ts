import { draw } from '../../drawing/wrap-allowance.ts';
import formula from '../../sitting/print/wrap-allowance.ts';
import type { Calculator } from '../parts/calculator.ts';
import { sentence } from './sentence.ts';

export default {
  formula,
  draw,
  sentence,
  fields: ['w', 'h', 'depth', 'fold', 'edge'],
  more: ['resolution', 'drift'],
} satisfies Calculator;
