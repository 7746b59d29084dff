import { draw } from '../../drawing/beam-spread.ts';
import formula from '../../optics/light/beam-spread.ts';
import type { Calculator } from '../parts/calculator.ts';
import { sentence } from './sentence.ts';

export default {
  formula,
  draw,
  sentence,
  fields: ['angle', 'D', 'tilt', 'opening', 'wanted', 'definition'],
  more: [],
} satisfies Calculator;
