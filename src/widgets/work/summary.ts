import type { Assignment } from '../../exercises/assignment.ts';
import { isBlank } from '../../exercises/blank.ts';
import type { Work } from '../../exercises/result-file.ts';
import { make, setText } from '../parts/dom.ts';
import type { Entry } from '../question/bank.ts';
import type { Place } from './sheet.ts';

/** “1 question”, “2 questions”. */
export const count = (n: number, what: string): string => `${n} ${what}${n === 1 ? '' : 's'}`;

/** The hour of a time stamp as the reader’s clock shows it; with the day where it is another. */
export const hour = (stamp: string): string => {
  const at = new Date(stamp);
  const today = at.toDateString() === new Date().toDateString();
  return new Intl.DateTimeFormat(undefined, {
    hour: '2-digit',
    minute: '2-digit',
    ...(today ? {} : { day: 'numeric', month: 'short' }),
  }).format(at);
};

/** What a student should know before the first question. */
export const termsOf = (
  { seeds, hints, items }: Assignment,
  bank: readonly Entry[],
): readonly string[] => {
  const all = items.reduce((sum, item) => sum + item.count, 0);
  const measured = items
    .filter((item) =>
      bank.some(({ template: { id, kind } }) => id === item.template && kind === 'practical'),
    )
    .reduce((sum, item) => sum + item.count, 0);
  return [
    `${count(all, 'question')}${measured > 0 ? `, ${measured === all ? 'all' : measured} of them with your own tape or meter` : ''}.`,
    seeds === 'alias'
      ? 'Each alias has its own numbers.'
      : 'The numbers are the same for everybody.',
    {
      free: 'Hints are free.',
      tenth: 'Each hint you take costs a tenth of its question’s mark.',
      none: 'There are no hints.',
    }[hints],
  ];
};

const inWords = ({ state, answer }: Place): string => {
  switch (state) {
    case 'answered':
      return typeof answer?.raw === 'string' ? answer.raw : 'answered';
    case 'begun':
      return typeof answer?.raw === 'string'
        ? `“${answer.raw.slice(0, 24)}” cannot be taken as it stands`
        : 'begun, not whole yet';
    case 'empty':
      return 'not answered';
    case 'missing':
      return 'cannot be shown here';
  }
};

/** The list of all questions, with what has come of each; the same lines as before are only set anew. */
export const summarise = (list: HTMLElement, places: readonly Place[]): void => {
  if (list.children.length !== places.length)
    list.replaceChildren(
      ...places.map(({ title, element }) => {
        const item = make('li', '');
        const link = make('a', title, { href: `#${element.id}` });
        link.addEventListener('click', (event) => {
          // The address stays the assignment’s.
          event.preventDefault();
          element.focus();
        });
        item.append(link, make('span', '', { class: 'work-state' }));
        return item;
      }),
    );
  places.forEach((place, at) => {
    const item = list.children[at];
    const hints = place.answer?.hints ?? 0;
    item?.setAttribute('data-state', place.state);
    setText(
      item?.querySelector('.work-state') ?? null,
      `${inWords(place)}${hints > 0 ? `, ${count(hints, 'hint')} taken` : ''}`,
    );
  });
};

/** Work that was begun here, to go on with or to take away. */
export const listBegun = (
  list: HTMLElement,
  works: readonly Work[],
  act: {
    /** Undefined where the work belongs to another link, which is then led to. */
    readonly goOn: ((work: Work) => void) | undefined;
    readonly takeAway: (work: Work) => void;
  },
): void => {
  const { goOn } = act;
  list.replaceChildren(
    ...works.map((work) => {
      const { assignment, alias, answers, saved, link } = work;
      const item = make('li', '');
      const tools = make('span', '', { class: 'plate-tools' });
      const press = (text: string, title: string, does: () => void, name = 'tool'): Element => {
        const one = make('button', text, { type: 'button', class: name, 'aria-label': title });
        one.addEventListener('click', does);
        return one;
      };
      const usual = (): void =>
        tools.replaceChildren(
          goOn
            ? press('Go on', `Go on as ${alias}`, () => goOn(work), 'tool tool-main')
            : make('a', 'Open', { href: `?${link}`, 'aria-label': `Open ${assignment.title}, begun as ${alias}` }), // prettier-ignore
          press('Take away', `Take away the work of ${alias}`, ask),
        );
      const ask = (): void => {
        tools.replaceChildren(
          make('span', 'These answers will be gone from this browser.'),
          press('Take them away', `Take them away, the answers of ${alias}`, () =>
            act.takeAway(work),
          ),
          press('Keep them', `Keep them, the answers of ${alias}`, usual),
        );
        tools.querySelector('button')?.focus();
      };
      usual();
      item.append(
        make('strong', goOn ? alias : assignment.title),
        make(
          'span',
          `${goOn ? '' : `as ${alias}, `}${count(answers.filter(({ raw }) => !isBlank(raw)).length, 'answer')}, ${hour(saved)}`,
          {
            class: 'work-state',
          },
        ),
        tools,
      );
      return item;
    }),
  );
};
