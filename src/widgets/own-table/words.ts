import { complete } from '../../formula/read.ts';
import { InputError } from '../../formula/errors.ts';
import { spelt } from '../../formula/notation/spelt.ts';
import { unitFor, writeQuantity, type Style } from '../../formula/notation/write.ts';
import { idOf, isChoice, type Formula, type Given, type Output } from '../../formula/record.ts';
import { sayInput, showResult } from '../../formula/show.ts';
import type { Unit } from '../../formula/units.ts';
import type { Cell, Step } from '../../tabulate/table.ts';
import type { OwnState, Request } from './own-state.ts';
import { el, type Branch } from './tree.ts';

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** What stands where a formula refuses. */
export const REFUSED = '—';

/** A step as a heading says it. */
export const sayStep = (formula: Formula, key: string, { given }: Step, style: Style): string => {
  const input = formula.inputs[key];
  return input ? unbroken(sayInput(input, given[key], style)) : '';
};

const unbroken = (text: string): string => text.replaceAll(' ', '\u00a0');

/** One result of a cell, as the plate would show it. */
export const sayCell = (formula: Formula, cell: Cell, key: string, style: Style): string => {
  const output = formula.outputs[key];
  if (!cell.results || !output) return REFUSED;
  const { currency } = cell.given;
  const here = typeof currency === 'string' ? { ...style, currency } : style;
  return unbroken(showResult(output, cell.results[key], here));
};

const and = (all: readonly string[]): string =>
  all.length < 2 ? all.join('') : `${all.slice(0, -1).join(', ')} and ${all.at(-1) ?? ''}`;

const nameOf = (formula: Formula, key: string): string => {
  const input = formula.inputs[key];
  return input ? spelt(input) : key;
};

/** “Depth of field: total, by subject distance and f-number”. */
export const titleOf = ({ spec: { formula }, show, down, across }: Request): string => {
  const shown = and(show.map((key) => spelt(formula.outputs[key] as Output)));
  const by = across ? `${nameOf(formula, down)} down and ${nameOf(formula, across)} across` : `${nameOf(formula, down)} down`; // prettier-ignore
  return `${formula.title}: ${shown}, by ${by}`;
};

/** What stays the same, each with its value: “format 36x24, focal length 85 mm”. */
export const fixedLine = (
  { formula, plate }: OwnState,
  keys: readonly string[],
  given: Given,
): string =>
  keys
    .filter((key) => given[key] !== undefined)
    .map((key) => {
      const input = formula.inputs[key];
      return input ? `${spelt(input)} ${unbroken(sayInput(input, given[key], plate.style))}` : '';
    })
    .join(', ');

/** What a table on paper has to say besides its numbers: sentences, each with a name. */
export const notesOf = (
  state: OwnState,
  { spec, down, across }: Request,
): readonly (readonly [string, string])[] => {
  const { formula, style } = state;
  const has = (id: string): boolean => [...Object.values(formula.inputs), ...Object.values(formula.outputs)].some((one) => idOf(one) === id); // prettier-ignore
  const fixed = fixedLine(state, state.fixed(), spec.fixed);
  const circleKey = Object.keys(formula.inputs).find((key) => key === 'c' && idOf(formula.inputs[key] ?? { name: '' }) === 'circle'); // prettier-ignore
  const runs = (key: string): boolean => key === down || key === across;
  const notes: [string, string][] = [];
  if (fixed) notes.push(['The same in every cell', `${fixed}.`]);
  if (circleKey && !runs(circleKey) && spec.fixed[circleKey] === undefined) {
    const circle = circleOf(formula, { ...state.plate.given, [circleKey]: undefined }, circleKey);
    const format = Object.keys(formula.inputs).find((key) => idOf(formula.inputs[key] ?? { name: '' }) === 'format'); // prettier-ignore
    notes.push(['Circle of confusion', format !== undefined && runs(format) ? 'diagonal/1500 of each format.' : `diagonal/1500${circle === undefined ? '' : `, here ${unbroken(writeQuantity(circle, 'mm', 3, style))}`}.`]); // prettier-ignore
  }
  if (has('subject-distance'))
    notes.push(['Where distance starts', has('measured-from') ? 'at the front principal plane of the lens, unless “measured from” says the sensor.' : 'at the front principal plane of the lens.']); // prettier-ignore
  if (Object.values(formula.inputs).some((input) => !isChoice(input) && input.unit === 'f/'))
    notes.push(['Marks', 'a number on a ring or dial means itself: f/5.6 is 5.6, 1/125 is 0.008 s, unless “marks” says exact.']); // prettier-ignore
  notes.push(['Model', formula.model], ['What it leaves out', formula.breaks]);
  return notes;
};

/** The same as they stand on the page. */
export const notesTree = (notes: readonly (readonly [string, string])[]): readonly Branch[] =>
  notes.map(([name, text]) => el('p', {}, el('b', {}, `${name}:`), ` ${text}`));

const circleOf = (formula: Formula, given: Given, key: string): number | undefined => {
  try {
    const { [key]: circle } = complete(formula, given);
    return typeof circle === 'number' ? circle : undefined;
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return undefined;
  }
};

/** The unit of a column in a file: one for all its cells. */
export const unitOf = ({ unit, imperial }: Output, style: Style): Unit | undefined =>
  unit && unitFor(unit, imperial, style);
