import { draw } from '../../drawing/f-stop.ts';
import formula from '../../optics/aperture/f-stop.ts';
import type { Calculator } from '../parts/calculator.ts';
import { sentence } from './sentence.ts';

export default {
  formula,
  draw,
  sentence,
  fields: ['from', 'to', 'f'],
  more: [],
} satisfies Calculator;
