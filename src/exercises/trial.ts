import { idOf } from '../formula/record.ts';
import { canonical, unitFor, writeQuantity } from '../formula/notation/write.ts';
import { dimensionOf } from '../formula/units.ts';
import { textsOf } from './draw.ts';
import { markDesign } from './design.ts';
import { markChoice, markNumber } from './mark.ts';
import type { Asking, Givens, Template } from './template.ts';
import { keyOf, variantOf, withNames, type Formulas, type Key, type Variant } from './variant.ts';

/** How far outside its span an answer is still plainly wrong: a thousandth of the key. */
const OUTSIDE = 1e-3;

/** Two wrong turns this near, as a part of the key, cannot be told apart by any answer with a sensible number of digits. */
const SAME = 1e-4;

const begun = (text: string): string => text.slice(0, 40);

/** Every text of a template that a student may be shown. */
const textsOfAll = (template: Template): readonly string[] => {
  const texts = [template.text, template.solution, ...template.hints];
  if ('turns' in template) texts.push(...template.turns.map(({ say }) => say));
  switch (template.kind) {
    case 'numeric':
      return texts;
    case 'reading':
      return [...texts, template.figure.says ?? ''];
    case 'choice':
      return [...texts, ...template.options.flatMap(({ text, feedback }) => [text, feedback])];
    case 'mistake':
      return [...texts, ...template.lines.flatMap(({ text, feedback }) => [text, feedback])];
    case 'design':
      return [...texts, ...template.requirements.map(({ say }) => say)];
    case 'practical':
      return [...texts, template.gap, ...template.rubric.map(({ text }) => text)];
  }
};

/** How an SI value is typed, in a spelling of its unit. */
const spellings = (si: number, { asked: { unit } }: Key): readonly string[] => {
  const text = canonical(Number(si.toPrecision(13)), unit);
  // One point in a plain decimal: the comma may stand for it. Three digits after it would be asked about.
  const comma = /^\D*\d+\.\d{4,}/.test(text) ? [text.replace('.', ',')] : [];
  return [text, ...comma];
};

const complainOfNumber = (key: Key): readonly string[] => {
  const { span, value, turns, others, asked } = key;
  const wrong = (what: string, si: number, kind: string): readonly string[] =>
    spellings(si, key).flatMap((text) => {
      const verdict = markNumber(text, key, !text.includes(','));
      return verdict.kind === kind ? [] : [`${what}, ${text}, is marked “${verdict.kind}”`];
    });
  // As it is shown: what rounds to nought is none that anybody could answer.
  const shown = writeQuantity(
    value,
    unitFor(asked.unit, undefined, {}),
    asked.digits ?? { significant: 3 },
  );
  const out = OUTSIDE * Math.max(Math.abs(value), span[1] - span[0]);
  const strangers = [span[0] - out, span[1] + out].filter(
    (si) =>
      !others.some((other) => si >= other.span[0] && si <= other.span[1]) &&
      !turns.some((turn) => si >= turn.span[0] && si <= turn.span[1]),
  );
  return [
    ...(/[1-9]/.test(shown) ? [] : [`The key is shown as ${shown}`]),
    ...wrong('The key', value, 'right'),
    ...span.flatMap((end) => wrong('An end of what is accepted', end, 'right')),
    ...strangers.flatMap((si) => wrong('What lies just outside', si, 'wrong')),
    ...turns.flatMap(({ value: led }) => wrong('A wrong turn', led, 'turn')),
    ...turns.flatMap((one, i) =>
      turns
        .slice(i + 1)
        .filter((other) => Math.abs(one.value - other.value) <= SAME * Math.abs(value))
        .map(
          (other) =>
            `Two wrong turns lead to the same number: “${begun(one.turn.say)}” and “${begun(other.turn.say)}”`,
        ),
    ),
  ];
};

/** Requirements that count are missed alone by some settings; with fewer a design would be a sum in disguise. */
const LEAST_BINDING = 3;

