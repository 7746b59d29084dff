import { evaluateText } from '../formula/evaluate.ts';
import { spelt } from '../formula/notation/spelt.ts';
import { writeNumber, writeQuantity } from '../formula/notation/write.ts';
import { idOf, isChoice, type Formula, type Output } from '../formula/record.ts';
import { factorOf, type Unit } from '../formula/units.ts';
import type { CheckValue, PrintedText } from './shapes.ts';
import { admits, claimOf, unitPrinted, type Claim } from './tolerance.ts';

/** One printed result beside ours. */
export interface Comparison {
  readonly id: string;
  readonly name: string;
  readonly printed: string;
  readonly ours: string;
  /** Ours less the printed, in the printed unit, with its sign; empty for words. */
  readonly difference: string;
  readonly agrees: boolean;
}

/** A published value held against our own result. */
export interface Compared {
  readonly value: CheckValue;
  /** What was given, in words: “36 × 24 mm, focal length 50 mm”. */
  readonly given: string;
  /** Every input as a link carries it, defaults included. */
  readonly link: string;
  readonly results: readonly Comparison[];
  /** True when the comparison comes out as the value says it does. */
  readonly passes: boolean;
  /** What to tell the author when it does not. */
  readonly complaint: string | undefined;
}

/**
 * Holds one published value against the formula: the one rule that the page, the build and the tests share.
 *
 * Model: each printed result is compared by `claimOf`. A value that says it agrees must agree in every result; one
 * that says it differs must differ in at least one, so that a counter-example cannot rot.
 * Throws: InputError for a `given` the formula refuses, Error for a printed text that cannot be compared.
 */
export const compareCheck = (formula: Formula, value: CheckValue): Compared => {
  const { given, results } = evaluateText(formula, Object.entries(value.given));
  const compared = Object.entries(value.printed).map(([id, printed]): Comparison => {
    const output = Object.values(formula.outputs).find((one) => idOf(one) === id);
    const result = results[id];
    if (!output || !result) {
      const ids = Object.values(formula.outputs).map(idOf).join(', ');
      throw new Error(`${value.id}: ${formula.id} has no result “${id}”. It gives ${ids}.`);
    }
    const text = typeof printed === 'string' ? printed : printed.text;
    const shared = { id, name: spelt(output), printed: plural(text) };
    if (typeof result.value === 'number' || result.infinite) {
      const ours = result.infinite ? Infinity : Number(result.value);
      return { ...shared, ...numbers(printed, output, value, ours) };
    }
    return {
      ...shared,
      ours: result.text,
      difference: '',
      agrees: sameWord(text, result.text, result.value),
    };
  });
  const agrees = compared.every((one) => one.agrees);
  const passes = agrees === (value.verdict === 'agrees');
  const shown = compared
    .map((one) => `${one.id}: printed ${one.printed}, ours ${one.ours}`)
    .join('; ');
  return {
    value,
    given: inWords(formula, value.given),
    link: `?${new URLSearchParams(given).toString()}`,
    results: compared,
    passes,
    complaint: passes
      ? undefined
      : `shared/checks/${formula.id}.json, ${value.id}: it says it ${value.verdict}, and it does not (${shown}). ` +
        'Find out why: a wrong formula, the rounding, or another model. Never widen it silently.',
  };
};

const numbers = (
  printed: PrintedText,
  output: Output,
  { rounding, slack }: CheckValue,
  ours: number,
): Pick<Comparison, 'ours' | 'difference' | 'agrees'> => {
  const claim = claimOf(printed, output, rounding, slack);
  const agrees = admits(claim, ours);
  if (!Number.isFinite(ours) || !Number.isFinite(claim.value)) {
    return { ours: writeNumber(ours, 3), difference: '', agrees };
  }
  const text = typeof printed === 'string' ? printed : printed.text;
  const unit = unitPrinted(text, output.unit ?? '1');
  // One digit more than was printed shows how the rounding fell; where many were printed it shows nothing new.
  const printedDecimals = decimalsOf(claim, unit);
  // Sittings, legs and pixels come whole; where nothing finer was printed a tenth of one says nothing.
  const whole = (unit === 'count' || unit === 'px') && printedDecimals === 0;
  const decimals = printedDecimals < 4 && !whole ? printedDecimals + 1 : printedDecimals;
  if (claim.reciprocal) {
    const [theirs, own] = [1 / claim.value, 1 / ours];
    return {
      ours: `1:${writeNumber(own, { decimals })}`,
      difference: signed(own - theirs, decimals, ''),
      agrees,
    };
  }
  return {
    ours: shownIn(unit, ours, decimals),
    // The difference of two f-numbers is no f-number.
    difference: signed(ours - claim.value, decimals, unit === 'f/' ? '' : unit),
    agrees,
  };
};

/** Decimals of the printed step, in the printed unit. */
const decimalsOf = (claim: Claim, unit: Unit): number => {
  const step = claim.reciprocal ? claim.step : claim.step / factorOf(unit);
  return Math.min(8, Math.max(0, Math.ceil(-Math.log10(step) - 1e-9)));
};

const signed = (difference: number, decimals: number, unit: Unit | ''): string => {
  const text =
    unit === '' ? writeNumber(difference, { decimals }) : shownIn(unit, difference, decimals);
  return /[1-9]/.test(text) && difference > 0 ? `+${text}` : text;
};

/** Feet and inches as decimals, as tables print them; all else as everywhere on the site. */
const shownIn = (unit: Unit, si: number, decimals: number): string =>
  unit === 'ft' || unit === 'in'
    ? `${writeNumber(si / factorOf(unit), { decimals })} ${unit}`
    : writeQuantity(si, unit, { decimals });

const sameWord = (printed: string, shown: string, value: unknown): boolean => {
  const word = printed.trim().toLowerCase();
  if (typeof value === 'boolean')
    return word === (value ? 'yes' : 'no') || word === shown.toLowerCase();
  return word === String(value).toLowerCase() || word === shown.toLowerCase();
};

/** Data have one word for the unit; readers have two stops. */
const plural = (printed: string): string =>
  /^[-−+]?1 stop$/.test(printed) ? printed : printed.replace(/ stop$/, ' stops');

/** A value's inputs for a reader: choices by their word, quantities by name and number. */
const inWords = (formula: Formula, given: CheckValue['given']): string =>
  Object.entries(given)
    .map(([id, text]) => {
      const input = Object.entries(formula.inputs).find(
        ([key, one]) => idOf(one) === id || key === id,
      )?.[1];
      const shown = text
        .replace(/(\d) ?x ?(?=\d)/, '$1 × ')
        .replace(/(× [\d.]+)(?=[a-z])/, '$1 ')
        .replace(/^-/, '−')
        .replace('cd/m2', 'cd/m²')
        .replaceAll(' ', '\u00a0');
      if (!input) return `${id} ${shown}`;
      const name = spelt(input);
      // “ISO 100” says by itself what it is.
      if (!isChoice(input)) return shown.startsWith(`${name}\u00a0`) ? shown : `${name} ${shown}`;
      const label = input.labels?.[text] ?? shown;
      return input.name === 'format' || input.name === 'orientation' ? label : `${name} ${label}`;
    })
    .join(', ');
