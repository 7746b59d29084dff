import { draw } from '../../drawing/movement-blur.ts';
import formula from '../../optics/aperture/movement-blur.ts';
import type { Calculator } from '../parts/calculator.ts';
import { sentence } from './sentence.ts';

export default {
  formula,
  draw,
  sentence,
  fields: ['u', 't01', 't05', 't', 'under', 'm'],
  more: ['f', 's', 'format', 'c'],
} satisfies Calculator;
