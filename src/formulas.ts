import type { Formula } from './formula/record.ts';

/** Every formula by id, fetched only when asked for. Plates are numbered by the lessons, not by this order. */
export const formulas: Readonly<Record<string, () => Promise<{ readonly default: Formula }>>> = {
  'angle-of-view': () => import('./optics/lens/angle-of-view.ts'),
  'framing-distance': () => import('./optics/lens/framing-distance.ts'),
  'frame-size': () => import('./optics/lens/frame-size.ts'),
  perspective: () => import('./optics/lens/perspective.ts'),
  'backdrop-coverage': () => import('./optics/lens/backdrop-coverage.ts'),
  'room-fit': () => import('./optics/lens/room-fit.ts'),
  'spotter-reach': () => import('./optics/lens/spotter-reach.ts'),
  equivalence: () => import('./optics/lens/equivalence.ts'),
  'f-stop': () => import('./optics/aperture/f-stop.ts'),
  'circle-of-confusion': () => import('./optics/aperture/circle-of-confusion.ts'),
  'depth-of-field': () => import('./optics/aperture/depth-of-field.ts'),
  'face-in-focus': () => import('./optics/aperture/face-in-focus.ts'),
  'background-blur': () => import('./optics/aperture/background-blur.ts'),
  'recompose-error': () => import('./optics/aperture/recompose-error.ts'),
  'exposure-value': () => import('./optics/aperture/exposure-value.ts'),
  'ambient-exposure': () => import('./optics/aperture/ambient-exposure.ts'),
  'movement-blur': () => import('./optics/aperture/movement-blur.ts'),
  diffraction: () => import('./optics/aperture/diffraction.ts'),
};
