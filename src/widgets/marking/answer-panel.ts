import type { Row, Tools } from '../../exercises/desk.ts';
import type { Tolerance } from '../../exercises/span.ts';
import { button, make } from '../parts/dom.ts';
import { answerParts, overrideForm, type Decision } from './answer.ts';

/** One answer at a time, under the class: the question, the answer, the key, and the form to decide by hand. */
export interface AnswerPanel {
  readonly element: HTMLElement;
  /** @param focus takes the reader there; without it they stay where they are */
  readonly show: (
    alias: string,
    at: number,
    row: Row,
    tolerance: Tolerance | undefined,
    focus: boolean,
  ) => void;
  /** Back to the button that decides, after it has been pressed. */
  readonly focusDecision: () => void;
}

export type Going = 'previous' | 'next' | 'waiting' | 'back';

export const answerPanel = (
  tools: Tools,
  decide: (decision: Decision) => void,
  go: (where: Going) => void,
): AnswerPanel => {
  const element = make('section', '', {
    class: 'desk-answer',
    tabindex: '-1',
    'aria-label': 'One answer',
  }) as HTMLElement;
  const bar = make('div', '', { class: 'plate-tools', hidden: '' });
  const ways: readonly (readonly [Going, string])[] = [
    ['previous', 'Previous student'],
    ['next', 'Next student'],
    ['waiting', 'Next to judge'],
    ['back', 'Back to the table'],
  ];
  for (const [where, text] of ways) {
    const press = button(text, {});
    press.addEventListener('click', () => go(where));
    bar.append(press);
  }
  const body = make('div', '');
  body.append(
    make(
      'p',
      'Press a mark above to see the question, the answer and the key, and to decide by hand.',
      { class: 'more' },
    ),
  );
  element.append(bar, body);
  element.addEventListener('keydown', ({ key }) => {
    if (key === 'Escape') go('back');
  });
  return {
    element,
    show: (alias, at, row, tolerance, focus) => {
      bar.removeAttribute('hidden');
      const columns = make('div', '', { class: 'desk-columns' });
      columns.append(
        answerParts(row, at + 1, tools, tolerance, []),
        overrideForm(row, tools, decide),
      );
      body.replaceChildren(make('h3', `${alias}, question ${at + 1}`), columns);
      if (!focus) return;
      element.focus({ preventScroll: true });
      element.scrollIntoView({ block: 'nearest' });
    },
    focusDecision: () =>
      element.querySelector<HTMLElement>('[type=submit]')?.focus({ preventScroll: true }),
  };
};
