import { AmbiguousError, InputError } from '../../formula/errors.ts';
import { parseQuantity } from '../../formula/notation/quantity.ts';
import {
  canonical,
  shortest,
  unitFor,
  writeQuantity,
  type Style,
} from '../../formula/notation/write.ts';
import { readInput, writeInput } from '../../formula/read.ts';
import { isChoice, type Input, type QuantityInput, type Value } from '../../formula/record.ts';
import { factorOf, type Unit } from '../../formula/units.ts';
import { countOf, spanOf } from '../../tabulate/series.ts';

/** A series as it is meant, in SI: from one value to another by a step, or one value after the other. */
export type Series =
  | { readonly from: number; readonly to: number; readonly step: number }
  | { readonly values: readonly Value[] };

/** The fields of a series: three of a span, one of a list. */
export type Part = 'from' | 'to' | 'step' | 'list';
export const SPAN = ['from', 'to', 'step'] as const satisfies Part[];

/** What is wrong with a field, and the readings to choose from where its text has two. */
export interface Trouble {
  readonly message: string;
  readonly readings: readonly string[];
}

/** Cells that a table may have, and columns that can still be found one's way in. */
export const MOST = { cells: 10_000, columns: 200, list: 500 } as const;

/** A whole number as a sentence says it: 10 000. */
export const count = (n: number): string => (n < 1e15 ? n : Number(n.toPrecision(3))).toLocaleString('en-GB').replaceAll(',', '\u202f'); // prettier-ignore

export const isSpan = (series: Series): series is Extract<Series, { from: number }> =>
  'from' in series;

/** An input that takes several values at once takes one here. */
export const single = (input: Input): Input => {
  const one = { ...input };
  Reflect.deleteProperty(one, 'list');
  return one;
};

/** Whether a series of one value each can stand for this input. */
export const canRun = (input: Input): boolean => isChoice(input) || (input.list?.min ?? 1) === 1;

/** The distance between two values of an input, as a quantity of its own. */
const readStep = (input: QuantityInput, text: string, unit: Unit, stored: boolean): number => {
  const step = parseQuantity(text, {
    name: 'step',
    unit: input.unit,
    range: [0, Infinity],
    bare: stored ? 'none' : unit,
    stored,
    example: 1,
  });
  if (step > 0 && step < Infinity) return step;
  throw new InputError('The step must be more than 0. Try 1, or 0.1.');
};

/** A series' numbers lie in the record's own unit, where the decimals are those that were typed. */
const inUnit = ({ unit }: QuantityInput, si: number): number =>
  Number(shortest(si / factorOf(unit)));

/**
 * Reads the fields of a series.
 *
 * Throws: nothing; what is wrong is said of the field it is wrong in.
 * @param how links have canonical text, fields what people type
 */
export const readSeries = (
  input: Input,
  texts: Readonly<Partial<Record<Part, string>>>,
  how: {
    readonly stored: boolean;
    readonly unit?: Unit;
    /** What fields hold that the page wrote itself, to the last digit. */
    readonly held?: Readonly<Partial<Record<Part, number>>>;
  },
): { readonly series?: Series; readonly troubles: Partial<Record<Part, Trouble>> } => {
  const troubles: Partial<Record<Part, Trouble>> = {};
  const attempt = <T>(part: Part, read: () => T): T | undefined => {
    try {
      return read();
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      const readings = error instanceof AmbiguousError ? error.readings : [];
      troubles[part] = { message: error.message, readings };
      return undefined;
    }
  };
  const one = single(input);
  if (texts.list !== undefined || isChoice(input)) {
    const parts = (texts.list ?? '').split(';').filter((part) => part.trim() !== '');
    const values = attempt('list', () => {
      if (parts.length === 0)
        throw new InputError(
          isChoice(input)
            ? 'Choose at least one.'
            : `Write at least one value, or several parted by semicolons, such as ${exampleOf(input)}.`,
        );
      if (parts.length > MOST.list)
        throw new InputError(
          `That is a list of ${count(parts.length)} values. It holds ${MOST.list}: for more, give from, to and step.`,
        );
      return parts.map((part) => readInput(one, part, how));
    });
    return { ...(values && { series: { values } }), troubles };
  }
  const unit = how.unit ?? input.unit;
  const [from, to] = (['from', 'to'] as const).map((part) =>
    attempt(part, () => {
      const value = how.held?.[part] ?? (readInput(one, texts[part] ?? '', how) as number);
      if (Number.isFinite(value)) return value;
      throw new InputError('A series ends somewhere: infinity can stand in a list only.');
    }),
  );
  const step = attempt(
    'step',
    () => how.held?.step ?? readStep(input, texts.step ?? '', unit, how.stored),
  );
  if (from === undefined || to === undefined || step === undefined) return { troubles };
  const series = { from, to, step };
  attempt('step', () => {
    const many = lengthOf(input, series);
    if (many > MOST.cells)
      throw new InputError(
        `That is ${count(many)} values of ${input.name}. A table holds ${count(MOST.cells)} cells: take a larger step or a shorter range.`,
      );
  });
  return { ...(troubles.step === undefined && { series }), troubles };
};

