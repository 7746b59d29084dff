import { formulas } from '../../formulas.ts';
import { writeNumber } from '../../formula/notation/write.ts';
import type { Formula } from '../../formula/record.ts';
import { queryOf } from '../../tabulate/table.ts';
import { all, make, one, setText } from '../parts/dom.ts';
import type { Part } from './axis.ts';
import { fixedFields, fixedSummary, sidesOf } from './form.ts';
import { bringGrid } from './grid.ts';
import { headOf } from './head.ts';
import { formulaOf } from './link.ts';
import { linesOf, type Line } from './lines.ts';
import { OwnState, type Request, type Side } from './own-state.ts';
import { inSlices } from './pace.ts';
import { paperOf } from './paper.ts';
import { plant } from './tree.ts';
import { notesOf, notesTree, titleOf } from './words.ts';

/** What the parts that are fetched when pressed are told. */
export interface Shown {
  readonly state: OwnState;
  readonly request: Request;
  readonly lines: readonly Line[];
  readonly title: string;
}

/** Milliseconds without a change before the address follows, and before a wait is spoken of. */
const QUIET = 500;
const PATIENCE = 100;
/** From here on columns have a fixed width, since measuring every cell for the widest would hold the page up. */
const MANY = 1500;
/** Cells in one body of a large table, about: what nobody looks at is not laid out, body by body. */
const BODY = 400;
const BASE = import.meta.env.BASE_URL.replace(/\/?$/, '/');

const plateOf = (formula: Formula, query: string): string =>
  `${BASE}plates/${formula.id}/?${query}`;

/** Where a cell's plate is. */
export const addressOf = (
  { spec, show }: Request,
  line: number,
  column: number,
): string | undefined => {
  const [down, across] = [spec.down[line], spec.across[Math.floor(column / show.length)]];
  return down && across && plateOf(spec.formula, queryOf(spec, down, across));
};

const rowOf = ({ heading, texts }: Line): HTMLTableRowElement => {
  const row = document.createElement('tr');
  row.append(make('th', heading, { scope: 'row' }));
  for (const text of texts) {
    const cell = document.createElement('td');
    cell.textContent = text;
    row.append(cell);
  }
  return row;
};

