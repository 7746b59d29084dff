import { totalOf, type Student } from '../../exercises/class-csv.ts';
import { ofHundred } from '../../exercises/copies/told.ts';
import type { Row } from '../../exercises/desk.ts';
import { make, setText } from '../parts/dom.ts';
import { inSlices } from '../parts/slices.ts';

/** The class on the page: built once for a pile, and from then on changed cell by cell. */
export interface ClassTable {
  readonly element: HTMLElement;
  /** Fills it in slices. */
  readonly fill: (heard: (done: number) => void) => Promise<void>;
  /** Writes one student’s marks again; what is as it was stays untouched. */
  readonly paint: (student: number) => void;
  /** Shows which answer is open, or none. */
  readonly open: (student: number, at: number) => void;
  readonly focus: (student: number, at: number) => void;
}

/** Lines that are laid out together: those out of sight are not laid out at all. */
const TOGETHER = 20;

/** How to read the table, for before it. */
export const LEGEND =
  'A student a line, a question a column; marks of 100. Press a mark to see the answer; arrow keys go from mark to mark. A ? waits for you, – was not answered, * was set by you.';

/** What a mark’s cell says, to the eye and to the ear. */
const cellOf = ({
  raw,
  credit,
  override,
}: Row): readonly [shown: string, kind: string, said: string] => {
  const by = override ? '*' : '';
  if (credit === undefined) return ['?', 'waits', 'to judge'];
  if (raw === undefined && !override) return ['–', 'none', 'not answered'];
  const mark = ofHundred(credit);
  const kind = credit >= 1 ? 'full' : credit > 0 ? 'part' : 'nought';
  return [`${mark}${by}`, kind, override ? `${mark}, set by you` : mark];
};

export const totalText = (rows: readonly Row[]): string => {
  const { total, waiting } = totalOf(rows);
  return `${total.toFixed(1)} of ${rows.length}${waiting > 0 ? `, ${waiting} to judge` : ''}`;
};

