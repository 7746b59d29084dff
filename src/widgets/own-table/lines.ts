import { spelt } from '../../formula/notation/spelt.ts';
import { unitFor, type Style } from '../../formula/notation/write.ts';
import { isChoice, type Formula, type Output } from '../../formula/record.ts';
import { factorOf, type Unit } from '../../formula/units.ts';
import { cellOf, type Cell, type Step } from '../../tabulate/table.ts';
import type { Request } from './own-state.ts';
import { REFUSED, sayCell, sayStep } from './words.ts';

/** One line of a table, as the page shows it and as a file holds it. */
export interface Line {
  readonly heading: string;
  readonly texts: readonly string[];
  /** The same with numbers, each in the unit its heading names. */
  readonly file: readonly (string | number)[];
  /** Why a cell of it holds nothing. */
  readonly refusals: readonly string[];
}

/** Figures that a file keeps: more than a table shows, fewer than a spreadsheet would print of a double. */
const FIGURES = 6;

const inUnit = (si: number, unit: Unit): number =>
  Number((si / factorOf(unit)).toPrecision(FIGURES));

/** A result for a file: a number where it is one. */
const fileCell = (formula: Formula, cell: Cell, key: string, style: Style): string | number => {
  const output = formula.outputs[key];
  const value = cell.results?.[key];
  if (typeof value !== 'number' || !output) return sayCell(formula, cell, key, style);
  return inUnit(value, unitFor(output.unit ?? '1', output.imperial, style));
};

/** What a line or a column sets, for a file. */
const fileStep = (formula: Formula, key: string, step: Step, style: Style): string | number => {
  const input = formula.inputs[key];
  const value = [step.given[key]].flat()[0];
  if (!input || isChoice(input) || typeof value !== 'number')
    return sayStep(formula, key, step, style);
  return inUnit(value, unitFor(input.unit, input.imperial, style));
};

/** A unit as a heading of a file has it, in brackets; none for what is a bare number. */
const bracket = (unit: Unit | undefined): string =>
  unit === undefined || ['1', 'f/', 'ISO', 'count'].includes(unit) ? '' : ` (${unit})`;

/** The first line of a file: every column with its unit. */
export const fileHead = (
  { spec, show, down, across }: Request,
  style: Style,
): readonly string[] => {
  const { formula } = spec;
  const named = (key: string): string => {
    const input = formula.inputs[key];
    if (!input) return key;
    return spelt(input) + (isChoice(input) ? '' : bracket(unitFor(input.unit, input.imperial, style))); // prettier-ignore
  };
  const result = (key: string): string => {
    const { unit, imperial, ...output } = formula.outputs[key] as Output;
    return spelt(output) + bracket(unit && unitFor(unit, imperial, style));
  };
  if (across === undefined) return [named(down), ...show.map(result)];
  const input = formula.inputs[across];
  const name = input ? spelt(input) : across;
  return [
    named(down),
    ...spec.across.flatMap((step) => {
      const at = sayStep(formula, across, step, style).replaceAll('\u00a0', ' ');
      return show.map((key) => `${name} ${at}: ${result(key)}`);
    }),
  ];
};

/**
 * Works a table out, cell after cell: undefined for a cell that does not end its line, so that whoever asks can rest.
 */
export function* linesOf(request: Request, style: Style): Generator<Line | undefined, void> {
  const { spec, show, down } = request;
  const { formula } = spec;
  for (const step of spec.down) {
    const texts: string[] = [];
    const file = [fileStep(formula, down, step, style)];
    const refusals: string[] = [];
    for (const across of spec.across) {
      const cell = cellOf(spec, step, across);
      if (cell.refusal !== undefined) refusals.push(cell.refusal);
      for (const key of show) {
        texts.push(sayCell(formula, cell, key, style));
        file.push(cell.results ? fileCell(formula, cell, key, style) : REFUSED);
      }
      if (texts.length < spec.across.length * show.length) yield undefined;
    }
    yield { heading: sayStep(formula, down, step, style), texts, file, refusals };
  }
}
