import type { QuantityInput } from '../../formula/record.ts';
import { start } from '../harbour.ts';

/** Inputs that several lens formulas share, said once. */
export const focalLength = {
  name: 'focal length',
  tex: 'f',
  unit: 'mm',
  range: [1, 5000],
  span: [24, 200],
  start: start('focal-length'),
  series: [35, 50, 60, 85, 105, 135],
  means: 'the focal length of the lens, as engraved',
} as const satisfies QuantityInput;

export const subjectDistance = {
  name: 'subject distance',
  tex: 's',
  unit: 'm',
  range: [0.01, Infinity],
  span: [0.5, 6],
  start: start('subject-distance'),
  means: 'from the lens’s front principal plane to the plane in focus, the child’s nearer eye',
} as const satisfies QuantityInput;

export const frameHeight = {
  name: 'frame height',
  tex: 'H',
  unit: 'm',
  range: [0.001, 1000],
  span: [0.2, 2.4],
  start: start('frame-height'),
  means: 'how much of the set, from bottom to top, fills the frame at the child',
} as const satisfies QuantityInput;

export const backdropDistance = {
  name: 'backdrop distance',
  tex: 'b',
  unit: 'm',
  range: [0, 1000],
  span: [0, 5],
  start: start('backdrop-distance'),
  means: 'from the child back to the backdrop',
} as const satisfies QuantityInput;

export const childOffset = {
  name: 'child offset',
  tex: 'e',
  unit: 'm',
  range: [-10, 10],
  span: [-1, 1],
  start: start('child-offset'),
  default: 0,
  means: 'how far to one side of the lens’s axis the child sits',
} as const satisfies QuantityInput;

export const roomWidth = {
  name: 'room width',
  tex: 'w_r',
  unit: 'm',
  range: [0.5, 100],
  span: [1.5, 10],
  start: start('room-width'),
  optional: true,
  means: 'wall to wall, across the line of sight',
} as const satisfies QuantityInput;
