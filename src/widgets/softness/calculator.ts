import { draw } from '../../drawing/softness.ts';
import formula from '../../optics/light/softness.ts';
import type { Calculator } from '../parts/calculator.ts';
import { sentence } from './sentence.ts';

export default {
  formula,
  draw,
  sentence,
  fields: ['w', 'D', 'x', 'h', 'turn'],
  more: ['face', 'other'],
} satisfies Calculator;
