import type { Formula } from './formula/record.ts';

/** Every formula by id, fetched only when asked for. The order is the order of the plates. */
export const formulas: Readonly<Record<string, () => Promise<{ readonly default: Formula }>>> = {
  'angle-of-view': () => import('./optics/lens/angle-of-view.ts'),
  'framing-distance': () => import('./optics/lens/framing-distance.ts'),
  'frame-size': () => import('./optics/lens/frame-size.ts'),
  perspective: () => import('./optics/lens/perspective.ts'),
  'backdrop-coverage': () => import('./optics/lens/backdrop-coverage.ts'),
  'room-fit': () => import('./optics/lens/room-fit.ts'),
  'spotter-reach': () => import('./optics/lens/spotter-reach.ts'),
  equivalence: () => import('./optics/lens/equivalence.ts'),
};
