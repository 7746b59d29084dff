import type { Assignment } from '../../exercises/assignment.ts';
import { button, make, one, setText } from '../parts/dom.ts';
import { inSlices } from '../parts/slices.ts';
import { fetchBank } from '../question/bank.ts';
import { localMark } from '../question/reader-style.ts';
import { download } from '../parts/download.ts';
import { answerPanel, type AnswerPanel, type Going } from './answer-panel.ts';
import { classTable, LEGEND, type ClassTable } from './class-table.ts';
import { DeskState, type OnDesk, type Place } from './desk-state.ts';
import { readFiles, whenDropped } from './intake.ts';
import { itemTable, READING, type ItemTable } from './item-table.ts';
import { toolsFor, type Tools } from './load.ts';
import type * as TakeAwayModule from './take-away.ts';
import type { Class } from './take-away.ts';

/** The marking desk: many files in, every mark worked out again, the class and its questions counted. */

/** Past this many milliseconds a wait is told of, and told of again. */
const PATIENCE = 100;
/** Refusals that are shown; the rest is counted. */
const MOST_SHOWN = 50;

/** Fetched once something is taken away. */
type TakeAway = typeof TakeAwayModule;

/** What stands on the page of one assignment. */
interface Parts {
  readonly table: ClassTable;
  readonly items: ItemTable;
  readonly panel: AnswerPanel;
}

const root = one(document, '[data-desk]');
if (root) begin(root);

