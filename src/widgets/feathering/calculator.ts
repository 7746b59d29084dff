import { draw, handles } from '../../drawing/feathering.ts';
import formula from '../../optics/light/feathering.ts';
import type { Calculator } from '../parts/calculator.ts';
import { sentence } from './sentence.ts';

export default {
  formula,
  draw,
  handles,
  sentence,
  fields: ['near', 'far', 'between', 'angle', 'aim'],
  more: ['ceiling', 'rho'],
} satisfies Calculator;
