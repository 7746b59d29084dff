import { diagonal, type Format } from '../lens/frame.ts';
import type { Given, QuantityInput } from '../../formula/record.ts';
import type { Length } from '../../formula/quantities.ts';
import { start } from '../harbour.ts';

/** Inputs that the aperture formulas share, said once. */
export const fNumber = {
  name: 'f-number',
  tex: 'N',
  unit: 'f/',
  range: [0.5, 256],
  span: [1.4, 22],
  start: start('f-number'),
  series: [1.4, 2, 2.8, 4, 5.6, 8],
  means: 'the f-number set on the lens: focal length over the diameter of the entrance pupil',
} as const satisfies QuantityInput;

/** Two more f-numbers to draw beside the one that is reckoned; a stop either side of it unless given. */
export const second = {
  ...fNumber,
  name: 'second f-number',
  tex: 'N_2',
  start: 2.8,
  optional: true,
  empty: true,
  means: 'another f-number to draw beside it; one stop wider unless given',
} as const satisfies QuantityInput;

export const third = {
  ...second,
  name: 'third f-number',
  tex: 'N_3',
  start: 5.6,
  means: 'a third f-number to draw beside them; one stop narrower unless given',
} as const satisfies QuantityInput;

export const shutter = {
  name: 'shutter',
  tex: 't',
  unit: 's',
  range: [1e-5, 3600],
  span: [0.001, 1],
  start: start('shutter'),
  means: 'the exposure time set on the camera',
} as const satisfies QuantityInput;

export const iso = {
  name: 'ISO',
  tex: 'S',
  unit: 'ISO',
  range: [1, 1e7],
  span: [50, 12800],
  start: start('iso'),
  series: [100, 200, 400, 800, 1600],
  means: 'the ISO speed set on the camera',
} as const satisfies QuantityInput;

/** The one default circle everywhere: the format's diagonal over 1500. */
export const defaultCircle = ({ format }: Given): Length => {
  const size = format as Format | undefined;
  // Without a format there is no default; whoever needs a circle then asks for one.
  return (size === undefined ? undefined : diagonal(size.width, size.height) / 1500) as Length;
};

export const circle = {
  name: 'circle',
  tex: 'c',
  unit: 'mm',
  range: [0.0001, 10],
  span: [0.005, 0.1],
  start: 0.0288,
  default: defaultCircle,
  means:
    'the largest blur disc on the sensor that still counts as sharp; the diagonal over 1500 unless given',
} as const satisfies QuantityInput;

export const pupil = {
  name: 'pupil magnification',
  tex: 'p',
  unit: '1',
  range: [0.1, 10],
  span: [0.5, 2],
  start: 1,
  default: 1,
  means: 'the exit pupil’s diameter over the entrance pupil’s; 1 for a symmetric lens',
} as const satisfies QuantityInput;
