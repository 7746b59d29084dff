import { draw } from '../../drawing/face-in-focus.ts';
import formula from '../../optics/aperture/face-in-focus.ts';
import type { Calculator } from '../parts/calculator.ts';
import { sentence } from './sentence.ts';

export default {
  formula,
  draw,
  sentence,
  fields: ['N', 'f', 's', 'ahead', 'behind', 'sway', 'turn'],
  more: ['knees', 'toes', 'format', 'c', 'p', 'marks', 'from', 'o'],
} satisfies Calculator;
