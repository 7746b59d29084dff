import { draw } from '../../drawing/flash-exposure.ts';
import formula from '../../optics/light/flash-exposure.ts';
import type { Calculator } from '../parts/calculator.ts';
import { sentence } from './sentence.ts';

export default {
  formula,
  draw,
  sentence,
  fields: ['G', 'd', 'P', 'loss', 'S', 'wanted', 'diffused'],
  more: ['Nm', 'dm', 'Sm', 'Pm', 'S0', 'lowest', 'step', 'm'],
} satisfies Calculator;
