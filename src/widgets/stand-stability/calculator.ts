import { draw } from '../../drawing/stand-stability.ts';
import formula from '../../sitting/safety/stand-stability.ts';
import type { Calculator } from '../parts/calculator.ts';
import { sentence } from './sentence.ts';

export default {
  formula,
  draw,
  sentence,
  fields: ['head', 'modifier', 'boom', 'column', 'R', 'ballast', 'place', 'pull'],
  more: ['legs', 'direction', 'factor', 'headHeight', 'modifierHeight'],
} satisfies Calculator;
