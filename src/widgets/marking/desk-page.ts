import { questionsOf, type Assignment } from '../../exercises/assignment.ts';
import { classRows, itemRows, totalOf, type Student } from '../../exercises/class-csv.ts';
import {
  ENOUGH,
  itemsOf,
  markWork,
  type ItemStatistics,
  type Override,
} from '../../exercises/desk.ts';
import { addFile, assignmentsIn, EMPTY, type Pile } from '../../exercises/pile.ts';
import type { Tolerance } from '../../exercises/span.ts';
import { csv, MARK, type CsvForm } from '../../tabulate/csv.ts';
import { make, one, setText } from '../parts/dom.ts';
import { inSlices } from '../parts/slices.ts';
import { fetchBank, type Entry } from '../question/bank.ts';
import { download } from '../work/download.ts';
import { answerParts, overrideForm, percent } from './answer.ts';
import { toolsFor, type Tools } from './load.ts';
import { readTolerance } from './tolerance.ts';

/** The marking desk: many files in, every mark worked out again, the class and its questions counted. */

/** Past this many milliseconds a wait is told of. */
const PATIENCE = 100;

const root = one(document, '[data-desk]');
if (root) begin(root);

function begin(root: HTMLElement): void {
  const sheet = one(root, '[data-desk-sheet]') as HTMLElement;
  const refused = one(root, '[data-desk-refused]') as HTMLElement;
  const drop = one(root, '[data-desk-drop]') as HTMLElement;
  const picker = one(root, '[data-desk-files]') as HTMLInputElement;
  one(root, '.desk-needs-script')?.remove();
  const say = (text: string): void => setText(one(root, '[data-desk-said]'), text);

  let pile: Pile = EMPTY;
  let link = '';
  let overrides: Record<string, Override> = {};
  let tolerances: Record<string, Tolerance> = {};
  /** What was typed for a tolerance stays as it was typed. */
  let typed: Record<string, string> = {};
  let open: { alias: string; at: number } | undefined;
  let run = 0;

  const telling = (what: string, of: number) => {
    const start = performance.now();
    return (done: number): void => {
      if (performance.now() - start > PATIENCE && done < of) say(`${what} ${done} of ${of} …`);
    };
  };

  const take = async (files: readonly File[]): Promise<void> => {
    const mine = ++run;
    const texts: { name: string; text: string }[] = [];
    const reading = telling('Reading', files.length);
    for (const file of files) {
      // A huge file is refused by its size alone, and never read.
      texts.push({
        name: file.name,
        text: file.size > 4_000_000 ? ' '.repeat(600_000) : await file.text(),
      });
      reading(texts.length);
    }
    const checking = telling('Checking', texts.length);
    let next = pile;
    const done = await inSlices(
      texts,
      ({ name, text }) => {
        next = addFile(next, name, text);
      },
      (count) => {
        checking(count);
        return mine === run;
      },
    );
    if (!done) return;
    pile = next;
    await mark();
  };

  const mark = async (): Promise<void> => {
    const mine = ++run;
    setRefused();
    const all = assignmentsIn(pile);
    const chosen = all.find((one) => one.link === link) ?? all[0];
    if (!chosen) {
      sheet.hidden = true;
      say(pile.refused.length > 0 ? 'None of these files could be taken.' : '');
      return;
    }
    link = chosen.link;
    let bank: readonly Entry[];
    try {
      bank = await fetchBank();
    } catch (error) {
      say(error instanceof Error ? error.message : String(error));
      return;
    }
    const tools = await toolsFor(chosen.assignment, bank);
    const works = pile.taken.filter(({ work }) => work.link === link);
    const marking = telling('Marking', works.length);
    const ruling = {
      tolerances,
      overrides,
      hintCost: chosen.assignment.hints === 'tenth' ? 0.1 : 0,
    };
    const students = await inSlices(
      works,
      ({ work }): Student => ({
        work,
        rows: markWork(
          work,
          questionsOf(chosen.assignment, work.alias),
          tools.templates,
          tools.formulas,
          ruling,
        ),
      }),
      (count) => {
        marking(count);
        return mine === run;
      },
    );
    if (!students) return;
    const sorted = students.toSorted((a, b) => a.work.alias.localeCompare(b.work.alias));
    show(chosen.assignment, sorted, itemsOf(sorted.map(({ rows }) => rows)), tools, all.length > 1);
    const broken = works.filter(({ whole }) => whole === false).map(({ name }) => name);
    say(
      [
        `${sorted.length} ${sorted.length === 1 ? 'file' : 'files'} marked.`,
        broken.length > 0 &&
          `The sum does not fit in ${broken.slice(0, 5).join(', ')}: changed, or hurt on the way.`,
      ]
        .filter(Boolean)
        .join(' '),
    );
  };

  const setRefused = (): void => {
    if (pile.refused.length === 0) {
      refused.replaceChildren();
      return;
    }
    const list = make('ul', '');
    for (const { name, why } of pile.refused.slice(-50)) list.append(make('li', `${name}: ${why}`));
    refused.replaceChildren(make('p', `${pile.refused.length} not taken:`), list);
  };

  const decide = (key: string, override: Override | undefined): void => {
    overrides = Object.fromEntries(Object.entries(overrides).filter(([one]) => one !== key));
    if (override) overrides[key] = override;
    void mark();
  };

  const show = (
    assignment: Assignment,
    students: readonly Student[],
    items: readonly ItemStatistics[],
    tools: Tools,
    several: boolean,
  ): void => {
    const parts: Element[] = [make('h2', assignment.title, { id: 'class' })];
    if (several) {
      const label = make('label', 'Assignment ', { class: 'field-name' });
      const select = make('select', '', { class: 'field-value' }) as HTMLSelectElement;
      for (const one of assignmentsIn(pile))
        select.append(
          make('option', `${one.assignment.title} (${one.files})`, { value: one.link }),
        );
      select.value = link;
      select.addEventListener('change', () => {
        link = select.value;
        open = undefined;
        void mark();
      });
      label.append(select);
      parts.push(label);
    }
    parts.push(
      classTable(students),
      openAnswer(students, tools),
      itemTable(items, tools),
      exportTools(assignment, students, items, tools),
    );
    const copies = make('div', '', { class: 'desk-copies' });
    parts.push(copies);
    sheet.replaceChildren(...parts);
    sheet.hidden = false;
  };

  const classTable = (students: readonly Student[]): Element => {
    const frame = make('div', '', {
      class: 'desk-table',
      tabindex: '0',
      role: 'region',
      'aria-label': 'The class',
    });
    const table = make('table', '');
    table.append(
      make(
        'caption',
        'A student a line, a question a column; marks of 100. Press a mark to see the answer.',
      ),
    );
    const head = make('tr', '');
    head.append(make('th', 'Alias', { scope: 'col' }), make('th', 'Total', { scope: 'col' }));
    students[0]?.rows.forEach((_row, at) =>
      head.append(make('th', String(at + 1), { scope: 'col' })),
    );
    const top = make('thead', '');
    top.append(head);
    const body = make('tbody', '');
    for (const { work, rows } of students) {
      const { total, waiting } = totalOf(rows);
      const line = make('tr', '');
      line.append(make('th', work.alias, { scope: 'row' }));
      line.append(
        make(
          'td',
          `${total.toFixed(1)} of ${rows.length}${waiting > 0 ? `, ${waiting} to judge` : ''}`,
        ),
      );
      rows.forEach(({ credit, override }, at) => {
        const cell = make('td', '');
        const is = open?.alias === work.alias && open.at === at;
        const press = make('button', `${percent(credit)}${override ? '*' : ''}`, {
          type: 'button',
          'aria-pressed': String(is),
          'aria-label': `${work.alias}, question ${at + 1}: ${credit === undefined ? 'to judge' : percent(credit)}`,
        });
        press.addEventListener('click', () => {
          open = { alias: work.alias, at };
          void mark().then(() => one(sheet, '.desk-answer')?.focus());
        });
        cell.append(press);
        line.append(cell);
      });
      body.append(line);
    }
    table.append(top, body);
    frame.append(table);
    return frame;
  };

  const openAnswer = (students: readonly Student[], tools: Tools): Element => {
    const part = make('section', '', {
      class: 'desk-answer',
      tabindex: '-1',
      'aria-label': 'One answer',
    });
    const student = students.find(({ work }) => work.alias === open?.alias);
    const row = student?.rows[open?.at ?? -1];
    if (!student || !row) {
      part.append(
        make(
          'p',
          'Press a mark above to see the question, the answer and the key, and to decide by hand.',
        ),
      );
      return part;
    }
    part.append(
      make('h3', `${student.work.alias}, question ${(open?.at ?? 0) + 1}`),
      ...answerParts(row, tools),
      overrideForm(row, student.work.alias, tools, decide),
    );
    return part;
  };

  const itemTable = (items: readonly ItemStatistics[], tools: Tools): Element => {
    const frame = make('div', '', {
      class: 'desk-table',
      tabindex: '0',
      role: 'region',
      'aria-label': 'The questions',
    });
    const table = make('table', '');
    table.append(
      make(
        'caption',
        `The questions. The correlation of each with the rest of the work stands here from ${ENOUGH} files on. Another tolerance, such as 5 % or 1/3 stop, marks all again.`,
      ),
    );
    const head = make('tr', '');
    for (const name of [
      'Question',
      'Answered',
      'Mean mark',
      'With the rest',
      'Commonest wrong turn',
      'Tolerance',
    ])
      head.append(make('th', name, { scope: 'col' }));
    const top = make('thead', '');
    top.append(head);
    const body = make('tbody', '');
    items.forEach((item, at) => {
      const template = tools.templates.get(item.template);
      const line = make('tr', '');
      line.append(make('th', `${at + 1} ${template?.title ?? item.template}`, { scope: 'row' }));
      line.append(
        make('td', String(item.answered)),
        make('td', percent(item.easiness)),
        make('td', item.itemRest === undefined ? '–' : item.itemRest.toFixed(2)),
      );
      const turn =
        item.commonestTurn && template ? turnText(template, item.commonestTurn.turn) : undefined;
      line.append(
        make('td', turn === undefined ? '–' : `${turn} (${item.commonestTurn?.times ?? 0})`),
      );
      const cell = make('td', '');
      if (template && 'ask' in template) {
        const input = make('input', '', {
          class: 'field-value',
          type: 'text',
          'aria-label': `Tolerance of question ${at + 1}`,
          placeholder: 'as set',
          autocomplete: 'off',
        }) as HTMLInputElement;
        input.value = typed[item.template] ?? '';
        const note = make('span', '', { class: 'field-error' });
        input.addEventListener('change', () => {
          typed = { ...typed, [item.template]: input.value };
          const read = readTolerance(input.value, template, tools.formulas);
          if (typeof read === 'string') {
            setText(note, read);
            return;
          }
          tolerances = Object.fromEntries(
            Object.entries(tolerances).filter(([id]) => id !== item.template),
          );
          if (read) tolerances[item.template] = read;
          void mark();
        });
        cell.append(input, note);
      }
      line.append(cell);
      body.append(line);
    });
    table.append(top, body);
    frame.append(table);
    return frame;
  };

  const exportTools = (
    assignment: Assignment,
    students: readonly Student[],
    items: readonly ItemStatistics[],
    tools: Tools,
  ): Element => {
    const bar = make('div', '', { class: 'plate-tools' });
    const add = (text: string, act: () => void): void => {
      const press = make('button', text, { type: 'button', class: 'tool' });
      press.addEventListener('click', act);
      bar.append(press);
    };
    const file = (
      name: string,
      rows: readonly (readonly (string | number)[])[],
      form: CsvForm,
    ): void => download(name, MARK + csv(rows, form), 'text/csv');
    const comma: CsvForm = { separator: ',', decimal: 'point' };
    const semicolon: CsvForm = { separator: ';', decimal: 'comma' };
    add('Marks as CSV', () => file('marks.csv', classRows(assignment, students), comma));
    add('with semicolons', () =>
      file('marks-semicolon.csv', classRows(assignment, students), semicolon),
    );
    add('Questions as CSV', () => file('questions.csv', itemRows(items), comma));
    add('Print a marked copy for each', () => {
      const copies = one(sheet, '.desk-copies');
      copies?.replaceChildren(
        ...students.map(({ work, rows }) => {
          const copy = make('section', '', { class: 'desk-copy' });
          const { total, waiting } = totalOf(rows);
          copy.append(
            make('h2', `${assignment.title}: ${work.alias}`),
            make(
              'p',
              `${total.toFixed(1)} of ${rows.length}${waiting > 0 ? `, ${waiting} still to judge` : ''}.`,
            ),
          );
          rows.forEach((row) => copy.append(...answerParts(row, tools)));
          return copy;
        }),
      );
      print();
      copies?.replaceChildren();
    });
    return bar;
  };

  picker.addEventListener('change', () => {
    void take([...(picker.files ?? [])]).finally(() => {
      picker.value = '';
    });
  });
  for (const kind of ['dragover', 'dragleave', 'drop'])
    drop.addEventListener(kind, (event) => {
      event.preventDefault();
      drop.toggleAttribute('data-over', kind === 'dragover');
      if (event instanceof DragEvent && kind === 'drop')
        void take([...(event.dataTransfer?.files ?? [])]);
    });
}

const turnText = (
  template: NonNullable<ReturnType<Tools['templates']['get']>>,
  turn: number,
): string | undefined =>
  'turns' in template
    ? template.turns[turn]?.say
    : 'options' in template
      ? template.options[turn]?.feedback
      : undefined;
