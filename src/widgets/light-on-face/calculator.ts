import { draw } from '../../drawing/light-on-face.ts';
import formula from '../../optics/light/light-on-face.ts';
import type { Calculator } from '../parts/calculator.ts';
import { sentence } from './sentence.ts';

export default {
  formula,
  draw,
  sentence,
  fields: ['azimuth', 'elevation', 'turn', 'fill'],
  more: ['nose', 'face'],
} satisfies Calculator;
