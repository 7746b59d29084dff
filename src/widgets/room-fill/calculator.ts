import { draw } from '../../drawing/room-fill.ts';
import formula from '../../optics/light/room-fill.ts';
import type { Calculator } from '../parts/calculator.ts';
import { sentence } from './sentence.ts';

export default {
  formula,
  draw,
  sentence,
  fields: ['d', 'rho', 'l', 'w', 'h'],
  more: [],
} satisfies Calculator;
