import { draw } from '../../drawing/break-even.ts';
import formula from '../../sitting/day/break-even.ts';
import type { Calculator } from '../parts/calculator.ts';
import { sentence } from './sentence.ts';

export default {
  formula,
  draw,
  sentence,
  fields: ['fixed', 'fee', 'order', 'variable', 'noShows', 'booked', 'currency'],
  more: ['price', 'tax', 'card', 'deposit', 'editing', 'sitting'],
} satisfies Calculator;
