import type { Assignment, Question } from '../../exercises/assignment.ts';
import { inputOf, markDesign, saySettings } from '../../exercises/design.ts';
import { inWords } from '../../exercises/mark.ts';
import type { Asking, Template } from '../../exercises/template.ts';
import {
  askedOf,
  keyOf,
  variantOf,
  withNames,
  type Formulas,
  type Variant,
} from '../../exercises/variant.ts';
import { SIGN } from '../../formula/notation/sign.ts';
import { spelt } from '../../formula/notation/spelt.ts';
import { writeQuantity, type Style } from '../../formula/notation/write.ts';
import { idOf, isChoice, type Input } from '../../formula/record.ts';
import type { Unit } from '../../formula/units.ts';
import type { Tools } from '../marking/load.ts';
import { make } from '../parts/dom.ts';
import { figureOf } from '../question/figure.ts';
import { leaning, paragraphs } from '../question/prose.ts';

/** What is printed: never two of them on one sheet. */
export type Part = 'worksheet' | 'key' | 'solutions';

export const partWords: Readonly<Record<Part, string>> = {
  worksheet: 'Worksheet',
  key: 'Answer key',
  solutions: 'Worked solutions',
};

type Of<K extends Template['kind']> = Extract<Template, { kind: K }>;

interface Making {
  readonly variant: Variant;
  readonly formulas: Formulas;
  readonly style: Style;
}

const upper = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
const letter = (place: number): string => String.fromCharCode(97 + place);
const unitText = (unit: Unit): string => SIGN[unit] ?? unit;

const line = (text: string, name = 'p'): Element => {
  const made = make(name, '');
  made.append(...leaning(text));
  return made;
};

/** A name with a rule to write on. */
const blank = (name: string, unit = ''): Element => {
  const made = make('p', `${name} `, { class: 'sheet-blank' });
  made.append(make('span', '', { class: 'sheet-rule' }), ` ${unit}`);
  return made;
};

/** Room to work in, by how much there is to work out. */
const room = (size: 'small' | 'middle' | 'large'): Element =>
  make('div', '', { class: `sheet-room sheet-room-${size}`, 'aria-hidden': 'true' });

const list = (items: readonly string[], attributes: Record<string, string> = {}): Element => {
  const made = make('ol', '', attributes);
  made.append(...items.map((text) => line(text, 'li')));
  return made;
};

const inputBlank = (input: Input, name = spelt(input)): Element =>
  isChoice(input)
    ? blank(
        upper(name),
        `(${Object.keys(input.choices)
          .map((id) => input.labels?.[id] ?? id)
          .join(', ')})`,
      )
    : blank(upper(name), unitText(input.unit));

const answerBlank = ({ variant, formulas }: Making, name = 'Answer:'): Element => {
  const template = variant.template as Template & Asking;
  return blank(name, unitText(askedOf(formulas(template.formula), template.ask).unit));
};

/** What stands under the question on a worksheet, for each kind. */
const toAnswer = (making: Making): readonly Element[] => {
  const { variant, formulas, style } = making;
  const { template, say, order } = variant;
  switch (template.kind) {
    case 'choice': {
      const many = template.options.filter(({ right }) => right).length > 1;
      return [
        make('p', many ? 'Tick all that are right, and say why.' : 'Tick one, and say why.'),
        list(
          order.map((place) => say(template.options[place]?.text ?? '', style)),
          { type: 'a', class: 'sheet-options' },
        ),
        room('small'),
      ];
    }
    case 'mistake':
      return [
        list(order.map((place) => say(template.lines[place]?.text ?? '', style))),
        blank('The wrong line:'),
        room('small'),
        answerBlank(making, 'What should have come out:'),
      ];
    case 'design':
      return [
        list(
          template.requirements.map((one) => say(one.say, style)),
          { class: 'sheet-requirements' },
        ),
        room('large'),
        ...template.settings.map((setting) => {
          const input = inputOf(setting, formulas);
          return inputBlank(
            input,
            setting.name === idOf(input) ? undefined : setting.name.replaceAll('-', ' '),
          );
        }),
      ];
    case 'practical': {
      const { inputs } = formulas(template.formula);
      const asked = askedOf(formulas(template.formula), template.compare);
      return [
        ...template.measured.flatMap((name) => {
          const input = Object.values(inputs).find((one) => idOf(one) === name);
          return input ? [inputBlank(input)] : [];
        }),
        blank(`${upper(asked.name)}, as you measured it`, unitText(asked.unit)),
        blank(`${upper(asked.name)}, as the formula has it`, unitText(asked.unit)),
        make('p', 'How far apart are they, and why?'),
        room('large'),
      ];
    }
    case 'numeric':
    case 'reading':
      return [room('middle'), answerBlank(making)];
  }
};

