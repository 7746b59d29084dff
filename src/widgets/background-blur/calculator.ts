import { draw } from '../../drawing/background-blur.ts';
import formula from '../../optics/aperture/background-blur.ts';
import type { Calculator } from '../parts/calculator.ts';
import { sentence } from './sentence.ts';

export default {
  formula,
  draw,
  sentence,
  fields: ['N', 'N2', 'N3', 'f', 's', 'b', 'orientation', 'format'],
  more: ['a', 'H', 'p', 'marks', 'from', 'o'],
} satisfies Calculator;
