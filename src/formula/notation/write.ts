import { dimensionOf, factorOf, type Unit } from '../units.ts';
import type { Digits } from '../record.ts';
import type { Mark } from './number.ts';

/** How the reader wants numbers: metric or imperial, and which decimal mark. */
export interface Style {
  readonly system?: 'metric' | 'imperial';
  readonly decimal?: Mark;
  /** Drop trailing zeros: for limits and typed values, whose zeros say nothing about accuracy. */
  readonly exact?: boolean;
  /** What sums are in: a code of ISO 4217, EUR unless told otherwise. */
  readonly currency?: string;
}

const MINUS = '\u2212';
/** The thin space that groups thousands; it does not break. */
const GROUP = '\u202f';

const figures = (digits: Digits): { significant?: number; decimals?: number } =>
  typeof digits === 'number'
    ? { significant: digits }
    : 'thirds' in digits
      ? { decimals: 2 }
      : 'fraction' in digits
        ? { significant: 2 }
        : digits;

/**
 * Writes a number with the digits that mean something, a true minus, and groups of three from 10 000 up.
 * Infinite values are written ∞.
 * @example writeNumber(1.0625, { significant: 3 }) // '1.06'
 */
export const writeNumber = (x: number, digits: Digits, style: Style = {}): string => {
  if (!Number.isFinite(x)) return x < 0 ? `${MINUS}∞` : '∞';
  const { significant, decimals } = figures(digits);
  let value = x;
  let places = decimals ?? 0;
  if (significant !== undefined) {
    value = Number(x.toPrecision(significant));
    places =
      value === 0 ? 0 : Math.max(0, significant - 1 - Math.floor(Math.log10(Math.abs(value))));
  }
  let text = Math.abs(value).toFixed(Math.min(places, 20));
  if (style.exact && text.includes('.')) text = text.replace(/\.?0+$/, '');
  const negative = value < 0 && Number(text) !== 0;
  const [whole = '', fraction] = text.split('.');
  const grouped = whole.length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, GROUP) : whole;
  return (
    (negative ? MINUS : '') +
    grouped +
    (fraction === undefined ? '' : (style.decimal === 'comma' ? ',' : '.') + fraction)
  );
};

/** Stops to the nearest third, as photographers write them: +1 1/3, −2/3, 0. */
const writeThirds = (x: number): string => {
  const thirds = Math.round(Math.abs(x) * 3);
  const [whole, part] = [Math.floor(thirds / 3), thirds % 3];
  if (thirds === 0) return '0';
  return (
    (x < 0 ? MINUS : '+') +
    [whole > 0 ? `${whole}` : '', part > 0 ? `${part}/3` : ''].filter(Boolean).join(' ')
  );
};

const EIGHTHS = ' ⅛¼⅜½⅝¾⅞';

/**
 * As a tape is read: inches in eighths below a foot, in quarters below three, in halves below ten, whole ones above.
 * Below an inch an eighth says too little, and decimals stand.
 */
const writeFeet = (metres: number, style: Style): string => {
  const inches = Math.abs(metres) / 0.0254;
  const step = inches < 12 ? 1 : inches < 36 ? 2 : inches < 120 ? 4 : 8;
  const eighths = Math.round((inches * 8) / step) * step;
  if (eighths < 8) return `${writeNumber(metres / 0.0254, { significant: 2 }, style)}″`;
  const [feet, rest] = [Math.floor(eighths / 96), eighths % 96];
  const part = (EIGHTHS[rest % 8] ?? '').trim();
  return `${metres < 0 ? MINUS : ''}${feet ? `${feet}′ ` : ''}${Math.floor(rest / 8)}${part}″`;
};

