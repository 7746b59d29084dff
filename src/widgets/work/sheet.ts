import { questionsOf, type Question } from '../../exercises/assignment.ts';
import { BLANK, isBlank } from '../../exercises/blank.ts';
import type { Answer, Work } from '../../exercises/result-file.ts';
import { make } from '../parts/dom.ts';
import type { Entry } from '../question/bank.ts';
import { localMark, type System } from '../question/reader-style.ts';
import { load, showQuestion, type QuestionView } from '../question/view.ts';

/** How far one question has come: `begun` is an answer that is not whole, or cannot be read yet. */
export type State = 'answered' | 'begun' | 'empty' | 'missing';

/** One question in its place. */
export interface Place {
  readonly title: string;
  readonly element: HTMLElement;
  readonly state: State;
  /** The answer as the file has it; what cannot be shown here keeps the one it came with. */
  readonly answer: Answer | undefined;
}

/** The questions of one student’s copy, set out to be worked on. */
export interface WorkSheet {
  readonly places: () => readonly Place[];
  readonly answers: () => readonly Answer[];
  /** Reads what was typed since the last time; true where anything was. */
  readonly read: () => boolean;
  /** Takes from another state of the same work what was changed later than what stands here; true where anything was. */
  readonly adopt: (answers: readonly Answer[]) => boolean;
}

interface Setting {
  readonly system: System;
  /** Called on each change of an answer, and of the hints taken. */
  readonly changed: () => void;
  /** Called where something could not be fetched, and the reader wants it tried again. */
  readonly again: () => void;
}

interface Held {
  readonly question: Question;
  readonly title: string;
  readonly element: HTMLElement;
  readonly view: QuestionView | undefined;
  answer: Answer | undefined;
  state: State;
  /** Changed and not read yet; when. */
  moved: string | undefined;
}

/** A question that cannot be shown, with the reason. */
const absent = (number: number, title: string, why: string, again?: () => void): HTMLElement => {
  const element = make('section', '', { class: 'question-sheet' }) as HTMLElement;
  element.append(
    make('h3', `${number} ${title}`),
    make('p', `${why} What was answered here stays in your file.`, { class: 'field-error' }),
  );
  if (again) {
    const press = make('button', 'Try again', { type: 'button', class: 'tool' });
    press.addEventListener('click', again);
    element.append(press);
  }
  return element;
};

/** Puts the questions of a work on the page, with the answers it has. */
export const setOut = async (
  { assignment, alias, answers }: Work,
  bank: readonly Entry[],
  { system, changed, again }: Setting,
): Promise<WorkSheet> => {
  const all: Held[] = [];
  const style = { decimal: localMark(), system };

  const follow = (held: Held): void => {
    const { view, answer } = held;
    held.state = !view
      ? 'missing'
      : answer === undefined || isBlank(answer.raw)
        ? 'empty'
        : view.raw() === undefined
          ? 'begun'
          : 'answered';
  };
  const show = async (question: Question, number: number): Promise<Held> => {
    const found = bank.find(({ template }) => template.id === question.template)?.template;
    const held = {
      question,
      title: found?.title ?? question.template,
      answer: answers.find(
        (one) => one.template === question.template && one.seed === question.seed,
      ),
      state: 'missing' as State,
      moved: undefined,
    };
    if (found?.version !== question.version)
      return {
        ...held,
        view: undefined,
        element: absent(
          number,
          held.title,
          `This exercise was set from ${found ? 'an older version of it' : 'another edition of this site'}, and cannot be shown. Tell your instructor.`,
        ),
      };
    try {
      const view = await showQuestion(found, question.seed, await load(found), {
        id: `work-${number}`,
        hints: assignment.hints,
        feedback: false,
        style,
        changed: () => {
          const mine = all[number - 1];
          if (!mine) return;
          mine.moved = new Date().toISOString();
          changed();
        },
      });
      if (held.answer) view.put(held.answer.raw, held.answer.hints);
      view.element
        .querySelector('h2, h3')
        ?.prepend(make('span', `${number}`, { class: 'work-number' }), ' ');
      return { ...held, view, element: view.element };
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      return {
        ...held,
        view: undefined,
        element: absent(number, held.title, `It could not be fetched: ${why}.`, again),
      };
    }
  };

  for (const question of questionsOf(assignment, alias)) {
    const number = all.length + 1;
    const held = await show(question, number);
    held.element.id = `question-${number}`;
    held.element.tabIndex = -1;
    follow(held);
    all.push(held);
  }

  return {
    places: () => all,
    answers: () => all.flatMap(({ answer }) => answer ?? []),
    read: () => {
      const moved = all.filter((one) => one.moved !== undefined);
      for (const held of moved) {
        const { view, question, moved: at = '' } = held;
        if (!view) continue;
        // What was emptied is told from what was never touched, and hints count without an answer.
        const raw = view.kept() ?? BLANK[view.template.kind];
        held.answer = { ...question, raw, hints: view.hints(), at };
        held.moved = undefined;
        follow(held);
      }
      return moved.length > 0;
    },
    adopt: (theirs) => {
      let taken = false;
      for (const held of all) {
        const { view, question, answer, moved } = held;
        const other = theirs.find(
          (one) => one.template === question.template && one.seed === question.seed,
        );
        if (!other || other.at <= (moved ?? answer?.at ?? '')) continue;
        held.answer = other;
        view?.put(other.raw, other.hints);
        follow(held);
        taken = true;
      }
      return taken;
    },
  };
};
