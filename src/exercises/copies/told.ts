import { writeQuantity, type Style } from '../../formula/notation/write.ts';
import { templateOf, type Row, type Tools } from '../desk.ts';
import { marked } from '../marked.ts';
import type { Tolerance } from '../span.ts';
import type { Template } from '../template.ts';
import { variantOf, type Variant } from '../variant.ts';

/** A fact about an answer, by its name. */
export type Fact = readonly [name: string, text: string];

/** One marked question in words: the desk, the paper and the file a student gets back all say the same. */
export interface Told {
  readonly title: string;
  /** The question with this student’s numbers; blank lines part paragraphs, *stars* lean on a word. */
  readonly text: string;
  /** The lines or options it has, in the order this student saw them. Lines go by their numbers. */
  readonly list: { readonly numbered: boolean; readonly texts: readonly string[] };
  readonly facts: readonly Fact[];
  /** Of a question that is read from a drawing or a table. */
  readonly reading: Variant<Extract<Template, { kind: 'reading' }>> | undefined;
}

/** A credit as a mark of a hundred. */
export const ofHundred = (credit: number): string => String(Math.round(credit * 100));

const answerOf = ({ raw }: Row, variant: Variant, style: Style): string => {
  const { template, say } = variant;
  if (raw === undefined || raw.length === 0) return 'none';
  if (typeof raw === 'string') return raw;
  if (Array.isArray(raw))
    return 'options' in template
      ? raw
          .map((place: number) => say(template.options[place]?.text ?? `no ${place + 1}`, style))
          .join('; ')
      : raw.join(', ');
  return Object.entries(raw as Readonly<Record<string, string>>)
    .map(([name, text]) =>
      name === 'line' && 'lines' in template
        ? `line ${Number(text) + 1}`
        : name === 'number'
          ? text
          : `${name.replaceAll('-', ' ')} ${text}`,
    )
    .join('; ');
};

const listOf = ({ template, say, order }: Variant, style: Style): Told['list'] => {
  const all = 'options' in template ? template.options : 'lines' in template ? template.lines : [];
  return {
    numbered: 'lines' in template,
    texts: order.flatMap((place) => {
      const one = all[place];
      return one ? say(one.text, style) : [];
    }),
  };
};

/** What is right, and what was taken for it. */
const keyFacts = (
  { question, marked: result }: Row,
  variant: Variant,
  { formulas, style = {} }: Tools,
  tolerance: Tolerance | undefined,
): readonly Fact[] => {
  const { template, say } = variant;
  if (template.kind === 'choice')
    return [
      [
        'Right',
        template.options
          .filter(({ right }) => right)
          .map(({ text }) => say(text, style))
          .join('; '),
      ],
    ];
  if (!('ask' in template)) return [];
  const number = say(`{${template.ask}}`, style);
  const line = template.kind === 'mistake' ? template.lines.findIndex(({ wrong }) => wrong) : -1;
  const accepted =
    result?.accepted ??
    // What was not answered was marked against nothing; what would have been taken is said all the same.
    marked(template, question.seed, template.kind === 'mistake' ? {} : '', formulas, {
      tolerance,
      style,
    }).accepted;
  return [
    ['Right', line < 0 ? number : `line ${line + 1}; ${number}`],
    ...(accepted === undefined ? [] : [['Accepted', accepted] as const]),
  ];
};

/** What came of an answer: a word, and what there is to say about it. */
const outcome = ({ raw, marked: result }: Row, style: Style): readonly Fact[] => {
  if (raw === undefined) return [['Came to', 'not answered']];
  if (!result) return [];
  const { verdict, gap } = result;
  const feedback = (say: string | undefined): readonly Fact[] => (say ? [['Feedback', say]] : []);
  switch (verdict.kind) {
    case 'right':
      return [['Came to', `right${verdict.because === undefined ? '' : `, ${verdict.because}`}`]];
    case 'turn':
      return [
        ['Came to', verdict.credit > 0 ? 'partly right' : 'not right'],
        ...feedback(verdict.say),
      ];
    case 'wrong':
      return [['Came to', 'not right'], ...feedback(verdict.say)];
    case 'design':
      return [
        [
          'Came to',
          `${verdict.held.filter(({ kept }) => kept).length} of ${verdict.held.length} requirements kept`,
        ],
        ...verdict.held.map((held): Fact => [
          held.kept ? 'Kept' : 'Not kept',
          `${held.say} ${held.refusal ?? held.came}`,
        ]),
      ];
    case 'judge': {
      if (gap?.kind !== 'compared') return [];
      const { asked, computed, measured, inStops } = gap;
      const write = (si: number): string =>
        writeQuantity(si, asked.unit, asked.digits ?? { significant: 3 }, style);
      const apart = inStops ? `${gap.gap.toFixed(2)} stops` : `${(gap.gap * 100).toFixed(1)} %`;
      return [
        [
          'Compared',
          `measured ${write(measured)}, computed ${write(computed)}: ${apart.replace('-', '−')} apart`,
        ],
      ];
    }
    default:
      return [['Came to', 'could not be read'], ...feedback(verdict.say)];
  }
};

const markFacts = ({ hints, credit, worked, override }: Row): readonly Fact[] => {
  const byItself =
    worked === undefined ? 'no mark was worked out' : `worked out: ${ofHundred(worked)}`;
  return [
    ...(hints > 0 ? [['Hints taken', String(hints)] as const] : []),
    [
      'Mark',
      credit === undefined
        ? 'still to be judged'
        : `${ofHundred(credit)} of 100${override ? `, set by the instructor (${byItself})` : ''}`,
    ],
    ...(override && override.note !== '' ? [['Note', override.note] as const] : []),
  ];
};

/**
 * Tells one marked answer.
 * @param tolerance the instructor’s, in place of the template’s
 */
export const tell = (row: Row, tools: Tools, tolerance: Tolerance | undefined): Told => {
  const { style = {} } = tools;
  const template = templateOf(row.question, tools.templates);
  if (!template)
    return {
      title: row.question.template,
      text: 'This exercise is not in this edition of the site, or has another version: it is judged by hand.',
      list: { numbered: false, texts: [] },
      facts: [
        [
          'Answer',
          typeof row.raw === 'string' ? row.raw || 'none' : JSON.stringify(row.raw ?? 'none'),
        ],
        ...markFacts(row),
      ],
      reading: undefined,
    };
  const variant = variantOf(template, tools.formulas, row.question.seed);
  return {
    title: template.title,
    text: variant.say(template.text, style),
    list: listOf(variant, style),
    facts: [
      ['Answer', answerOf(row, variant, style)],
      ...keyFacts(row, variant, tools, tolerance),
      ...outcome(row, style),
      ...markFacts(row),
    ],
    reading:
      template.kind === 'reading'
        ? (variant as Variant<Extract<Template, { kind: 'reading' }>>)
        : undefined,
  };
};
