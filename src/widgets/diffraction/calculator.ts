import { draw } from '../../drawing/diffraction.ts';
import formula from '../../optics/aperture/diffraction.ts';
import type { Calculator } from '../parts/calculator.ts';
import { sentence } from './sentence.ts';

export default {
  formula,
  draw,
  sentence,
  fields: ['N', 'm', 'pitch', 'format'],
  more: ['wavelength', 'p', 'c', 'marks'],
} satisfies Calculator;
