import { draw } from '../../drawing/fill-card.ts';
import formula from '../../optics/light/fill-card.ts';
import type { Calculator } from '../parts/calculator.ts';
import { sentence } from './sentence.ts';

export default {
  formula,
  draw,
  sentence,
  fields: ['w', 'd', 'rho', 'light'],
  more: [],
} satisfies Calculator;