const complainOfDesign = (
  variant: Variant<Extract<Template, { kind: 'design' }>>,
  formulas: Formulas,
): readonly string[] => {
  const { accepted, nearMiss } = variant.template;
  /** The places of the requirements that settings miss; nothing where they cannot be read. */
  const missed = (settings: Givens): readonly number[] | undefined => {
    const given = withNames(settings, variant.drawn);
    const verdict = markDesign(given, variant, formulas, {}, true);
    return verdict.kind === 'marked'
      ? verdict.held.flatMap(({ kept }, place) => (kept ? [] : [place]))
      : undefined;
  };
  const alone = nearMiss.flatMap((settings) => {
    const [place, ...more] = missed(settings) ?? [];
    return place === undefined || more.length > 0 ? [] : [place];
  });
  const binding = new Set(alone).size;
  return [
    ...(accepted.some((one) => missed(one)?.length === 0)
      ? []
      : ['No accepted setting keeps the brief']),
    ...(binding >= LEAST_BINDING
      ? []
      : [`Near misses miss ${binding} of the requirements alone; expected ${LEAST_BINDING}`]),
  ];
};

/**
 * Everything wrong with one variant, for the build to stop at: each kind of exercise marks its own right, wrong and
 * mistaken answers.
 * @returns sentences; none where the variant is sound
 */
export const complaintsOf = (
  template: Template,
  formulas: Formulas,
  seed: number,
): readonly string[] => {
  const where = `${template.id}, seed ${seed}: `;
  try {
    const variant = variantOf(template, formulas, seed);
    const found = textsOfAll(template)
      .map((text) => variant.say(text))
      .filter((text) => /NaN|Infinity|undefined|not given|\{|\}/.test(text))
      .map((text) => `reads “${text.slice(0, 80)}”`);
    const [least, most] = difficultyBand(template, formulas);
    if (template.difficulty < least || template.difficulty > most)
      found.push(
        `calls its difficulty ${template.difficulty}; by its steps it is ${least === most ? least : `${least} to ${most}`}`,
      );
    if ('ask' in template) {
      const key = keyOf(variant as Variant<Extract<Template, Asking>>, formulas);
      found.push(...complainOfNumber(key));
    }
    if (template.kind === 'mistake') {
      if (template.lines.filter((line) => line.wrong).length !== 1)
        found.push('not exactly one line is wrong');
      const shown = template.lines.map((line) => variant.say(line.text));
      if (new Set(shown).size !== shown.length) found.push('two lines read alike');
    }
    if (template.kind === 'choice') {
      const choice = variant as Variant<typeof template>;
      const right = template.options.flatMap((option, place) => (option.right ? [place] : []));
      if (right.length === 0) found.push('no answer is right');
      if (markChoice(right, choice).kind !== 'right')
        found.push('its right answers are not marked right');
      const shown = template.options.map((option) => variant.say(option.text));
      if (new Set(shown).size !== shown.length) found.push('two answers read alike');
    }
    if (template.kind === 'design')
      found.push(...complainOfDesign(variant as Variant<typeof template>, formulas));
    return found.map((complaint) => where + complaint);
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    // Some say themselves where they were.
    return [message.startsWith(where) ? message : where + message];
  }
};

/** How many different sets of numbers a template can draw. */
export const variety = ({ vary }: Template): number =>
  Object.values(vary).reduce((product, drawn) => product * textsOf(drawn).length, 1);

/**
 * How hard a template may call itself, from what has to be done: a step for each quantity, one for each change of
 * dimension, two for working backwards, one for each further formula. A question in words may be easier or harder than
 * its numbers; a mistake to find is no easier; a design is never easy.
 * @returns the least and the greatest it may declare
 */
export const difficultyBand = (
  template: Template,
  formulas: Formulas,
): readonly [least: number, most: number] => {
  const formula = formulas(template.formula);
  const ids = Object.keys({ ...template.given, ...template.vary });
  const units = Object.values(formula.inputs).flatMap((input) =>
    'unit' in input && ids.includes(idOf(input)) ? [input.unit] : [],
  );
  const backwards =
    'ask' in template &&
    Object.values(formula.inputs).some((input) => idOf(input) === template.ask);
  const chained = new Set(Object.values(template.also).map((one) => one.formula)).size;
  const steps =
    units.length + new Set(units.map(dimensionOf)).size - 1 + (backwards ? 2 : 0) + chained;
  const measured = steps <= 3 ? 1 : steps <= 6 ? 2 : 3;
  switch (template.kind) {
    case 'numeric':
    case 'reading':
      return [measured, measured];
    case 'choice':
      return [Math.max(1, measured - 1), Math.min(3, measured + 1)];
    case 'mistake':
      return [measured, Math.min(3, measured + 1)];
    case 'design':
      return [2, 3];
    case 'practical':
      return [1, 3];
  }
};
