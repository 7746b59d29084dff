import { draw } from '../../drawing/platform-drop.ts';
import formula from '../../sitting/safety/platform-drop.ts';
import type { Calculator } from '../parts/calculator.ts';
import { sentence } from './sentence.ts';

export default {
  formula,
  draw,
  sentence,
  fields: ['h', 'head'],
  more: [],
} satisfies Calculator;
