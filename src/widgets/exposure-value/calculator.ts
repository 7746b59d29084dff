import { draw } from '../../drawing/exposure-value.ts';
import formula from '../../optics/aperture/exposure-value.ts';
import type { Calculator } from '../parts/calculator.ts';
import { sentence } from './sentence.ts';

export default {
  formula,
  draw,
  sentence,
  fields: ['N', 't', 'S'],
  more: [],
} satisfies Calculator;
