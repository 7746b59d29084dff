import { draw } from '../../drawing/lighting-ratio.ts';
import formula from '../../optics/light/lighting-ratio.ts';
import type { Calculator } from '../parts/calculator.ts';
import { sentence } from './sentence.ts';

export default {
  formula,
  draw,
  sentence,
  fields: ['key', 'fill'],
  more: ['lights', 'marks'],
} satisfies Calculator;
