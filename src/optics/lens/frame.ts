import table from '../../../shared/tables/formats.json' with { type: 'json' };
import { InputError } from '../../formula/errors.ts';
import { as, mm, type Length } from '../../formula/quantities.ts';
import { parseQuantity } from '../../formula/notation/quantity.ts';
import { shortest } from '../../formula/notation/write.ts';
import type { ChoiceInput } from '../../formula/record.ts';
import { startText } from '../harbour.ts';

/** A sensor or a sheet of film, its longer side as the width. */
export interface Format {
  readonly width: Length;
  readonly height: Length;
}

/** A frame as held: what stands across and what stands up. */
export interface Frame {
  readonly across: Length;
  readonly up: Length;
}

/** The shape of a print, free of which way it is turned. */
export interface Aspect {
  readonly long: number;
  readonly short: number;
}

export type Orientation = 'landscape' | 'portrait';

const formats: Readonly<Record<string, Format>> = Object.fromEntries(
  table.formats.map(({ id, width, height }) => [id, { width: mm(width), height: mm(height) }]),
);

const side = (typed: string, unit: string): Length =>
  parseQuantity(/[a-z"″]/i.test(typed) ? typed : typed + unit, {
    name: 'side of the format',
    id: 'format',
    unit: 'mm',
    range: [1, 1000],
    example: 36,
    bare: 'none',
    stored: true,
  }) as Length;

/** The format input every lens formula shares: one of the listed frames, or a size written out. */
export const format: ChoiceInput<Format> = {
  name: 'format',
  choices: formats,
  labels: Object.fromEntries(table.formats.map(({ id, name }) => [id, name])),
  custom: {
    form: 'a size such as 30x20mm',
    read(text) {
      const [, a, b, unit] = /^([\d.,]+ ?[a-z"″]*) ?[x×] ?([\d.,]+ ?([a-z"″]+))$/i.exec(text) ?? [];
      if (a === undefined || b === undefined || unit === undefined) return undefined;
      const [one, other] = [side(a, unit), side(b, unit)];
      return { width: Math.max(one, other) as Length, height: Math.min(one, other) as Length };
    },
    write: ({ width, height }) => `${shortest(as(width, 'mm'))}x${shortest(as(height, 'mm'))}mm`,
  },
  start: startText('format'),
  means: 'the size of the sensor or film, its longer side first',
};

export const orientation: ChoiceInput<Orientation> = {
  name: 'orientation',
  choices: { landscape: 'landscape', portrait: 'portrait' },
  labels: { landscape: 'lying', portrait: 'upright' },
  start: startText('orientation'),
  default: 'landscape',
  means: 'how the camera is held: lying (landscape) or upright (portrait)',
};

/** The print's shape; the frame is cropped to it before anything is reckoned. */
export const printAspect: ChoiceInput<Aspect | null> = {
  name: 'print aspect',
  choices: {
    none: null,
    '4:5': { short: 4, long: 5 },
    '5:7': { short: 5, long: 7 },
    '2:3': { short: 2, long: 3 },
    '3:4': { short: 3, long: 4 },
    '1:1': { short: 1, long: 1 },
  },
  labels: { none: 'whole frame' },
  custom: {
    form: 'a shape such as 4:5',
    read(text) {
      const [, a = '', b = ''] = /^([\d.]+) ?[:x×] ?([\d.]+)$/i.exec(text) ?? [];
      const [one, other] = [Number(a), Number(b)];
      if (b === '') return undefined;
      const [short, long] = [Math.min(one, other), Math.max(one, other)];
      if (!(long / short <= 20))
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
  means: 'the shape of the print, to which the frame is cropped; it turns with the camera',
};

export const diagonal = (a: Length, b: Length): Length => Math.hypot(a, b) as Length;

/**
 * The frame as held and as printed: the format turned, then the largest crop of the print's shape taken from it.
 *
 * Model: the crop is centred and keeps the full width or the full height. Valid: any format and shape.
 * @example framed(36 × 24 mm, 'portrait', 4:5) // 24 mm across, 30 mm up
 */
export const framed = (given: {
  readonly format: Format;
  readonly orientation: Orientation;
  readonly aspect: Aspect | null;
}): Frame => {
  const upright = given.orientation === 'portrait';
  const across = upright ? given.format.height : given.format.width;
  const up = upright ? given.format.width : given.format.height;
  if (!given.aspect) return { across, up };
  const { short, long } = given.aspect;
  const shape = upright ? short / long : long / short;
  return across / up > shape
    ? { across: (up * shape) as Length, up }
    : { across, up: (across / shape) as Length };
};
