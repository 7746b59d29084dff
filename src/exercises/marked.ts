import type { Style } from '../formula/notation/write.ts';
import { markDesign, type Held } from './design.ts';
import { inWords, markChoice, markNumber, type Verdict } from './mark.ts';
import { gapOf, type Gap } from './practical.ts';
import type { Raw } from './result-file.ts';
import { spanOf, type Tolerance } from './span.ts';
import type { Asking, Template } from './template.ts';
import { keyOf, variantOf, type Formulas, type Key, type Variant } from './variant.ts';

/** An answer marked. What cannot be read counts as no answer; what a person must judge has no credit of its own. */
export interface Marked {
  readonly credit: number | undefined;
  readonly verdict:
    | Verdict
    | { readonly kind: 'judge' }
    | { readonly kind: 'design'; readonly held: readonly Held[] };
  /** The range that was accepted, in words, where a number was asked for. */
  readonly accepted?: string;
  /** The place of the wrong turn that was taken, or of the wrong option that was chosen, to count them. */
  readonly turn?: number;
  /** The place of a line that was called wrong and is not. */
  readonly line?: number;
  readonly gap?: Gap;
}

export interface Marking {
  /** The instructor’s tolerance in place of the template’s. */
  readonly tolerance?: Tolerance | undefined;
  readonly style?: Style;
  /** Answers kept in a file were read once already: a single point is the decimal mark. */
  readonly stored?: boolean;
}

const isPlaces = (raw: Raw): raw is readonly number[] => Array.isArray(raw);
const isParts = (raw: Raw): raw is Readonly<Record<string, string>> =>
  typeof raw === 'object' && !isPlaces(raw);

const turnOf = (turn: number | undefined): { readonly turn?: number } =>
  turn === undefined ? {} : { turn };

const unreadable = (say: string): Marked => ({ credit: 0, verdict: { kind: 'unreadable', say } });

/** The key with another tolerance: its own span and all others anew. */
const widened = (key: Key, tolerance: Tolerance): Key => {
  const middle = ([low, high]: readonly [number, number]): number =>
    'stops' in key.tolerance ? Math.sign(low) * Math.sqrt(low * high) : (low + high) / 2;
  return {
    asked: key.asked,
    value: key.value,
    tolerance,
    span: spanOf(key.value, tolerance),
    get others() {
      return key.others.map((other) => ({
        ...other,
        span: spanOf(middle(other.span), tolerance),
      }));
    },
    get turns() {
      return key.turns.map((turn) => ({ ...turn, span: spanOf(turn.value, tolerance) }));
    },
  };
};

// With one ruling for a class, a key is widened once for all who share its numbers.
const wide = new WeakMap<Key, WeakMap<Tolerance, Key>>();
const widenedOnce = (key: Key, tolerance: Tolerance): Key => {
  const known = wide.get(key) ?? new WeakMap<Tolerance, Key>();
  wide.set(key, known);
  const found = known.get(tolerance) ?? widened(key, tolerance);
  known.set(tolerance, found);
  return found;
};

const words = new WeakMap<Key, Map<string, string>>();
/** What a key accepts, in words; written once for all who share it. */
const acceptedOf = (key: Key, style: Style): string => {
  const known = words.get(key) ?? new Map<string, string>();
  words.set(key, known);
  const how = JSON.stringify(style);
  const found = known.get(how) ?? inWords(key.span, key.asked, style);
  known.set(how, found);
  return found;
};

/** Half a mark for the line, half for what should have come out. */
const LINE = 0.5;

const markMistake = (
  raw: Raw,
  template: Extract<Template, { kind: 'mistake' }>,
  key: Key,
  stored: boolean,
): Marked => {
  const parts = isParts(raw) ? raw : {};
  const line = template.lines[Number(parts['line'])];
  const number = markNumber(parts['number'] ?? '', key, stored);
  if (!line) return unreadable('Say which line is wrong.');
  if (number.kind === 'unreadable' || number.kind === 'ambiguous')
    return { credit: 0, verdict: number };
  const credit = (line.wrong ? LINE : 0) + LINE * number.credit;
  const say = [line.wrong ? '' : line.feedback, 'say' in number ? (number.say ?? '') : '']
    .filter(Boolean)
    .join(' ');
  if (credit === 1) return { credit, verdict: { kind: 'right', credit: 1 } };
  const gone = {
    ...turnOf(number.kind === 'turn' ? number.turn : undefined),
    ...(!line.wrong && { line: Number(parts['line']) }),
  };
  return credit > 0
    ? { credit, verdict: { kind: 'turn', credit, say, turn: 0 }, ...gone }
    : { credit: 0, verdict: { kind: 'wrong', credit: 0, say }, ...gone };
};

/**
 * Marks one raw answer to one variant: what the practice page, a student’s page and the marking desk all call.
 * Throws: Error to the author where a template is unsound; never for anything a student typed.
 */
export const marked = (
  template: Template,
  seed: number,
  raw: Raw,
  formulas: Formulas,
  { tolerance, style = {}, stored = false }: Marking = {},
): Marked => {
  const variant = variantOf(template, formulas, seed);
  switch (template.kind) {
    case 'choice': {
      if (!isPlaces(raw)) return unreadable('Choose one of the answers.');
      const verdict = markChoice(raw, variant as Variant<typeof template>);
      const say = 'say' in verdict && verdict.say ? { say: variant.say(verdict.say, style) } : {};
      return 'credit' in verdict
        ? {
            credit: verdict.credit,
            verdict: { ...verdict, ...say },
            ...turnOf(raw.find((place) => template.options[place]?.right === false)),
          }
        : { credit: 0, verdict };
    }
    case 'design': {
      if (!isParts(raw)) return unreadable('Set every field.');
      const verdict = markDesign(raw, variant as Variant<typeof template>, formulas, style, stored);
      return verdict.kind === 'unreadable'
        ? unreadable(Object.values(verdict.troubles).join(' '))
        : { credit: verdict.credit, verdict: { kind: 'design', held: verdict.held } };
    }
    case 'practical': {
      if (!isParts(raw)) return unreadable('Write down every reading.');
      const gap = gapOf(raw, template, formulas(template.formula), stored);
      return gap.kind === 'unreadable'
        ? unreadable(Object.values(gap.troubles).join(' '))
        : { credit: undefined, verdict: { kind: 'judge' }, gap };
    }
    case 'numeric':
    case 'reading':
    case 'mistake': {
      const own = keyOf(variant as Variant<Extract<Template, Asking>>, formulas);
      const key = tolerance ? widenedOnce(own, tolerance) : own;
      const accepted = acceptedOf(key, style);
      // What a template says has names to fill in; what the parser says has none, and may quote braces that were typed.
      const said = <V extends Marked['verdict']>(verdict: V): V =>
        (verdict.kind === 'turn' || verdict.kind === 'wrong') && verdict.say
          ? { ...verdict, say: variant.say(verdict.say, style) }
          : verdict;
      if (template.kind === 'mistake') {
        const found = markMistake(raw, template, key, stored);
        return { ...found, verdict: said(found.verdict), accepted };
      }
      const verdict = said(markNumber(typeof raw === 'string' ? raw : '', key, stored));
      return {
        credit: 'credit' in verdict ? verdict.credit : 0,
        verdict,
        accepted,
        ...(verdict.kind === 'turn' && { turn: verdict.turn }),
      };
    }
  }
};