/** What stands after the number; a degree, a prime and a percent sign by the usual rules of spacing. */
const SUFFIX: Partial<Record<Unit, string>> = {
  deg: '°', arcmin: '′', in: '″', ft: '′', '1': '', count: '', ISO: '', 'f/': '', m2: ' m²', 'cd/m2': ' cd/m²', '1/K': ' K⁻¹', '1/m': ' m⁻¹', '1/s': ' a second', '1/min': ' a minute',
}; // prettier-ignore

const IMPERIAL: Partial<Record<Unit, Unit>> = { m: 'ft', cm: 'in' };

/** The unit a reader of this system sees; millimetres stay, as the trade keeps focal lengths and sensors in them. */
export const unitFor = (unit: Unit, imperial: Unit | undefined, style: Style): Unit =>
  style.system === 'imperial' ? (imperial ?? IMPERIAL[unit] ?? unit) : unit;

/**
 * The metric unit a length reads best in: metres from a metre up, and no part of a centimetre but millimetres.
 * @example fitting(15.2, 'cm') // 'm'
 */
export const fitting = (si: number, unit: Unit): Unit => {
  const size = Math.abs(si);
  if (size >= 1) return unit === 'cm' || unit === 'mm' ? 'm' : unit;
  return unit === 'cm' && size < 0.01 ? 'mm' : unit;
};

/**
 * Writes an SI value as a reader sees it: number, unit, and no more digits than mean something.
 * @param unit the unit already chosen for this reader (see unitFor)
 * @example writeQuantity(2.21, 'm', 3) // '2.21 m'
 * @example writeQuantity(-0.71, 'stop', { decimals: 2 }) // '−0.71 stops'
 */
export const writeQuantity = (
  si: number,
  unit: Unit,
  digits: Digits,
  style: Style = {},
): string => {
  if (typeof digits === 'object' && 'thirds' in digits) {
    const text = Number.isFinite(si) ? writeThirds(si) : writeNumber(si, digits);
    return `${text} ${/^[+−](?:1|[12]\/3)$/.test(text) ? 'stop' : 'stops'}`;
  }
  // As a shutter is marked: below a third of a second in parts of one. Power dials write every part so.
  if (typeof digits === 'object' && 'fraction' in digits && si > 0 && si < (unit === 's' ? 0.3 : 1))
    return `1/${writeNumber(1 / si, { significant: 3 }, { ...style, exact: true })}${SUFFIX[unit] ?? ` ${unit}`}`;
  if (unit === 'ft' && Number.isFinite(si) && !style.exact) return writeFeet(si, style);
  // As it is engraved: f/4 and not f/4.0, f/128 and not f/130.
  if (dimensionOf(unit) === 'f-number')
    return `f/${writeNumber(si, si < 100 ? digits : { decimals: 0 }, { ...style, exact: true })}`;
  const number = writeNumber(si / factorOf(unit), digits, style);
  if (dimensionOf(unit) === 'iso') return `ISO ${number}`;
  // Infinity has no unit worth reading.
  if (!Number.isFinite(si)) return number;
  if (unit === 'stop') return `${number} ${/^−?1$/.test(number) ? 'stop' : 'stops'}`;
  return number + (SUFFIX[unit] ?? ` ${(unit === 'EUR' && style.currency) || unit}`);
};

/** The shortest decimal that names this value to 15 figures: no binary dust, nothing lost that was typed. */
export const shortest = (x: number): string => `${Number(x.toPrecision(15))}`;

/**
 * The one way links, files and commands write a value: ASCII, decimal point, unit spelled out.
 * @example canonical(0.085, 'mm') // '85 mm'
 */
export const canonical = (si: number, unit: Unit): string => {
  if (si === Infinity) return 'infinity';
  const number = shortest(si / factorOf(unit));
  const dimension = dimensionOf(unit);
  if (dimension === 'f-number') return `f/${number}`;
  if (dimension === 'iso' || unit === '1' || unit === 'count' || unit === 'EUR') return number;
  // A rate is so many a minute: 20/min.
  return unit.startsWith('1/') ? number + unit.slice(1) : `${number} ${unit}`;
};
