import { draw } from '../../drawing/recompose-error.ts';
import formula from '../../optics/aperture/recompose-error.ts';
import type { Calculator } from '../parts/calculator.ts';
import { sentence } from './sentence.ts';

export default {
  formula,
  draw,
  sentence,
  fields: ['angle', 'shift', 's', 'sway', 'N', 'f'],
  more: ['format', 'c', 'marks'],
} satisfies Calculator;