/** @param students read anew whenever a line is painted */
export const classTable = (
  students: () => readonly Student[],
  titles: readonly string[],
  pressed: (student: number, at: number) => void,
): ClassTable => {
  const element = make('div', '', {
    class: 'desk-class',
    tabindex: '0',
    role: 'region',
    'aria-label': 'The class',
  }) as HTMLElement;
  const table = make('table', '', { role: 'table' }) as HTMLElement;
  table.style.setProperty('--questions', String(titles.length));
  const head = make('tr', '', { role: 'row' });
  const heading = (text: string, more: Record<string, string> = {}): Element =>
    make('th', text, { scope: 'col', role: 'columnheader', ...more });
  head.append(
    heading('Alias'),
    heading('Total'),
    ...titles.map((title, at) => heading(String(at + 1), { title: `${at + 1} ${title}` })),
  );
  const top = make('thead', '', { role: 'rowgroup' });
  top.append(head);
  table.append(top);
  element.append(table);

  // One line made by hand, and all others copied from it: thousands of cells are made one by one no longer.
  const pattern = make('tr', '', { role: 'row' });
  const cell = make('td', '', { role: 'cell' });
  cell.append(make('button', '', { type: 'button', tabindex: '-1' }));
  const sum = make('td', '', { role: 'cell' });
  sum.append(make('span', ''), make('span', '', { class: 'visually-hidden' }));
  pattern.append(
    make('th', '', { scope: 'row', role: 'rowheader' }),
    sum,
    ...titles.map(() => cell.cloneNode(true)),
  );

  /** By student, then by question. */
  const buttons: HTMLButtonElement[][] = [];
  const totals: (readonly [seen: Element, heard: Element])[] = [];
  const shown: string[][] = [];
  const studentOf = new WeakMap<Element, number>();
  let here: readonly [student: number, at: number] = [0, 0];
  let opened: HTMLButtonElement | undefined;

  const paint = (student: number): void => {
    const one = students()[student];
    const line = buttons[student];
    if (!one || !line) return;
    const texts = (shown[student] ??= []);
    one.rows.forEach((row, at) => {
      const button = line[at];
      const [text, kind, said] = cellOf(row);
      if (!button || texts[at] === `${kind}${text}`) return;
      texts[at] = `${kind}${text}`;
      button.textContent = text;
      button.dataset['mark'] = kind;
      button.setAttribute('aria-label', `${one.work.alias}, question ${at + 1}: ${said}`);
    });
    const [sum = '', ...rest] = totalText(one.rows).split(',');
    const [seen, heard] = totals[student] ?? [];
    setText(seen ?? null, sum);
    // To the eye its signs say what waits.
    setText(heard ?? null, rest.length > 0 ? `,${rest.join(',')}` : '');
  };

  const lineOf = (alias: string, student: number): Element => {
    const line = pattern.cloneNode(true) as Element;
    studentOf.set(line, student);
    const [name, total, ...cells] = line.children;
    if (name) name.textContent = alias;
    if (total?.firstElementChild && total.lastElementChild)
      totals[student] = [total.firstElementChild, total.lastElementChild];
    buttons[student] = cells.map((one) => one.firstElementChild as HTMLButtonElement);
    paint(student);
    return line;
  };

  const reach = (student: number, at: number, focus: boolean): void => {
    const next = buttons[student]?.[at];
    if (!next) return;
    // One stop for the tab key, wherever the reader is.
    buttons[here[0]]?.[here[1]]?.setAttribute('tabindex', '-1');
    next.setAttribute('tabindex', '0');
    here = [student, at];
    if (focus) next.focus();
  };

  const placeOf = (target: EventTarget | null): readonly [number, number] | undefined => {
    const button = target instanceof Element ? target.closest('button') : null;
    if (!button) return undefined;
    const line = button.closest('tr');
    const student = (line && studentOf.get(line)) ?? -1;
    const at = buttons[student]?.indexOf(button) ?? -1;
    return at < 0 ? undefined : [student, at];
  };

  table.addEventListener('click', ({ target }) => {
    const place = placeOf(target);
    if (!place) return;
    reach(...place, false);
    pressed(...place);
  });
  table.addEventListener('keydown', (event) => {
    const place = placeOf(event.target);
    if (!place || event.altKey || event.metaKey) return;
    const [student, at] = place;
    const [bottom, end] = [buttons.length - 1, titles.length - 1];
    const moves: Readonly<Record<string, readonly [number, number]>> = {
      ArrowLeft: [student, at - 1],
      ArrowRight: [student, at + 1],
      ArrowUp: [student - 1, at],
      ArrowDown: [student + 1, at],
      Home: [event.ctrlKey ? 0 : student, 0],
      End: [event.ctrlKey ? bottom : student, end],
      PageUp: [Math.max(0, student - 10), at],
      PageDown: [Math.min(bottom, student + 10), at],
    };
    const to = moves[event.key];
    if (!to) return;
    event.preventDefault();
    reach(...to, true);
  });

  return {
    element,
    fill: async (heard) => {
      const all = students();
      let body: HTMLElement | undefined;
      await inSlices(
        all,
        ({ work: { alias } }, student) => {
          if (student % TOGETHER === 0) {
            body = make('tbody', '', { role: 'rowgroup' }) as HTMLElement;
            body.style.setProperty('--lines', String(Math.min(TOGETHER, all.length - student)));
          }
          body?.append(lineOf(alias, student));
          // Set in its place once it is whole, so that it is laid out once.
          if (body && (student % TOGETHER === TOGETHER - 1 || student === all.length - 1))
            table.append(body);
        },
        (done) => {
          heard(done);
          return true;
        },
      );
      reach(0, 0, false);
    },
    paint,
    open: (student, at) => {
      opened?.removeAttribute('aria-pressed');
      opened = buttons[student]?.[at];
      opened?.setAttribute('aria-pressed', 'true');
      if (opened) reach(student, at, false);
    },
    focus: (student, at) => reach(student, at, true),
  };
};
