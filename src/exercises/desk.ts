import type { Style } from '../formula/notation/write.ts';
import type { Question } from './assignment.ts';
import { isBlank } from './blank.ts';
import { marked, type Marked } from './marked.ts';
import type { Work } from './result-file.ts';
import { overrideKey, sumOfAnswer, type Override } from './rulings.ts';
import type { Tolerance } from './span.ts';
import { commonest, itemRest, mean } from './statistics.ts';
import type { Template } from './template.ts';
import { variantOf, type Formulas } from './variant.ts';

/** How the desk marks: kept apart from the files, which are never changed. */
export interface Ruling {
  /** By template id. */
  readonly tolerances: ReadonlyMap<string, Tolerance>;
  /** By alias and question: `overrideKey`. */
  readonly overrides: ReadonlyMap<string, Override>;
  /** What each hint takes off a question’s mark. */
  readonly hintCost: number;
}

/** What marking works with. */
export interface Tools {
  /** By id; one that is not there, or has another version, is left for a person to judge. */
  readonly templates: ReadonlyMap<string, Template>;
  readonly formulas: Formulas;
  /** How numbers are written for whoever marks. */
  readonly style?: Style;
}

/** One question of one student, as the desk has it. */
export interface Row {
  readonly question: Question;
  readonly raw: Work['answers'][number]['raw'] | undefined;
  readonly marked: Marked | undefined;
  readonly hints: number;
  /** What the answer earns by itself, hints counted; undefined where a person has yet to judge. */
  readonly worked: number | undefined;
  /** From 0 to 1, hints and overrides counted; undefined where a person has yet to judge. */
  readonly credit: number | undefined;
  readonly override: Override | undefined;
  /** The override was set on another answer than the one that lies here now. */
  readonly stale: boolean;
}

/** Whether an answer can be marked here: its template is on the site, at the version it was set from. */
export const templateOf = (
  { template, version }: Question,
  templates: Tools['templates'],
): Template | undefined => {
  const found = templates.get(template);
  return found?.version === version ? found : undefined;
};

/** Marks one answer again from what was typed; whatever mark the file may hold is not read. */
export const markRow = (
  { alias, answers }: Work,
  question: Question,
  { templates, formulas, style = {} }: Tools,
  ruling: Ruling,
): Row => {
  const found = answers.find(
    (one) => one.template === question.template && one.seed === question.seed,
  );
  // Of some a file holds the hints alone.
  const answer = found && !isBlank(found.raw) ? found : undefined;
  const template = templateOf(question, templates);
  const result =
    answer && template
      ? marked(template, question.seed, answer.raw, formulas, {
          tolerance: ruling.tolerances.get(question.template),
          style,
          stored: true,
        })
      : undefined;
  const hints = found?.hints ?? 0;
  const worked =
    answer === undefined
      ? 0
      : result?.credit === undefined
        ? undefined
        : Math.max(0, result.credit - hints * ruling.hintCost);
  return ruled({ question, raw: answer?.raw, marked: result, hints, worked }, alias, ruling);
};

/** The same answer with what the instructor has decided about it by now. */
export const ruled = (
  { question, raw, marked: result, hints, worked }: Omit<Row, 'credit' | 'override' | 'stale'>,
  alias: string,
  { overrides }: Pick<Ruling, 'overrides'>,
): Row => {
  const override = overrides.size > 0 ? overrides.get(overrideKey(alias, question)) : undefined;
  return {
    question,
    raw,
    marked: result,
    hints,
    worked,
    credit: override?.credit ?? worked,
    override,
    stale: override !== undefined && override.answer !== sumOfAnswer(raw),
  };
};

/** Marks one student’s work again, question by question. */
export const markWork = (
  work: Work,
  questions: readonly Question[],
  tools: Tools,
  ruling: Ruling,
): readonly Row[] => questions.map((question) => markRow(work, question, tools, ruling));

/** One item over the whole class. */
export interface ItemStatistics {
  readonly template: string;
  /** The mean mark, from 0 (nobody) to 1 (everybody), of those that are judged. */
  readonly easiness: number | undefined;
  /** With the rest of the work, once ten students are there and everything of it is judged. */
  readonly itemRest: number | undefined;
  /** A row that took the wrong turn most often taken, to say it with its numbers, and how often it was taken. */
  readonly commonestTurn: { readonly row: Row; readonly times: number } | undefined;
  readonly answered: number;
  /** How many wait for a person. */
  readonly waiting: number;
}

/** Fewer students than this, and a correlation says nothing. */
export const ENOUGH = 10;

/** What sets one wrong turn apart from another; undefined where none is known. */
const turnOf = ({ marked: result }: Row): string | undefined =>
  result?.line !== undefined
    ? `line ${result.line}`
    : result?.turn !== undefined
      ? `turn ${result.turn}`
      : undefined;

/** The wrong turn a row took, in words and with its numbers. */
export const sayTurn = (
  row: Row,
  { templates, formulas, style = {} }: Tools,
): string | undefined => {
  const template = templateOf(row.question, templates);
  const { turn, line } = row.marked ?? {};
  if (!template) return undefined;
  const text =
    line !== undefined && 'lines' in template
      ? template.lines[line]?.feedback
      : turn === undefined
        ? undefined
        : 'turns' in template
          ? template.turns[turn]?.say
          : 'options' in template
            ? template.options[turn]?.feedback
            : undefined;
  return text && variantOf(template, formulas, row.question.seed).say(text, style);
};

/**
 * Statistics for each place of the assignment; students answer the same template there, if not the same numbers.
 * The rest of a work is what is judged in every work: a brief that waits for a person in some of them would count as
 * nought in those, and say more about the judging than about the class.
 */
export const itemsOf = (class_: readonly (readonly Row[])[]): readonly ItemStatistics[] => {
  const [first = []] = class_;
  const columns = first.map((_row, at) => class_.flatMap((rows) => rows[at] ?? []));
  const waiting = columns.map(
    (column) => column.filter(({ credit }) => credit === undefined).length,
  );
  const judged = class_.map((rows) =>
    rows.map(({ credit }, at) => (waiting[at] === 0 ? (credit ?? 0) : 0)),
  );
  return first.map(({ question }, at) => {
    const column = columns[at] ?? [];
    const most = commonest(column.flatMap((row) => turnOf(row) ?? []));
    const row = most && column.find((one) => turnOf(one) === most[0]);
    return {
      template: question.template,
      easiness: mean(column.flatMap(({ credit }) => credit ?? [])),
      itemRest: class_.length >= ENOUGH && waiting[at] === 0 ? itemRest(judged, at) : undefined,
      commonestTurn: most && row && { row, times: most[1] },
      answered: column.filter(({ raw }) => raw !== undefined).length,
      waiting: waiting[at] ?? 0,
    };
  });
};