const exampleOf = (input: QuantityInput): string =>
  (input.series ?? [input.start]).slice(0, 3).map((x) => String(Number(x.toPrecision(3)))).join('; '); // prettier-ignore

/** How many values a series has, without making them. */
export const lengthOf = (input: Input, series: Series): number => {
  if (!isSpan(series) || isChoice(input)) return isSpan(series) ? 0 : series.values.length;
  const [from, to, step] = SPAN.map((part) => inUnit(input, series[part])) as [number, number, number]; // prettier-ignore
  return countOf(from, to, step);
};

/** The values of a series, as a cell takes them. */
export const valuesOf = (input: Input, series: Series): readonly Value[] => {
  if (!isSpan(series)) {
    const wrapped = !isChoice(input) && input.list;
    return wrapped ? series.values.map((value) => [value]) : series.values;
  }
  if (isChoice(input)) return [];
  const [from, to, step] = SPAN.map((part) => inUnit(input, series[part])) as [number, number, number]; // prettier-ignore
  const factor = factorOf(input.unit);
  const values = spanOf(from, to, step).map((x) => x * factor);
  return input.list ? values.map((value) => [value]) : values;
};

/** A series as a link writes it: `1m..4m..0.2m`, or `f/1.4;f/2`. */
export const writeSeries = (input: Input, series: Series): string => {
  if (!isSpan(series)) return series.values.map((value) => writeInput(single(input), value)).join(';'); // prettier-ignore
  if (isChoice(input)) return '';
  return SPAN.map((part) => canonical(series[part], input.unit)).join('..');
};

/** Reads what writeSeries wrote; the texts of its fields, whatever they hold. */
export const textsOfLink = (text: string): Partial<Record<Part, string>> => {
  const [from = '', to, step] = text.split('..');
  return to === undefined ? { list: text } : { from, to, step: step ?? '' };
};

/** A series as its fields show it, in the reader's unit and decimal mark. */
export const textsOf = (
  input: Input,
  series: Series,
  style: Style,
): Partial<Record<Part, string>> => {
  if (isChoice(input)) return isSpan(series) ? {} : { list: writeSeries(input, series).replaceAll(';', '; ') }; // prettier-ignore
  const unit = unitFor(input.unit, input.imperial, style);
  const text = (si: number): string => fieldText(si, unit, style);
  return isSpan(series)
    ? Object.fromEntries(SPAN.map((part) => [part, text(series[part])]))
    : { list: series.values.map((value) => text(value as number)).join('; ') };
};

/** A number as a field holds it; shutter times below a third of a second in parts of one. */
const fieldText = (si: number, unit: Unit, style: Style): string => {
  if (si === Infinity) return '∞';
  const marked = { exact: true, ...style };
  if (unit === 's' && si > 0 && si < 0.3)
    return writeQuantity(si, unit, { fraction: true }, marked).replace(/ s$/, '');
  const x = Number((si / factorOf(unit)).toPrecision(6));
  const text = (unit === 'f/' ? 'f/' : '') + String(x).replace('-', '−');
  return style.decimal === 'comma' ? text.replace('.', ',') : text;
};
