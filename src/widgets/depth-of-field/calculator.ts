import { draw } from '../../drawing/depth-of-field.ts';
import formula from '../../optics/aperture/depth-of-field.ts';
import type { Calculator } from '../parts/calculator.ts';
import { sentence } from './sentence.ts';

export default {
  formula,
  draw,
  sentence,
  fields: ['N', 'N2', 'N3', 'f', 's', 'c', 'format'],
  more: ['p', 'marks', 'from', 'o'],
} satisfies Calculator;
