import { questionsOf, writeAssignment, type Assignment } from '../../exercises/assignment.ts';
import { markDesign } from '../../exercises/design.ts';
import { writeWork, type Raw, type Work } from '../../exercises/result-file.ts';
import type { Template } from '../../exercises/template.ts';
import {
  askedOf,
  variantOf,
  withNames,
  workOut,
  type Formulas,
  type Variant,
} from '../../exercises/variant.ts';
import { canonical } from '../../formula/notation/write.ts';
import { complete, writeInput } from '../../formula/read.ts';
import { idOf } from '../../formula/record.ts';
import { startsOf } from '../../formula/starts.ts';

/** How a student answers. */
export type Answering = 'right' | 'wrong' | 'unreadable' | 'none';

/** The answer to a variant that asks for a number, times something. */
const numberText = (variant: Variant, formulas: Formulas, times: number): string => {
  const { template, given } = variant;
  if (!('ask' in template)) throw new Error(`${template.id} asks for no number.`);
  const { value } = workOut(formulas, { formula: template.formula, given, result: template.ask });
  if (typeof value !== 'number') throw new Error(`${template.id} has no number for an answer.`);
  const { unit } = askedOf(formulas(template.formula), template.ask);
  // Evaluate gives SI; what is stored has its unit.
  return canonical(Number((value * times).toPrecision(6)), unit);
};

const rightRaw = (variant: Variant, formulas: Formulas): Raw => {
  const { template, drawn } = variant;
  switch (template.kind) {
    case 'numeric':
    case 'reading':
      return numberText(variant, formulas, 1);
    case 'mistake':
      return {
        line: String(template.lines.findIndex(({ wrong }) => wrong)),
        number: numberText(variant, formulas, 1),
      };
    case 'choice':
      return template.options.flatMap(({ right }, place) => (right ? [place] : []));
    case 'design': {
      const design = variant as Variant<Extract<Template, { kind: 'design' }>>;
      const found = template.accepted
        .map((given) => withNames(given, drawn))
        .find((given) => {
          const came = markDesign(given, design, formulas, {}, true);
          return came.kind === 'marked' && came.credit === 1;
        });
      if (!found) throw new Error(`${template.id}: no accepted setting.`);
      return found;
    }
    case 'practical': {
      const formula = formulas(template.formula);
      const starts = complete(formula, startsOf(formula));
      const read = Object.entries(formula.inputs).flatMap(([key, input]) =>
        template.measured.includes(idOf(input))
          ? [[idOf(input), writeInput(input, starts[key])] as const]
          : [],
      );
      const given = { ...template.given, ...Object.fromEntries(read) };
      const { value } = workOut(formulas, {
        formula: template.formula,
        given,
        result: template.compare,
      });
      const { unit } = askedOf(formula, template.compare);
      return {
        ...Object.fromEntries(read),
        [template.compare]: canonical(Number(Number(value).toPrecision(3)), unit),
      };
    }
  }
};

/** An answer as a page keeps it, of one kind or another. */
export const rawOf = (
  template: Template,
  seed: number,
  formulas: Formulas,
  how: Exclude<Answering, 'none'>,
): Raw => {
  const variant = variantOf(template, formulas, seed);
  const right = rightRaw(variant, formulas);
  if (how === 'right') return right;
  if (Array.isArray(right))
    return how === 'unreadable'
      ? []
      : [
          (template as Extract<Template, { kind: 'choice' }>).options.findIndex(
            (one) => !one.right,
          ),
        ];
  if (typeof right === 'string')
    return how === 'unreadable' ? 'about so far' : numberText(variant, formulas, 3.3);
  const parts = right as Readonly<Record<string, string>>;
  if (template.kind === 'mistake')
    return { ...parts, number: how === 'unreadable' ? '?' : numberText(variant, formulas, 3.3) };
  const [first = ''] = Object.keys(parts);
  return how === 'unreadable' ? { ...parts, [first]: 'far' } : parts;
};

/** An assignment of so many exercises, one of each kind after the other, as far as there are some. */
export const mixedAssignment = (
  templates: readonly Template[],
  count: number,
  more: Partial<Assignment> = {},
): Assignment => {
  const kinds = [...new Set(templates.map(({ kind }) => kind))];
  const ranks = new Map<Template, number>();
  for (const kind of kinds)
    templates
      .filter((one) => one.kind === kind)
      .forEach((template, at) => ranks.set(template, at * kinds.length + kinds.indexOf(kind)));
  return {
    title: 'Framing and light',
    due: 'Friday',
    seeds: 'alias',
    hints: 'tenth',
    draw: 7,
    items: templates
      .toSorted((a, b) => (ranks.get(a) ?? 0) - (ranks.get(b) ?? 0))
      .slice(0, count)
      .map(({ id, version }) => ({ template: id, version, count: 1 })),
    ...more,
  };
};

/** The text of one student’s result file. `how` says for each question how it is answered. */
export const workText = (
  assignment: Assignment,
  alias: string,
  templates: readonly Template[],
  formulas: Formulas,
  how: (at: number) => Answering,
  more: Partial<Work> = {},
): string => {
  const time = '2026-11-25T09:30:00.000Z';
  return writeWork({
    assignment,
    link: writeAssignment(assignment),
    alias,
    started: time,
    saved: time,
    answers: questionsOf(assignment, alias).flatMap((question, at) => {
      const template = templates.find(({ id }) => id === question.template);
      const answer = how(at);
      if (!template || answer === 'none') return [];
      const raw = rawOf(template, question.seed, formulas, answer);
      return [{ ...question, raw, hints: at % 7 === 6 ? 1 : 0, at: time }];
    }),
    ...more,
  });
};
