import { draw } from '../../drawing/backdrop-exposure.ts';
import formula from '../../optics/light/backdrop-exposure.ts';
import type { Calculator } from '../parts/calculator.ts';
import { sentence } from './sentence.ts';

export default {
  formula,
  draw,
  sentence,
  fields: ['key', 'b', 'light', 'power', 'gel', 'rho'],
  more: [],
} satisfies Calculator;
