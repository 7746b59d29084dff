import { draw } from '../../drawing/viewing-distance.ts';
import formula from '../../sitting/print/viewing-distance.ts';
import type { Calculator } from '../parts/calculator.ts';
import { sentence } from './sentence.ts';

export default {
  formula,
  draw,
  sentence,
  fields: ['D', 'w', 'h', 'W', 'H'],
  more: ['acuity'],
} satisfies Calculator;
