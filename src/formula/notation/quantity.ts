import { AmbiguousError, InputError } from '../errors.ts';
import { dimensionOf, factorOf, UNITS, type Dimension, type Unit } from '../units.ts';
import { NUMBER, readNumber } from './number.ts';
import { plain } from './plain.ts';
import { canonical, writeQuantity } from './write.ts';

/** What a quantity may be. `range` is in `unit`, ends included. */
export interface QuantitySpec {
  readonly name: string;
  readonly unit: Unit;
  readonly range: readonly [number, number];
  /** The unit a bare number takes; `none` where a unit must be written. A stored ratio is a bare number unless this says per cent. */
  readonly bare?: Unit | 'none';
  /** True for links, files and commands: a single point is always the decimal mark. */
  readonly stored?: boolean;
  /** The field's id, so that the sentence can be set beside it. */
  readonly id?: string | undefined;
  /** A good value in `unit`, to suggest. */
  readonly example: number;
}

/** Dimensions whose numbers need no unit anywhere. */
const UNITLESS: readonly Dimension[] = [
  'ratio',
  'f-number',
  'iso',
  'stops',
  'ev',
  'count',
  'pixels',
  'money',
  'temperature',
];

const ALIASES: Readonly<Record<string, Unit>> = {
  metre: 'm', metres: 'm', meter: 'm', meters: 'm', µ: 'µm', um: 'µm',
  '"': 'in', '″': 'in', inch: 'in', inches: 'in', "'": 'ft', '′': 'ft', foot: 'ft', feet: 'ft',
  'm²': 'm2', '°': 'deg', degree: 'deg', degrees: 'deg',
  sec: 's', second: 's', seconds: 's', minute: 'min', minutes: 'min', hour: 'h', hours: 'h', hr: 'h',
  k: 'K', mireds: 'mired', lux: 'lx', 'cd/m²': 'cd/m2', Nm: 'N·m', 'N m': 'N·m',
  stops: 'stop', ev: 'EV', ppi: 'px/in', dpi: 'px/in', ppcm: 'px/cm', pixels: 'px', x: '1', '×': '1',
}; // prettier-ignore

/** Units that may stand in one value together, large to small. */
const SYSTEMS: readonly (readonly Unit[])[] = [
  ['ft', 'in'],
  ['km', 'm', 'cm', 'mm', 'µm', 'nm'],
  ['deg', 'arcmin'],
  ['h', 'min', 's', 'ms'],
];

const PART = new RegExp(`^(${NUMBER}) ?([^\\d.,+\\-][^\\d+\\-]*?)?(?: (?=\\d)|(?=\\d)|$)`);

/** The unit a piece of text names, or undefined. A prime is feet, but minutes of arc where an angle is meant. */
const unitNamed = (text: string, dimension: Dimension): Unit | undefined => {
  if (dimension === 'angle' && text === '′') return 'arcmin';
  // A stop is a step of EV; readers write either.
  if (dimension === 'stops' && /^ev$/i.test(text)) return 'stop';
  if (dimension === 'ev' && /^stops?$/.test(text)) return 'EV';
  // 20/min is twenty times one a minute.
  if (text.startsWith('/')) return unitNamed(`1${text}`, dimension);
  if (Object.hasOwn(UNITS, text)) return text as Unit;
  if (Object.hasOwn(ALIASES, text)) return ALIASES[text];
  const lower = text.toLowerCase();
  return Object.hasOwn(UNITS, lower)
    ? (lower as Unit)
    : Object.hasOwn(ALIASES, lower)
      ? ALIASES[lower]
      : undefined;
};

/** Signs that belong to a dimension's own way of writing and say nothing about its size: f/4, ISO 100, 1:2.8. */
const unwrap = (text: string, dimension: Dimension): string => {
  if (dimension === 'f-number') return text.replace(/^(?:[fFƒ] ?\/? ?|1:)(?=[\d.,+-])/, '');
  if (dimension === 'iso') return text.replace(/^ISO ?(?=\d)/i, '');
  if (dimension === 'area' || dimension === 'luminance') return text.replace(/m2$/, 'm²');
  if (dimension === 'ev') return text.replace(/^EV ?(?=[\d.,+-])/i, '');
  return text;
};

