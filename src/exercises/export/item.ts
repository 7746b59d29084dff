import { SIGN } from '../../formula/notation/sign.ts';
import { unitFor, type Style } from '../../formula/notation/write.ts';
import { idOf } from '../../formula/record.ts';
import { dimensionOf, factorOf, type Unit } from '../../formula/units.ts';
import { inputOf } from '../design.ts';
import type { Asking, Template } from '../template.ts';
import { askedOf, keyOf, type Asked, type Formulas, type Variant } from '../variant.ts';
import { figureOf, type Picture, type Shown } from './figure.ts';
import { piecesOf, withHair } from './pieces.ts';

/** Values that earn a mark, in the unit that the prompt names, ends included. */
export interface Accepted {
  readonly low: number;
  readonly high: number;
  readonly credit: number;
  readonly say: string;
}

/** One thing to answer. `weight` is its share of the item’s mark. */
export type Part = { readonly id: string; readonly weight: number; readonly prompt: string } & (
  | {
      readonly kind: 'number';
      readonly key: number;
      /** The first that fits is what counts. */
      readonly accepted: readonly Accepted[];
    }
  | {
      readonly kind: 'choice';
      readonly many: boolean;
      /** Credits add up, to nought at least. */
      readonly options: readonly {
        readonly id: string;
        readonly text: string;
        readonly credit: number;
        readonly say: string;
      }[];
    }
  | {
      readonly kind: 'open';
      readonly rubric: readonly { readonly text: string; readonly points: number }[];
    }
);

/** A variant as any course system could hold it. */
export interface Item {
  /** Template, version and seed, so that an answer can be traced to its numbers. */
  readonly id: string;
  readonly title: string;
  readonly text: string;
  /** Lines under the text: what a design must keep. */
  readonly lines: readonly string[];
  readonly figure: Shown | undefined;
  readonly parts: readonly Part[];
  readonly hints: readonly string[];
  readonly solution: string;
}

/** Units that stand in words, since “in in” is no English and a tape shows two parts where a number has one. */
const IN_WORDS: Partial<Record<Unit, string>> = {
  ft: 'Answer with a decimal number of feet: write 7′ 3″ as 7.25.',
  in: 'Answer with a decimal number of inches: write 3½″ as 3.5.',
};

/** Course systems take a bare decimal number: which one is meant has to be said. */
const promptFor = ({ digits }: Asked, unit: Unit): string => {
  const words = IN_WORDS[unit];
  if (words !== undefined) return words;
  const dimension = dimensionOf(unit);
  if (dimension === 'f-number') return 'Answer with the number after “f/”, such as 5.6.';
  if (dimension === 'iso') return 'Answer with the ISO number alone.';
  const sign = SIGN[unit] ?? unit;
  const parts = typeof digits === 'object' && 'fraction' in digits;
  return `Answer with a ${parts ? 'decimal' : 'plain'} number${sign && ` in ${sign}`}${parts ? ': write 1/200 as 0.005' : ''}.`;
};

const numberPart = (
  variant: Variant<Extract<Template, Asking>>,
  formulas: Formulas,
  style: Style,
  part: { readonly id: string; readonly weight: number; readonly lead?: string },
): Part => {
  const { asked, value, span, others, turns } = keyOf(variant, formulas);
  const unit = unitFor(asked.unit, undefined, style);
  const per = factorOf(unit);
  const accept = ([low, high]: readonly [number, number], credit: number, say: string) => ({
    low: low / per,
    high: high / per,
    credit,
    say,
  });
  return {
    id: part.id,
    weight: part.weight,
    prompt: [part.lead, promptFor(asked, unit)].filter(Boolean).join(' '),
    kind: 'number',
    key: value / per,
    accepted: [
      accept(withHair(span), 1, ''),
      ...others.map((other) => accept(withHair(other.span), 1, `Right, ${other.because}.`)),
      ...piecesOf(turns).map((piece) => {
        const turn = turns[piece.turn]?.turn;
        return accept(piece.span, turn?.credit ?? 0, variant.say(turn?.say ?? '', style));
      }),
    ],
  };
};

