import { InputError } from '../../formula/errors.ts';
import type { Quantity } from '../../formula/quantities.ts';
import type { ChoiceInput, QuantityInput } from '../../formula/record.ts';
import { shortest } from '../../formula/notation/write.ts';

export type Pixels = Quantity<'pixels'>;
export type Resolution = Quantity<'resolution'>;

export const pixels = {
  unit: 'px',
  range: [1, 1e6],
  span: [500, 12000],
} as const satisfies Partial<QuantityInput>;

export const side = {
  unit: 'cm',
  range: [0.1, 10000],
  span: [5, 150],
} as const satisfies Partial<QuantityInput>;

/** A print's shape, its shorter side first. */
export interface Shape {
  readonly short: number;
  readonly long: number;
}

/** The shape a file is cropped to; it turns with the file. */
export const printAspect: ChoiceInput<Shape | null> = {
  name: 'print aspect',
  choices: {
    none: null,
    '4:5': { short: 4, long: 5 },
    '5:7': { short: 5, long: 7 },
    '2:3': { short: 2, long: 3 },
    '3:4': { short: 3, long: 4 },
    '1:1': { short: 1, long: 1 },
  },
  labels: { none: 'as the print' },
  custom: {
    form: 'a shape such as 4:5',
    read(text) {
      const [, a = '', b = ''] = /^([\d.]+) ?[:x×] ?([\d.]+)$/i.exec(text) ?? [];
      if (a === '' || b === '') return undefined;
      const [short, long] = [Math.min(+a, +b), Math.max(+a, +b)];
      if (!(short > 0 && long / short <= 20))
        throw new InputError(
          `A print’s shape is two sides such as 4:5, up to 20 to 1; you typed ${text}.`,
          'print-aspect',
        );
      return { short, long };
    },
    write: (shape) => (shape ? `${shortest(shape.short)}:${shortest(shape.long)}` : 'none'),
  },
  start: 'none',
  default: 'none',
  means: 'the shape the file is cropped to first; it turns with the file',
};

/** The largest box of a shape (width over height) in another, in the same unit. */
export const boxIn = (width: number, height: number, shape: number): [number, number] =>
  width / height > shape ? [height * shape, height] : [width, width / shape];