function begin(root: HTMLElement): void {
  const sheet = one(root, '[data-desk-sheet]') as HTMLElement;
  const refused = one(root, '[data-desk-refused]') as HTMLElement;
  const picker = one(root, '[data-desk-files]') as HTMLInputElement;
  const said = one(root, '[data-desk-said]');
  const say = (text: string): void => setText(said, text);

  const state = new DeskState();
  let parts: Parts | undefined;
  /** The assignment that was asked for. */
  let link = '';
  let open: Place | undefined;

  // One thing after the other: files that come while others are read are not lost, and no class is half marked.
  let last: Promise<void> = Promise.resolve();
  const next = (job: () => void | Promise<void>): Promise<void> =>
    (last = last.then(job).catch((error: unknown) => {
      say(error instanceof Error ? error.message : String(error));
    }));
  const telling = (what: string, of: number) => {
    let since = performance.now();
    return (done: number): void => {
      if (performance.now() - since < PATIENCE || done >= of) return;
      since = performance.now();
      say(`${what} ${done} of ${of} …`);
    };
  };
  const files = (count: number): string => `${count} ${count === 1 ? 'file' : 'files'}`;

  // The exercises are on their way while the reader looks for the files; what fails is tried again with them.
  fetchBank().catch(() => undefined);

  const toolsOf = async (assignment: Assignment): Promise<Tools> =>
    toolsFor(assignment, await fetchBank());

  const take = async (chosen: readonly File[]): Promise<void> => {
    if (chosen.length === 0) return;
    const reading = telling('Reading', chosen.length);
    const notes: string[] = [];
    let fetching: Promise<unknown> | undefined;
    let done = 0;
    for await (const texts of readFiles(chosen, state.pile))
      await inSlices(
        texts,
        ({ name, text }) => {
          const note = state.take(name, text);
          if (note !== undefined) notes.push(note);
          // On their way while the other files are read.
          fetching ??= state.pile.first && toolsOf(state.pile.first).catch(() => undefined);
          done += 1;
        },
        () => {
          reading(done);
          return true;
        },
      );
    await mark(notes);
  };

  const showRefused = (): void => {
    const { refused: out } = state.pile;
    if (out.length === 0) return;
    const list = make('ul', '');
    for (const { name, why } of out.slice(-MOST_SHOWN)) list.append(make('li', `${name}: ${why}`));
    const more = out.length > MOST_SHOWN ? `; these are the last ${MOST_SHOWN}` : '';
    refused.replaceChildren(make('p', `${out.length} not taken${more}:`), list);
  };

  /** Marks what lies on the desk of one assignment and sets it out. */
  const mark = async (notes: readonly string[] = []): Promise<void> => {
    showRefused();
    const lying = state.pile.assignments();
    const chosen = lying.find((one) => one.link === link) ?? lying[0];
    if (!chosen) {
      const none = state.pile.refused.length > 0 ? ['None of these files could be taken.'] : [];
      say([...notes, ...none].join(' '));
      return;
    }
    link = chosen.link;
    const tools = { ...(await toolsOf(chosen.assignment)), style: { decimal: localMark() } };
    const before = state.now;
    const alias = open && before?.students[open[0]]?.work.alias;
    const now = await state.mark(chosen, tools, telling('Marking', chosen.files));
    await setOut(now, before?.link === now.link);
    const again = now.students.findIndex(({ work }) => work.alias === alias);
    if (open && before?.link === now.link && again >= 0) show([again, open[1]], false);
    else open = undefined;
    say([...notes, `${files(now.students.length)} marked.`].join(' '));
  };

  /** Everything that changes with a mark, apart from the marks themselves. */
  const count = (): void => {
    parts?.items.paint(state.items());
    setText(one(sheet, '.desk-summary'), state.summary());
    const { marks, tolerances } = state.ruled;
    const n = (many: number, word: string): string => `${many} ${word}${many === 1 ? '' : 's'}`;
    setText(
      one(sheet, '.desk-rulings'),
      marks + tolerances === 0 && !state.unsaved
        ? 'You have set no mark and no tolerance.'
        : `You have set ${n(marks, 'mark')} and ${n(tolerances, 'tolerance')}${state.unsaved ? ', not saved yet' : ''}. They are in no student’s file: save them, and drop that file here with the others to have them again.`,
    );
    // Only then: a page that always asks is soon not read.
    if (state.unsaved) addEventListener('beforeunload', hold);
    else removeEventListener('beforeunload', hold);
  };
  const hold = (event: BeforeUnloadEvent): void => event.preventDefault();

  const show = (place: Place, focus: boolean): void => {
    const row = state.row(place);
    const alias = state.now?.students[place[0]]?.work.alias;
    if (!parts || !row || alias === undefined) return;
    open = place;
    parts.table.open(...place);
    const width = state.now?.tolerances.get(row.question.template);
    parts.panel.show(alias, place[1], row, width, focus);
  };

  const go = (where: Going): void => {
    if (!open || !parts) return;
    const [student, at] = open;
    if (where === 'back') {
      parts.table.focus(...open);
      return;
    }
    const to: Place | undefined =
      where === 'waiting' ? state.waiting(open) : [student + (where === 'next' ? 1 : -1), at];
    if (to && state.row(to)) show(to, false);
    else say(where === 'waiting' ? 'Nothing waits for you.' : 'There is no further student.');
  };

  const widen = async (template: string, typed: string): Promise<void> => {
    const text = typed.replaceAll(/\p{Cc}/gu, ' ').trim();
    const { length } = state.now?.students ?? [];
    const now = new Date().toISOString();
    const wrong = await state.widen(template, text, now, telling('Marking', length));
    parts?.items.put(template, typed, wrong ?? '');
    if (wrong !== undefined) return;
    await paintAll();
    count();
    if (open && state.row(open)?.question.template === template) show(open, false);
    say(`${files(length)} marked again.`);
  };
  const paintAll = async (): Promise<void> => {
    await inSlices(
      state.now?.students ?? [],
      (_student, at) => parts?.table.paint(at),
      () => true,
    );
  };

  const setOut = async ({ link: now, students, tools, assignment }: OnDesk, same: boolean) => {
    const templates = (students[0]?.rows ?? []).map(({ question }) => question.template);
    const table = classTable(
      () => state.now?.students ?? [],
      templates.map((id) => tools.templates.get(id)?.title ?? id),
      (...place) => show(place, true),
    );
    const items = itemTable(
      templates,
      tools,
      (template, text) => void next(() => widen(template, text)),
    );
    const panel = answerPanel(
      tools,
      (decision) =>
        void next(() => {
          if (!open) return;
          state.decide(open, decision, new Date().toISOString());
          parts?.table.paint(open[0]);
          count();
          show(open, false);
          parts?.panel.focusDecision();
          say(`${decision ? 'Set' : 'Taken back'}.`);
        }),
      go,
    );
    await table.fill(telling('Setting out', students.length));
    for (const [id, { text }] of state.rulings.tolerances)
      items.put(id, text, state.wrong().get(id) ?? '');

    const scrolled = one(sheet, '.desk-class');
    const [top, left] = same && scrolled ? [scrolled.scrollTop, scrolled.scrollLeft] : [0, 0];
    const lying = state.pile.assignments();
    const hurt = state.pile.taken.filter(({ work, whole }) => work.link === now && whole === false);
    const names = hurt.slice(0, 5).map(({ name }) => name);
    parts = { table, items, panel };
    sheet.replaceChildren(
      make('h2', assignment.title, { id: 'class' }),
      ...(lying.length > 1 ? [choiceOf(lying, now)] : []),
      make('p', '', { class: 'desk-summary' }),
      ...(hurt.length > 0
        ? [
            make(
              'p',
              `The sum does not fit in ${names.join(', ')}${hurt.length > 5 ? ` and ${hurt.length - 5} more` : ''}: changed, or hurt on the way.`,
              { class: 'result-notice' },
            ),
          ]
        : []),
      make('p', LEGEND, { class: 'desk-legend' }),
      table.element,
      panel.element,
      make('h3', 'The questions', { id: 'questions' }),
      make('p', READING, { class: 'desk-legend' }),
      items.element,
      make('h3', 'Take away', { id: 'take-away' }),
      ...takeAway(),
      make('div', '', { class: 'desk-copies' }),
    );
    sheet.hidden = false;
    if (top + left > 0) table.element.scrollTo({ top, left, behavior: 'instant' });
    count();
  };

  const choiceOf = (lying: ReturnType<typeof state.pile.assignments>, now: string): Element => {
    const label = make('label', 'Assignment ', { class: 'desk-choice' });
    const select = make('select', '', { class: 'field-value' }) as HTMLSelectElement;
    for (const one of lying)
      select.append(make('option', `${one.assignment.title} (${files(one.files)})`, { value: one.link })); // prettier-ignore
    select.value = now;
    select.addEventListener('change', () => {
      void next(() => {
        link = select.value;
        return mark();
      });
    });
    label.append(select);
    return label;
  };

  const takeAway = (): Element[] => {
    const bar = (...tools: Element[]): Element => {
      const made = make('div', '', { class: 'plate-tools' });
      made.append(...tools);
      return made;
    };
    const tool = (
      text: string,
      act: (away: TakeAway, now: Class) => void | Promise<void>,
    ): Element => {
      const press = button(text, {});
      press.addEventListener(
        'click',
        () =>
          void next(async () => {
            if (!state.now) return;
            await act(await import('./take-away.ts'), { ...state.now, items: state.items() });
          }),
      );
      return press;
    };
    const writing = (): ((done: number) => void) =>
      telling('Writing', state.now?.students.length ?? 0);
    const save = button('Save my rulings', {});
    save.addEventListener('click', () => {
      download('rulings.json', state.save(new Date().toISOString()), 'application/json');
      count();
      say('Saved.');
    });
    return [
      bar(
        tool('Marks as CSV', (away, now) => away.saveMarks(now, 'comma')),
        tool('with semicolons', (away, now) => away.saveMarks(now, 'semicolon')),
        tool('Questions as CSV', (away, now) => away.saveQuestions(now, 'comma')),
        tool('questions with semicolons', (away, now) => away.saveQuestions(now, 'semicolon')),
      ),
      bar(
        tool('Save a marked copy for each', async (away, now) => {
          await away.saveCopies(now, writing());
          say(`A page for each of ${now.students.length}, in one zip.`);
        }),
        tool('Print a marked copy for each', async (away, now) => {
          const copies = one(sheet, '.desk-copies') as HTMLElement;
          await away.setOutCopies(now, copies, writing());
          say('');
          // Some browsers print at once, others come back before they have.
          addEventListener('afterprint', () => copies.replaceChildren(), { once: true });
          print();
        }),
      ),
      make('p', '', { class: 'desk-rulings' }),
      bar(save),
    ];
  };

  picker.addEventListener('change', () => {
    const chosen = [...(picker.files ?? [])];
    picker.value = '';
    void next(() => take(chosen));
  });
  whenDropped(
    one(root, '[data-desk-drop]') as HTMLElement,
    (dropped) => void next(() => take(dropped)),
  );
}
