import { draw } from '../../drawing/framing-distance.ts';
import formula from '../../optics/lens/framing-distance.ts';
import type { Calculator } from '../parts/calculator.ts';
import { sentence } from './sentence.ts';

export default {
  formula,
  draw,
  sentence,
  fields: ['H', 'f', 'orientation', 'format'],
  more: ['aspect'],
} satisfies Calculator;
