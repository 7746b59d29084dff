import { draw, handles } from '../../drawing/falloff.ts';
import formula from '../../optics/light/falloff.ts';
import type { Calculator } from '../parts/calculator.ts';
import { sentence } from './sentence.ts';

export default {
  formula,
  draw,
  handles,
  sentence,
  fields: ['near', 'far', 'wanted'],
  more: ['light', 'first', 'second'],
} satisfies Calculator;
