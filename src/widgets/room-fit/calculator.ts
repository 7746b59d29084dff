import { draw } from '../../drawing/room-fit.ts';
import formula from '../../optics/lens/room-fit.ts';
import type { Calculator } from '../parts/calculator.ts';
import { sentence } from './sentence.ts';

export default {
  formula,
  draw,
  sentence,
  fields: ['H', 'f', 'roomLength', 'b', 'a', 'c', 'orientation', 'format'],
  more: ['roomWidth', 'ceiling', 'k', 'aspect'],
} satisfies Calculator;
