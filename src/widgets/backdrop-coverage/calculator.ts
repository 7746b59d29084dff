import { draw } from '../../drawing/backdrop-coverage.ts';
import formula from '../../optics/lens/backdrop-coverage.ts';
import type { Calculator } from '../parts/calculator.ts';
import { sentence } from './sentence.ts';

export default {
  formula,
  draw,
  sentence,
  fields: ['b', 'f', 's', 'c', 'width', 'height', 'orientation', 'format'],
  more: ['aspect', 'aim', 'platform', 'e', 'margin', 'from', 'o'],
} satisfies Calculator;
