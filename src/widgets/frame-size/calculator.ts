import { draw } from '../../drawing/frame-size.ts';
import formula from '../../optics/lens/frame-size.ts';
import type { Calculator } from '../parts/calculator.ts';
import { sentence } from './sentence.ts';

export default {
  formula,
  draw,
  sentence,
  fields: ['f', 's', 'orientation', 'format'],
  more: ['aspect', 'from', 'o'],
} satisfies Calculator;