/** The widest of the texts in the corners and edges of a table, in characters. */
const widest = (request: Request, state: OwnState): readonly [number, number] => {
  const { spec } = request;
  const ends = <T>(of: readonly T[]): readonly T[] => [0, 0.25, 0.5, 0.75, 1].flatMap((part) => of[Math.round(part * (of.length - 1))] ?? []); // prettier-ignore
  const sample = [...linesOf({ ...request, spec: { ...spec, down: ends(spec.down), across: ends(spec.across) } }, state.style)].filter((line) => line !== undefined); // prettier-ignore
  const head = headOf(request, state.style).at(-1);
  const words = JSON.stringify(head).match(/"children":\["[^"]*"/g) ?? [];
  const most = (texts: readonly string[]): number => Math.max(...texts.map((text) => text.length));
  const heads = across(request) ? words.map((text) => text.length - 14) : [9];
  return [
    most(sample.map(({ heading }) => heading)),
    Math.max(most(sample.flatMap(({ texts }) => texts)), ...heads.slice(1)),
  ];
};
const across = ({ across: key }: Request): boolean => key !== undefined;

const wake = async (section: HTMLElement): Promise<void> => {
  const chooser = section.querySelector<HTMLSelectElement>('[data-formula]');
  const frame = one(section, '.grid-table');
  const sides = one(section, '[data-sides]');
  const fixed = one(section, '[data-fixed-fields]');
  if (!chooser || !frame || !sides || !fixed) return;
  const startOf = (id: string): string =>
    [...chooser.options].find(({ value }) => value === id)?.dataset['start'] ?? '';

  const load = async (id: string): Promise<Formula> => {
    const fetched = formulas[id];
    if (!fetched) throw new Error(`There is no formula ${id}.`);
    return (await fetched()).default;
  };

  const query = location.search;
  const first = chooser.dataset['formula'] ?? '';
  const asked = formulaOf(query);
  const known = asked !== undefined && Object.hasOwn(formulas, asked);
  let state = new OwnState(
    ...([await load(known ? asked : first), startOf(known ? asked : first), known ? query : ''] as const), // prettier-ignore
  );
  if (!known && query.length > 1)
    state.notice = `The link names no formula that is here; the table shows ${state.formula.title.toLowerCase()}.`; // prettier-ignore

  let shown: Request | undefined;
  let lines: readonly Line[] = [];
  const status = one(section, '[role=status]');
  const notice = one(section, '.result-notice');
  const say = (text: string): void => {
    setText(notice, text);
    if (notice) notice.hidden = text === '';
    if (text !== '') setText(status, text);
  };

  const progress = one(section, '.progress');
  const bar = section.querySelector('progress');
  const counted = one(section, '[data-counted]');
  const stop = one(section, '[data-do=cancel]');
  const number = (n: number): string => writeNumber(n, { decimals: 0 });

  const setNotes = (request: Request, refusals: ReadonlyMap<string, number>): void => {
    const list = one(section, '[data-notes]');
    if (!list) return;
    const why = [...refusals].slice(0, 3).map(([text, many]) => `${text} (${number(many)} ${many === 1 ? 'cell' : 'cells'})`); // prettier-ignore
    const notes = [
      ...(why.length > 0 ? [['Where a dash stands', why.join(' ')] as const] : []),
      ...notesOf(state, request),
    ];
    plant(list, notesTree(notes));
    for (const source of all(section, '[data-source]'))
      source.hidden = !state.formula.sources.includes(source.dataset['source'] ?? '');
    const sources = one(section, '[data-sources]');
    if (sources) sources.hidden = state.formula.sources.length === 0;
  };

  /** The lines of the table that was built before, which no script has worked out yet. */
  const linesNow = (request: Request): readonly Line[] =>
    [...linesOf(request, state.style)].filter((line) => line !== undefined);

  let turn = 0;
  /** What the table on the page, or the one under way, was asked for. */
  let standing = '';
  const work = async (request: Request): Promise<void> => {
    turn += 1;
    const mine = turn;
    const begun = performance.now();
    const cells = request.spec.down.length * request.spec.across.length * request.show.length;
    const many = cells > MANY;
    const table = document.createElement('table');
    table.setAttribute('aria-describedby', 'own-notes');
    plant(table, headOf(request, state.style));
    const columns = request.spec.across.length * request.show.length;
    const bodyLines = Math.max(1, Math.round(BODY / columns));
    if (many) {
      const [side, rest] = widest(request, state);
      table.className = 'many';
      // In ems, since a ch of the headings' bold is another than that of the cells.
      table.style.setProperty('--side', `${0.56 * side + 1.5}em`);
      table.style.setProperty('--cell', `${0.56 * rest + 1.5}em`);
      table.style.setProperty('--columns', String(columns));
    }
    const made: Line[] = [];
    const refusals = new Map<string, number>();
    let placed = false;
    const place = (): void => {
      if (placed) return;
      placed = true;
      frame.replaceChildren(table);
      frame.scrollTo({ left: 0, top: 0, behavior: 'instant' });
      frame.removeAttribute('data-stale');
      shown = request;
      lines = made;
      setNotes(request, refusals);
    };
    let done = 0;
    function* cellByCell(): Generator<boolean, void> {
      let body = document.createElement('tbody');
      const close = (): void => {
        // Until it is looked at, a body is as tall as its lines would be.
        if (many) body.style.setProperty('--lines', String(body.rows.length));
        table.append(body);
        body = document.createElement('tbody');
      };
      for (const line of linesOf(request, state.style)) {
        done += request.show.length;
        if (line) {
          body.append(rowOf(line));
          made.push(line);
          for (const why of line.refusals) refusals.set(why, (refusals.get(why) ?? 0) + 1);
        }
        const full = many && body.rows.length >= bodyLines;
        if (full) close();
        yield full && placed;
      }
      if (body.rows.length > 0) close();
    }
    const going = (): boolean => {
      if (mine !== turn) return false;
      if (performance.now() - begun > PATIENCE) {
        place();
        progress?.setAttribute('data-busy', '');
        if (bar) Object.assign(bar, { max: cells, value: done });
        setText(counted, `${number(done)} of ${number(cells)} cells`);
        setText(stop, 'Cancel');
      }
      return true;
    };
    const whole = await inSlices(cellByCell(), going);
    if (mine !== turn || !whole) return;
    place();
    progress?.removeAttribute('data-busy');
    setNotes(request, refusals);
    frame.dispatchEvent(new Event('own-table'));
    setText(status, `${titleOf(request)}: ${number(request.spec.down.length)} lines.`);
    section.dataset['whole'] = String(turn);
  };

  const cancel = (): void => {
    turn += 1;
    standing = '';
    setText(
      counted,
      `Stopped: ${(counted?.textContent ?? '').replace(' of ', ' of the ')} stand here`,
    );
    setText(stop, 'Work it out');
    setText(status, counted?.textContent ?? '');
    frame.dispatchEvent(new Event('own-table'));
  };

  const address = (): string => `${location.origin}${location.pathname}?${state.query()}`;
  let quiet: ReturnType<typeof setTimeout> | undefined;

  /** Sets the fields from the state, and the table, where another is asked for. */
  const render = (): void => {
    if (chooser.value !== state.formula.id) chooser.value = state.formula.id;
    plant(sides, sidesOf(state));
    plant(fixed, fixedFields(state));
    setText(one(section, '[data-fixed-summary]'), fixedSummary(state));
    for (const tool of all(section, '[data-do][aria-pressed]'))
      tool.setAttribute('aria-pressed', String(tool.dataset['do'] === state.style.system));
    const request = state.request();
    say([state.notice, state.trouble()].filter(Boolean).join(' '));
    frame.toggleAttribute('data-stale', request === undefined);
    const key = request ? JSON.stringify([state.query(), state.style]) : '';
    if (request && key !== standing) {
      standing = key;
      void work(request);
    } else if (!request) {
      // What is under way would answer a question nobody asks any more.
      turn += 1;
      standing = '';
      progress?.removeAttribute('data-busy');
    }
  };
  let waiting = 0;
  const changed = (): void => {
    waiting ||= requestAnimationFrame(() => {
      waiting = 0;
      render();
    });
    clearTimeout(quiet);
    quiet = setTimeout(() => {
      if (state.request()) history.replaceState(history.state, '', address());
    }, QUIET);
  };

  let chosen = 0;
  const choose = async (id: string): Promise<void> => {
    chosen += 1;
    const mine = chosen;
    const formula = await load(id);
    if (mine !== chosen) return;
    state = new OwnState(formula, startOf(id), '', state.style);
    changed();
  };

  const sideOf = (element: Element): Side | undefined =>
    element.closest<HTMLElement>('[data-side]')?.dataset['side'] as Side | undefined;
  const partOf = (element: Element): Part =>
    (element.closest<HTMLElement>('[data-part]')?.dataset['part'] ?? 'list') as Part;

  section.addEventListener('input', ({ target }) => {
    if (!(target instanceof HTMLInputElement || target instanceof HTMLSelectElement)) return;
    const side = sideOf(target);
    const { show, tick } = target.dataset;
    const on = target instanceof HTMLInputElement && target.checked;
    const key = target.closest<HTMLElement>('[data-fixed]')?.dataset['fixed'];
    if (target === chooser) {
      void choose(chooser.value);
      return;
    }
    if (show !== undefined) state.toggle(show, on);
    else if (key !== undefined) state.plate.type(key, target.value);
    else if (side === undefined) return;
    else if ('turn' in target.dataset) state.turn(side, target.value);
    else if (tick !== undefined) state.tick(side, tick, on);
    else if (target.type === 'radio') state.write(side, target.value === 'list' ? 'list' : 'span');
    else state.type(side, partOf(target), target.value);
    changed();
  });

  section.addEventListener('click', ({ target }) => {
    const pressed = target instanceof Element ? target.closest<HTMLElement>('button') : null;
    if (!pressed) return;
    const { do: act, read } = pressed.dataset;
    const side = sideOf(pressed);
    const key = pressed.closest<HTMLElement>('[data-fixed]')?.dataset['fixed'];
    if (read !== undefined && key !== undefined) state.plate.choose(key, read);
    else if (read !== undefined && side) state.choose(side, partOf(pressed), read);
    else if (act === 'reset') state.reset();
    else if (act === 'metric' || act === 'imperial') state.measure(act);
    else if (act === 'cancel' && standing !== '') {
      cancel();
      return;
    } else if (act === 'cancel') standing = '';
    else {
      if (act !== undefined)
        void import('./take-away.ts').then(({ takeAway }) => {
          const { notice: before } = state;
          const request = shown ?? state.request();
          if (!request) {
            say('A field has to be put right first: it says so beside it.');
            return;
          }
          const ready = lines.length > 0 ? lines : linesNow(request); // prettier-ignore
          void takeAway(
            act,
            { state, request, lines: ready, title: titleOf(request) },
            address(),
          ).then((text) => {
            say([before, text].filter(Boolean).join(' '));
          });
        });
      return;
    }
    changed();
  });

  // The table that was built before stands for the start; anything else is worked out.
  shown = state.request();
  if (query.length <= 1) standing = JSON.stringify([state.query(), state.style]);
  bringGrid(frame, () => {
    const request = shown;
    return request && { address: (line, column) => addressOf(request, line, column) };
  });
  addEventListener('beforeprint', () => {
    const request = shown;
    if (request) {
      const sheets = paperOf(headOf(request, state.style), lines.length > 0 ? lines : linesNow(request)); // prettier-ignore
      one(section, '[data-paper]')?.replaceChildren(...sheets);
      section.toggleAttribute('data-on-paper', sheets.length > 0);
    }
    const date = one(section, '[data-date]');
    setText(date, `Worked out on ${new Intl.DateTimeFormat(undefined, { dateStyle: 'long' }).format()}.`); // prettier-ignore
  });
  addEventListener('afterprint', () => {
    one(section, '[data-paper]')?.replaceChildren();
    section.removeAttribute('data-on-paper');
  });
  render();
  section.dataset['live'] = '';
};

/** Brings the reader's own table to life. */
export const bringTable = (): void => {
  for (const section of all(document, '[data-own-table]')) void wake(section);
};
