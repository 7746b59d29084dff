import { draw } from '../../drawing/circle-of-confusion.ts';
import formula from '../../optics/aperture/circle-of-confusion.ts';
import type { Calculator } from '../parts/calculator.ts';
import { sentence } from './sentence.ts';

export default {
  formula,
  draw,
  sentence,
  fields: ['printHeight', 'enlargement', 'v', 'acuity', 'format'],
  more: [],
} satisfies Calculator;