const choicePart = (
  { template, order, say }: Variant<Extract<Template, { kind: 'choice' }>>,
  style: Style,
): Part => {
  const right = template.options.filter((option) => option.right).length;
  const many = right > 1;
  return {
    id: 'choice',
    weight: 1,
    prompt: many ? 'Choose all that are right.' : 'Which is right?',
    kind: 'choice',
    many,
    options: order.flatMap((place) => {
      const option = template.options[place];
      if (!option) return [];
      return {
        id: `option-${place}`,
        text: say(option.text, style),
        credit: option.right ? 1 / right : many ? -1 / right : 0,
        say: say(option.feedback, style),
      };
    }),
  };
};

const HALF = 0.5;

const partsOf = (variant: Variant, formulas: Formulas, style: Style): readonly Part[] => {
  const { template, say } = variant;
  switch (template.kind) {
    case 'numeric':
    case 'reading':
      return [
        numberPart(variant as Variant<typeof template>, formulas, style, {
          id: 'answer',
          weight: 1,
        }),
      ];
    case 'choice':
      return [choicePart(variant as Variant<typeof template>, style)];
    case 'mistake':
      return [
        {
          id: 'line',
          weight: HALF,
          prompt: 'Which line is wrong?',
          kind: 'choice',
          many: false,
          options: template.lines.map((line, place) => ({
            id: `option-${place}`,
            text: say(line.text, style),
            credit: line.wrong ? 1 : 0,
            say: say(line.feedback, style),
          })),
        },
        numberPart(variant as Variant<typeof template>, formulas, style, {
          id: 'number',
          weight: HALF,
          lead: 'What should have come out?',
        }),
      ];
    case 'design': {
      const names = template.settings.map((setting) => {
        const input = inputOf(setting, formulas);
        return setting.name === idOf(input)
          ? (input.label ?? input.name)
          : setting.name.replaceAll('-', ' ');
      });
      return [
        {
          id: 'open',
          weight: 1,
          prompt: `Write down your settings (${names.join(', ')}) and by how much each line is kept. A person marks this: a course system cannot hold open settings against the formulas.`,
          kind: 'open',
          rubric: template.requirements.map((one) => ({ text: say(one.say, style), points: 1 })),
        },
      ];
    }
    case 'practical': {
      const formula = formulas(template.formula);
      const names = template.measured.map((id) => {
        const input = Object.values(formula.inputs).find((one) => idOf(one) === id);
        return input?.label ?? input?.name ?? id;
      });
      names.push(askedOf(formula, template.compare).name);
      return [
        {
          id: 'open',
          weight: 1,
          prompt: `Write down what you measured (${names.join(', ')}), what the formula gives, and where the gap comes from. A person marks this by a rubric. Hand in no picture of a child.`,
          kind: 'open',
          rubric: template.rubric.map((one) => ({ ...one, text: say(one.text, style) })),
        },
      ];
    }
  }
};

/**
 * A variant as a neutral item, from which every format is written.
 *
 * Model: accepted values are the marking’s own spans, in the unit asked for; overlapping wrong turns are parted where
 * marking parts them.
 * Throws: Error to the author where the template is unsound.
 * @param picture draws what a reading exercise is read from
 */
export const itemOf = (
  variant: Variant,
  formulas: Formulas,
  picture: Picture,
  style: Style = {},
): Item => {
  const { template, seed, say } = variant;
  return {
    id: `${template.id}.${template.version}.${seed}`,
    title: template.title,
    text: say(template.text, style),
    lines:
      template.kind === 'design' ? template.requirements.map((one) => say(one.say, style)) : [],
    figure:
      template.kind === 'reading'
        ? figureOf(variant as Variant<typeof template>, formulas, picture, style)
        : undefined,
    parts: partsOf(variant, formulas, style),
    hints: template.hints.map((hint) => say(hint, style)),
    solution: [template.solution, template.kind === 'practical' ? template.gap : '']
      .filter(Boolean)
      .map((text) => say(text, style))
      .join('\n\n'),
  };
};
