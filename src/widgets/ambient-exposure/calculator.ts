import { draw } from '../../drawing/ambient-exposure.ts';
import formula from '../../optics/aperture/ambient-exposure.ts';
import type { Calculator } from '../parts/calculator.ts';
import { sentence } from './sentence.ts';

export default {
  formula,
  draw,
  sentence,
  fields: ['E', 'metered', 'N', 't', 'S', 'margin'],
  more: ['sync', 'C', 'm', 'T', 'marks'],
} satisfies Calculator;
