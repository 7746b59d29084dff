import { AmbiguousError, InputError } from '../formula/errors.ts';
import { parseQuantity } from '../formula/notation/quantity.ts';
import { fitting, unitFor, writeQuantity, type Style } from '../formula/notation/write.ts';
import type { Unit } from '../formula/units.ts';
import { holds, type Span } from './span.ts';
import type { Template } from './template.ts';
import type { Asked, Key, Variant } from './variant.ts';

/** What came of an answer. Only `right`, `turn` and `wrong` count as tries; the others cost nothing. */
export type Verdict =
  | { readonly kind: 'right'; readonly credit: 1; readonly because?: string }
  | { readonly kind: 'turn'; readonly credit: number; readonly say: string; readonly turn: number }
  | { readonly kind: 'wrong'; readonly credit: 0; readonly say?: string }
  | { readonly kind: 'unreadable'; readonly say: string }
  | { readonly kind: 'ambiguous'; readonly say: string; readonly readings: readonly string[] };

/**
 * Reads an answer as every field of the site reads numbers; a bare number takes the unit the question names.
 * Throws: InputError, or AmbiguousError with both readings of `3,145`.
 * @param bare another unit for bare numbers, where the reader sees another; `none` where one must be written
 * @returns the value in SI
 */
export const readAnswer = (
  text: string,
  { name, unit }: Asked,
  stored = false,
  bare: Unit | 'none' = unit,
): number =>
  parseQuantity(text, {
    name,
    // Both readings of an ambiguous number are written in the unit the reader sees.
    unit: bare === 'none' ? unit : bare,
    bare,
    range: [-Infinity, Infinity],
    stored,
    example: 1,
  });

/**
 * How finely an answer was typed: half a step of its last digit, in SI, in whatever unit it was written. Nothing for
 * fractions and for feet with inches, which have no last digit.
 */
const halfStep = (text: string, asked: Asked): number | undefined => {
  const [, before = '', whole = '', decimals = '', after = ''] =
    /^(\D*?)(\d+)(?:[.,](\d+))?([^\d/]*)$/.exec(text.trim()) ?? [];
  if (whole === '') return undefined;
  const places = decimals.length;
  const number = Number(`${whole}.${decimals || '0'}`);
  const at = (x: number): number => readAnswer(before + x.toFixed(places) + after, asked, true);
  return Math.abs(at(number + 10 ** -places) - at(number)) / 2;
};

/**
 * A word to someone whose digits are too few to tell right from wrong; it costs nothing. Whoever is far off hears of that
 * first: the word is for those whom another digit might have made right, or wrong.
 */
export const tooCoarse = (text: string, key: Key): string | undefined => {
  const half = halfStep(text, key.asked);
  const room = (key.span[1] - key.span[0]) / 2;
  return half !== undefined &&
    half > room &&
    Math.abs(readAnswer(text, key.asked, true) - key.value) <= half + room
    ? 'That is rounded more coarsely than the answer is marked: give a digit more.'
    : undefined;
};

/** Marks a number typed for a question. The whole of marking: nothing else decides what is right. */
export const markNumber = (text: string, key: Key, stored = false): Verdict => {
  let value: number;
  try {
    value = readAnswer(text, key.asked, stored);
  } catch (error) {
    if (error instanceof AmbiguousError)
      return { kind: 'ambiguous', say: error.message, readings: error.readings };
    if (error instanceof InputError) return { kind: 'unreadable', say: error.message };
    throw error;
  }
  if (!Number.isFinite(value)) return { kind: 'wrong', credit: 0 };
  if (holds(key.span, value)) return { kind: 'right', credit: 1 };
  const other = key.others.find(({ span }) => holds(span, value));
  if (other) return { kind: 'right', credit: 1, because: other.because };
  // Of two wrong turns that lead near, the nearer was taken.
  const taken = key.turns
    .map((one, turn) => ({ ...one, at: turn, off: Math.abs(one.value - value) }))
    .filter(({ span }) => holds(span, value))
    .sort((a, b) => a.off - b.off)[0];
  return taken
    ? { kind: 'turn', credit: taken.turn.credit, say: taken.turn.say, turn: taken.at }
    : { kind: 'wrong', credit: 0 };
};

/** Options are ticked by their place in the template; of several right ones each counts, and a wrong one takes away as much. */
export const markChoice = (
  chosen: readonly number[],
  { template }: Variant<Extract<Template, { kind: 'choice' }>>,
): Verdict => {
  const places = [...new Set(chosen)];
  if (places.length === 0 || places.some((place) => template.options[place] === undefined))
    return {
      kind: 'unreadable',
      say: 'Nothing was chosen that can be read. Choose one of the answers.',
    };
  const right = template.options.filter((option) => option.right).length;
  const hits = places.filter((place) => template.options[place]?.right).length;
  const credit = Math.max(0, (hits - (places.length - hits)) / right);
  const say = places
    .map((place) => template.options[place])
    .filter((option) => !option?.right)
    .map((option) => option?.feedback ?? '')
    .join(' ');
  if (credit === 1) return { kind: 'right', credit: 1 };
  return credit > 0
    ? { kind: 'turn', credit, say: say || 'There is more that is right.', turn: places[0] ?? 0 }
    : { kind: 'wrong', credit: 0, say };
};

/** Places between an end and the middle that are tried for a text that is not rounded out of the span. */
const PLACES = 32;

/**
 * What was accepted, in words: “1.96 m to 2.04 m”.
 *
 * Model: written with a digit more than the record shows, and rounded inwards, so that either end is taken when it is
 * typed as it is said.
 */
export const inWords = ([low, high]: Span, asked: Asked, style: Style = {}): string => {
  const { unit, imperial, digits } = asked;
  const reader = unitFor(unit, imperial, style);
  const shown = style.system === 'imperial' ? reader : fitting(high, reader);
  const fraction = typeof digits === 'object' && 'fraction' in digits;
  const write = (si: number, how: Style, as = shown): string =>
    writeQuantity(si, as, fraction ? digits : { significant: 4 }, how);
  const taken = (si: number): boolean => {
    const text = write(si, { ...style, decimal: 'point' });
    return holds([low, high], readAnswer(text, asked, true));
  };
  const say = (end: number): string => {
    for (let place = 0; place < PLACES; place++) {
      const si = end + (((low + high) / 2 - end) * place) / PLACES;
      if (taken(si)) return write(si, style);
    }
    // On a tape’s own marks there is none so near: inches as a decimal, then.
    return write(end, style, 'in');
  };
  return `${say(low)} to ${say(high)}`;
};
