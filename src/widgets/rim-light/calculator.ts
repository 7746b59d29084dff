import { draw, handles } from '../../drawing/rim-light.ts';
import formula from '../../optics/light/rim-light.ts';
import type { Calculator } from '../parts/calculator.ts';
import { sentence } from './sentence.ts';

export default {
  formula,
  draw,
  handles,
  sentence,
  fields: ['behind', 'aside', 'height', 'angle', 'power', 'depth', 'D'],
  more: ['key', 'f', 'format', 'orientation'],
} satisfies Calculator;