/** Every reading of the text, in SI. */
const readings = (
  text: string,
  spec: QuantitySpec,
  fail: (why: string) => InputError,
): number[] => {
  const dimension = dimensionOf(spec.unit);
  const stored = spec.stored === true;
  const sign = text.startsWith('-') ? -1 : 1;
  let rest = text.replace(/^[+-] ?/, '');
  // A space between groups of three is only a space.
  rest = rest.replace(
    /^(\d{1,3})((?: \d{3})+)(?![\d/])/,
    (_all, head: string, tail: string) => head + tail.replaceAll(' ', ''),
  );

  if (dimension === 'ratio') {
    const [, over = '', under = ''] = new RegExp(`^(${NUMBER}) ?: ?(${NUMBER})$`).exec(rest) ?? [];
    const [a, b] = over === '' ? [] : [readNumber(over, true)[0], readNumber(under, true)[0]];
    if (a !== undefined && b !== undefined) return [(sign * a) / b];
  }

  const used: Unit[] = [];
  let totals = [0];
  do {
    const part = PART.exec(rest);
    if (!part) throw fail('is not a number');
    const [all, digits = '', typed = ''] = part;
    const word = typed.trim();
    rest = rest.slice(all.length);
    if (dimension === 'angle' && word === "'")
      throw fail("has the sign ', which means feet (minutes of arc are written 30 arcmin)");
    const unit = unitNamed(word, dimension);
    if (word !== '' && (unit === undefined || dimensionOf(unit) !== dimension))
      throw fail(`has “${word}” where a unit of ${dimension.replaceAll('-', ' ')} belongs`);
    const bare = UNITLESS.includes(dimension)
      ? stored && dimension === 'ratio' && spec.bare !== spec.unit
        ? '1'
        : spec.unit
      : (spec.bare ?? spec.unit);
    if (unit === undefined && (used.length > 0 || rest !== ''))
      throw fail('has a part without a unit');
    const here = unit ?? bare;
    if (here === 'none') throw fail('has no unit');
    used.push(here);
    const numbers = readNumber(digits, stored);
    if (numbers.length === 0) throw fail('is not a number');
    // Two readings are offered for a value of one part only; in 6 ft 2,125 in nobody means thousands.
    const kept = used.length > 1 || rest !== '' ? numbers.slice(0, 1) : numbers;
    totals = kept.flatMap((n) => totals.map((total) => total + n * factorOf(here)));
  } while (rest !== '');

  if (used.length > 1) {
    const system = SYSTEMS.find((units) => used[0] !== undefined && units.includes(used[0]));
    const places = used.map((unit) => system?.indexOf(unit) ?? -1);
    if (places.includes(-1)) throw fail('mixes two systems of units');
    if (places.some((place, i) => i > 0 && place <= (places[i - 1] ?? 0)))
      throw fail('has its units out of order');
  }
  return totals.map((total) => sign * total);
};

/**
 * Reads what a person typed for one quantity.
 *
 * Model: sign, fraction, exponent, point or comma, grouping, Arabic-Indic and full-width digits, units and their
 * aliases, compounds of one system (6 ft 2 in), f/4, ISO 100, 3:1. A bare number takes `spec.bare`, else `spec.unit`.
 * Valid: at most 64 characters and a value inside `spec.range`.
 * Throws: InputError with what is allowed; AmbiguousError where both readings of a separator lie in range.
 * @returns the value in SI
 * @example parseQuantity("6'2\"", { name: 'height', unit: 'm', range: [0, 3] }) // 1.8796
 */
export const parseQuantity = (typed: string, spec: QuantitySpec): number => {
  const { unit, range, id } = spec;
  const factor = factorOf(unit);
  const name = spec.name.charAt(0).toUpperCase() + spec.name.slice(1);
  const show = (x: number): string =>
    writeQuantity(x * factor, unit, { significant: 6 }, { exact: true });
  const [low, high] = range;
  // Written only once something is wrong.
  const example = (): string => canonical(spec.example * factor, unit);
  const allowed = (): string =>
    high < Infinity
      ? low > -Infinity
        ? `between ${show(low)} and ${show(high)}`
        : `${show(high)} or less`
      : low > -Infinity
        ? `${show(low)} or more`
        : 'a number';
  const fail = (why: string): InputError =>
    new InputError(
      `${name} must be ${allowed()}; “${typed.slice(0, 40)}” ${why}. Try ${example()}.`,
      id,
    );

  const text = plain(typed);
  if (text === '')
    throw new InputError(`${name} is empty: it must be ${allowed()}. Try ${example()}.`, id);
  const inside = (x: number): boolean => {
    // A hair of room, so that 0.3 mm typed as 0.03 cm is still the end of the range.
    const slack = 1e-12 * Math.abs(x);
    return x + slack >= low * factor && x - slack <= high * factor;
  };
  if (/^\+?(?:infinity|inf|∞)(?: ?[a-z]+)?$/i.test(text)) {
    if (high === Infinity) return Infinity;
    throw fail('is not allowed here');
  }
  const read = readings(unwrap(text, dimensionOf(unit)), spec, fail);
  if (!read.every(Number.isFinite)) throw fail('is not a number that can be used');
  const fitting = read.filter(inside);
  const [value, other] = fitting;
  if (value !== undefined && other !== undefined)
    throw new AmbiguousError(
      typed,
      fitting.map((x) => canonical(x, unit)),
      id,
    );
  if (value === undefined)
    throw new InputError(
      `${name} must be ${allowed()}; you typed ${typed.slice(0, 40).trim()}.`,
      id,
    );
  return value;
};