const designAnswer = ({ variant, formulas, style }: Making): string => {
  const { template, drawn } = variant as Variant<Of<'design'>>;
  const found = template.accepted
    .map((given) => withNames(given, drawn))
    .find((given) => {
      const came = markDesign(given, variant as Variant<Of<'design'>>, formulas, style, true);
      return came.kind === 'marked' && came.credit === 1;
    });
  if (!found) throw new Error(`${template.id}, seed ${variant.seed}: no accepted setting.`);
  return Object.entries(saySettings(template.settings, found, formulas, style))
    .map(([name, text]) => `${name.replaceAll('-', ' ')} ${text}`)
    .join(', ');
};

/** The key, and for an eye that marks by hand what else is right and what is known to be wrong. */
const answers = (making: Making, whole: boolean): readonly Element[] => {
  const { variant, formulas, style } = making;
  const { template, say, order } = variant;
  switch (template.kind) {
    case 'choice':
      return order.flatMap((place, at) => {
        const option = template.options[place];
        return option?.right ? [line(`${letter(at)}: ${say(option.text, style)}`)] : [];
      });
    case 'design':
      return [line(`Whatever keeps the brief is right. For one: ${designAnswer(making)}.`)];
    case 'practical': {
      const points = template.rubric.reduce((sum, one) => sum + one.points, 0);
      return [
        make('p', `By the rubric, of ${points}:`),
        list(
          template.rubric.map((one) => `${one.text} (${one.points})`),
          { class: 'sheet-rubric' },
        ),
        ...(whole ? paragraphs(say(template.gap, style)) : []),
      ];
    }
    case 'numeric':
    case 'reading':
    case 'mistake': {
      const key = keyOf(variant as Variant<Extract<Template, Asking>>, formulas);
      const write = (si: number): string =>
        writeQuantity(si, key.asked.unit, key.asked.digits ?? { significant: 3 }, style);
      const wrongLine =
        template.kind === 'mistake'
          ? `Line ${order.findIndex((place) => template.lines[place]?.wrong) + 1}; `
          : '';
      return [
        line(
          `${wrongLine}${say(`{${template.ask}}`, style)}. Taken: ${inWords(key.span, key.asked, style)}.`,
        ),
        ...(whole
          ? [
              ...key.others.map((other) =>
                line(`Right as well: ${inWords(other.span, key.asked, style)}, ${other.because}.`),
              ),
              ...key.turns.map(({ turn, value }) =>
                line(
                  `${write(value)}: ${Math.round(turn.credit * 100)} %. ${say(turn.say, style)}`,
                ),
              ),
            ]
          : []),
      ];
    }
  }
};

/**
 * One question on paper.
 * @param waits gets what has still to come: drawings are fetched
 */
export const questionOnPaper = (
  part: Part,
  question: Question,
  number: number,
  { templates, formulas }: Tools,
  style: Style,
  waits: Promise<unknown>[],
): Element => {
  const template = templates.get(question.template);
  if (!template) throw new Error(`There is no exercise “${question.template}”.`);
  const variant = variantOf(template, formulas, question.seed);
  const making: Making = { variant, formulas, style };
  const element = make('section', '', { class: 'sheet-question' });
  element.append(make('h4', `${number}  ${template.title}`));
  if (part !== 'key') element.append(...paragraphs(variant.say(template.text, style)));
  if (template.kind === 'reading' && part !== 'key') {
    const place = make('div', '', { class: 'sheet-figure' });
    element.append(place);
    waits.push(
      figureOf(variant as Variant<typeof template>, formulas(template.figure.formula), style).then(
        (figure) => place.append(figure),
      ),
    );
  }
  if (part === 'worksheet') element.append(...toAnswer(making));
  else element.append(...answers(making, part === 'key'));
  if (part === 'solutions') element.append(...paragraphs(variant.say(template.solution, style)));
  return element;
};

/** The sheet of one student, without its questions. */
export const sheetHead = (part: Part, { title, due }: Assignment, alias: string): Element => {
  const sheet = make('section', '', {
    class: 'sheet',
    'data-part': part,
    'aria-label': `${partWords[part]}${alias === '' ? '' : ` for ${alias}`}`,
  });
  const head = make('header', '', { class: 'sheet-head' });
  head.append(
    make('h3', part === 'worksheet' ? title : `${title}: ${partWords[part].toLowerCase()}`),
  );
  const who = alias === '' && part === 'worksheet' ? blank('Alias') : make('p', alias);
  who.classList.add('sheet-alias');
  head.append(who);
  if (due !== '') head.append(make('p', due, { class: 'sheet-due' }));
  sheet.append(head);
  return sheet;
};
