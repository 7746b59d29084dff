import type { Question } from './assignment.ts';
import { marked, type Marked } from './marked.ts';
import type { Work } from './result-file.ts';
import type { Tolerance } from './span.ts';
import { commonest, itemRest, mean } from './statistics.ts';
import type { Template } from './template.ts';
import type { Formulas } from './variant.ts';

/** What the instructor decided by hand, with the reason. */
export interface Override {
  readonly credit: number;
  readonly note: string;
}

/** How the desk marks: kept apart from the files, which are never changed. */
export interface Ruling {
  /** By template id. */
  readonly tolerances: Readonly<Record<string, Tolerance>>;
  /** By alias and question: `overrideKey`. */
  readonly overrides: Readonly<Record<string, Override>>;
  /** What each hint takes off a question’s mark. */
  readonly hintCost: number;
}

export const overrideKey = (alias: string, { template, seed }: Question): string =>
  `${alias}/${template}/${seed}`;

/** One question of one student, as the desk has it. */
export interface Row {
  readonly question: Question;
  readonly raw: Work['answers'][number]['raw'] | undefined;
  readonly marked: Marked | undefined;
  readonly hints: number;
  /** From 0 to 1, hints and overrides counted; undefined where a person has yet to judge. */
  readonly credit: number | undefined;
  readonly override: Override | undefined;
}

/**
 * Marks one student’s work again from its raw answers; whatever marks the file may hold are not read.
 * @param templates by id; one that is not there, or has another version, is left for a person to judge
 */
export const markWork = (
  work: Work,
  questions: readonly Question[],
  templates: ReadonlyMap<string, Template>,
  formulas: Formulas,
  ruling: Ruling,
): readonly Row[] =>
  questions.map((question) => {
    const answer = work.answers.find(
      (one) => one.template === question.template && one.seed === question.seed,
    );
    const template = templates.get(question.template);
    const current = template?.version === question.version ? template : undefined;
    const result =
      answer && current
        ? marked(current, question.seed, answer.raw, formulas, {
            tolerance: ruling.tolerances[question.template],
            stored: true,
          })
        : undefined;
    const override = ruling.overrides[overrideKey(work.alias, question)];
    const hints = answer?.hints ?? 0;
    const own =
      answer === undefined
        ? 0
        : result?.credit === undefined
          ? undefined
          : Math.max(0, result.credit - hints * ruling.hintCost);
    return {
      question,
      raw: answer?.raw,
      marked: result,
      hints,
      credit: override?.credit ?? own,
      override,
    };
  });

/** One item over the whole class. */
export interface ItemStatistics {
  readonly template: string;
  /** The mean mark, from 0 (nobody) to 1 (everybody). */
  readonly easiness: number | undefined;
  /** With the rest of the work, once ten students are there. */
  readonly itemRest: number | undefined;
  readonly commonestTurn: { readonly turn: number; readonly times: number } | undefined;
  readonly answered: number;
}

/** Fewer students than this, and a correlation says nothing. */
export const ENOUGH = 10;

/** Statistics for each place of the assignment; students answer the same template there, if not the same numbers. */
export const itemsOf = (class_: readonly (readonly Row[])[]): readonly ItemStatistics[] => {
  const [first = []] = class_;
  const credits = class_.map((rows) => rows.map(({ credit }) => credit ?? 0));
  return first.map(({ question }, at) => {
    const column = class_.flatMap((rows) => rows[at] ?? []);
    const judged = column.flatMap(({ credit }) => credit ?? []);
    const turns = column.flatMap((row) => row.marked?.turn ?? []);
    const most = commonest(turns);
    return {
      template: question.template,
      easiness: mean(judged),
      itemRest: class_.length >= ENOUGH ? itemRest(credits, at) : undefined,
      commonestTurn: most && { turn: most[0], times: most[1] },
      answered: column.filter(({ raw }) => raw !== undefined).length,
    };
  });
};
