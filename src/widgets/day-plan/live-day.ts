import { draw } from '../../drawing/day-plan.ts';
import { MOST, type DayPlan } from '../../sitting/day/day-plan.ts';
import {
  CELLS,
  FRAME,
  type DayTexts,
  type FrameKey,
  type KeptDay,
  type RowTexts,
} from '../../sitting/day/kept-day.ts';
import { saveCalendar } from './calendar-file.ts';
import { readFrame, writeFrame } from './frame-link.ts';
import { inkOf } from './ink.ts';
import { clockOf, inClock, typedClock } from './reader-clock.ts';
import { conflictLines, sentence } from './sentence.ts';
import { planOf } from './texts.ts';

/** The browser’s storage, handed in by the page: writing answers with what went wrong, if anything did. */
export interface Shelf {
  readonly recall: () => KeptDay | undefined;
  readonly keep: (day: KeptDay | undefined) => string | undefined;
}

/** Milliseconds without a change before the result is spoken. */
const QUIET = 500;

const NOTHING_KEPT = 'Nothing of this day is kept in this browser.';

/** Thirty-two hexadecimal digits drawn at random: they say nothing about anyone. */
const newSeries = (): string =>
  [...crypto.getRandomValues(new Uint8Array(16))]
    .map((n) => n.toString(16).padStart(2, '0'))
    .join('');

const setText = (element: Element | null, text: string): void => {
  if (element && element.textContent !== text) element.textContent = text;
};

/** An element with words in it. */
const make = (
  name: string,
  text: string,
  attributes: Readonly<Record<string, string>> = {},
  space?: string,
): Element => {
  const element = space ? document.createElementNS(space, name) : document.createElement(name);
  if (text !== '') element.textContent = text;
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
  return element;
};

/** Brings one timetable to life: its fields are its state, and all else is set from them. */
const wake = (section: HTMLElement, shelf: Shelf): void => {
  const one = (selector: string): HTMLElement | null => section.querySelector(selector);
  const all = (root: ParentNode, selector: string): HTMLElement[] => [
    ...root.querySelectorAll<HTMLElement>(selector),
  ];
  const list = one('[data-rows]');
  const model = section.querySelector<HTMLTemplateElement>('template[data-row-model]');
  const svg = section.querySelector<SVGSVGElement>('.drawing svg');
  const body = one('[data-timetable] tbody');
  if (!list || !model || !svg || !body) return;

  const time = clockOf(navigator.languages);
  const typed = typedClock(time);
  let series = newSeries();
  let plan: DayPlan | undefined;

  const rows = (): HTMLElement[] => all(list, '[data-row]');
  const inputOf = (key: FrameKey): HTMLInputElement | null =>
    section.querySelector(`[data-frame="${key}"]`);
  const cell = (row: Element, key: string): HTMLInputElement | null =>
    row.querySelector(`[data-cell="${key}"]`);
  const nameOf = (row: Element): string => cell(row, 'alias')?.value.trim() || 'this booking';

  const collect = (): DayTexts => ({
    frame: Object.fromEntries(
      FRAME.map((key) => [key, inputOf(key)?.value ?? '']),
    ) as DayTexts['frame'],
    rows: rows().map(
      (row) =>
        Object.fromEntries(
          CELLS.map((key) => [key, cell(row, key)?.value ?? '']),
        ) as unknown as RowTexts,
    ),
  });

  // Ids of rows are never used twice, so that a note stays with its row.
  let made = rows().length;
  const addRow = (texts: RowTexts): HTMLElement | undefined => {
    const row = model.content.firstElementChild?.cloneNode(true);
    if (!(row instanceof HTMLElement)) return undefined;
    made += 1;
    const note = row.querySelector('[data-note]');
    if (note) note.id = `day-row-${made}-note`;
    for (const key of CELLS) {
      const input = cell(row, key);
      if (!input) continue;
      input.value = texts[key];
      input.setAttribute('aria-describedby', `day-row-${made}-note`);
    }
    list.append(row);
    return row;
  };

  const put = (texts: DayTexts): void => {
    for (const key of FRAME) {
      const input = inputOf(key);
      if (input) input.value = texts.frame[key];
    }
    const there = rows();
    there.slice(texts.rows.length).forEach((row) => row.remove());
    texts.rows.forEach((row, i) => {
      const place = there[i];
      if (!place) return void addRow(row);
      for (const key of CELLS) {
        const input = cell(place, key);
        if (input) input.value = row[key];
      }
    });
  };

  const mark = (input: HTMLInputElement | null, wrong: boolean): void => {
    if (wrong) input?.setAttribute('aria-invalid', 'true');
    else input?.removeAttribute('aria-invalid');
  };

  const showTroubles = (troubles: ReadonlyMap<string, string>): void => {
    for (const key of FRAME) {
      const input = inputOf(key);
      const message = troubles.get(key) ?? '';
      const field = input?.closest('.field');
      mark(input, message !== '');
      field?.toggleAttribute('data-wrong', message !== '');
      const note = field?.querySelector('[data-note]');
      if (!note) continue;
      note.className = message === '' ? 'field-echo' : 'field-error';
      setText(note, message);
    }
    rows().forEach((row, i) => {
      const says = CELLS.map((key) => {
        const message = troubles.get(`${i}/${key}`) ?? '';
        mark(cell(row, key), message !== '');
        return message;
      }).filter((message) => message !== '');
      row.toggleAttribute('data-wrong', says.length > 0);
      setText(row.querySelector('[data-note]'), says.join(' '));
      row.setAttribute('aria-label', `Booking ${i + 1}`);
      row.querySelector('[data-do="remove"]')?.setAttribute('aria-label', `Remove ${nameOf(row)}`);
    });
  };

  const showDrawing = (shown: DayPlan): void => {
    const { width, height, marks, says, table } = draw(shown, time);
    svg.setAttribute('viewBox', `0 0 ${width} ${height}`);
    svg.setAttribute('height', String(height));
    setText(svg.querySelector('desc'), says);
    svg.querySelector('g')?.replaceChildren(
      ...marks.map((one) => {
        const { name, text, attributes } = inkOf(one);
        return make(name, text, attributes, svg.namespaceURI ?? '');
      }),
    );
    body.replaceChildren(
      ...table.rows.map((cells) => {
        const row = make('tr', '');
        row.append(
          ...cells.map((text, i) =>
            i === 0 ? make('th', text, { scope: 'row' }) : make('td', text),
          ),
        );
        return row;
      }),
    );
  };

  const dimmed = all(section, '[data-result], [data-conflicts], .drawing, [data-timetable]');
  const status = one('[role=status]');
  const notice = one('.result-notice');
  let spoken = '';

  const setNotice = (text: string): void => {
    setText(notice, text);
    if (notice) notice.hidden = text === '';
  };

  const render = (): void => {
    const found = planOf(collect(), time);
    plan = found.plan;
    showTroubles(found.troubles);
    for (const part of dimmed) part.toggleAttribute('data-stale', plan === undefined);
    if (!plan) {
      spoken = [...found.troubles.values()].join(' ');
      return;
    }
    const [number, rest] = sentence(plan);
    spoken = number + rest;
    one('[data-result]')?.replaceChildren(make('span', number, { class: 'result-number' }), rest);
    const lines = conflictLines(plan);
    const conflicts = one('[data-conflicts]');
    conflicts?.replaceChildren(...lines.map((text) => make('li', text)));
    setText(
      one('[data-date]'),
      new Intl.DateTimeFormat([...navigator.languages], {
        dateStyle: 'full',
        timeZone: 'UTC',
      }).format(new Date(`${plan.day.date}T00:00:00Z`)),
    );
    showDrawing(plan);
    const add = section.querySelector<HTMLButtonElement>('[data-do="add"]');
    if (add) add.disabled = rows().length >= MOST.bookings;
  };

  let frame = 0;
  let quiet: ReturnType<typeof setTimeout> | undefined;
  const changed = (): void => {
    frame ||= requestAnimationFrame(() => {
      frame = 0;
      render();
    });
    clearTimeout(quiet);
    quiet = setTimeout(() => setText(status, spoken), QUIET);
  };

  /** Says what was done: beside the buttons it belongs to, and to those who listen. */
  const say = (text: string): void => {
    setText(one('[data-said]'), text);
    clearTimeout(quiet);
    setText(status, text);
  };

  const starts = inClock(collect(), typed);

  const freeAlias = (): string => {
    const taken = new Set(rows().map((row) => nameOf(row)));
    let n = 1;
    while (taken.has(`Sitting ${n}`)) n += 1;
    return `Sitting ${n}`;
  };

  const remove = (row: HTMLElement): void => {
    const name = nameOf(row);
    const next = row.nextElementSibling ?? row.previousElementSibling;
    const after = next?.querySelector<HTMLElement>('[data-do="remove"]') ?? one('[data-do="add"]');
    row.remove();
    after?.focus();
    render();
    say(`${name} is removed. ${spoken}`);
  };

  const copy = async (): Promise<void> => {
    const query = writeFrame(collect().frame);
    if (query === undefined) {
      say('The day’s frame cannot be read yet: see the field that says so.');
      return;
    }
    const link = `${location.origin}${location.pathname}?${query}#${section.id}`;
    try {
      await navigator.clipboard.writeText(link);
      say('Link copied. It holds the day’s frame, and no booking.');
    } catch {
      say(`Copy this address: ${link}`);
    }
  };

  const save = (): void => {
    if (!plan) {
      say('A field has to be put right first: it says so beside it.');
      return;
    }
    const zone = section.querySelector<HTMLSelectElement>('[data-zone]')?.value ?? '';
    try {
      saveCalendar(plan, series, zone);
      const sits = plan.slots.filter(({ booking }) => booking !== undefined).length;
      say(
        `Saved: ${sits} ${sits === 1 ? 'entry' : 'entries'}, ${zone === '' ? 'floating times' : `times of ${zone}`}. It holds aliases and times, no ages and no naps.`,
      );
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      say(error.message);
    }
  };

  const print = (): void => {
    const root = document.documentElement;
    root.dataset['print'] = 'day-plan';
    addEventListener('afterprint', () => delete root.dataset['print'], { once: true });
    window.print();
  };

  const acts: Readonly<Record<string, (pressed: HTMLElement) => void>> = {
    add: () => {
      const row = addRow({ alias: freeAlias(), age: '', naps: '', wish: '' });
      render();
      const alias = row && cell(row, 'alias');
      alias?.focus();
      alias?.select();
      say(`A booking is added. ${spoken}`);
    },
    remove: (pressed) => {
      const row = pressed.closest<HTMLElement>('[data-row]');
      if (row) remove(row);
    },
    save,
    copy: () => void copy(),
    print,
    reset: () => {
      series = newSeries();
      put(starts);
      setNotice('');
      render();
      say('The harbour day stands here again.');
    },
    keep: () => {
      const failed = shelf.keep({ texts: collect(), series });
      say(
        failed ??
          'Kept in this browser, on this device only, until you erase it. Press again to keep later changes.',
      );
    },
    open: () => {
      const kept = shelf.recall();
      if (!kept) {
        say(NOTHING_KEPT);
        return;
      }
      series = kept.series;
      put(kept.texts);
      render();
      say(`The kept day is open. ${spoken}`);
    },
    erase: () => {
      const failed = shelf.keep(undefined);
      series = newSeries();
      put({ frame: starts.frame, rows: [] });
      render();
      say(failed ?? `Erased: no booking stands here. ${NOTHING_KEPT}`);
    },
  };

  section.addEventListener('input', ({ target }) => {
    if (target instanceof HTMLInputElement) changed();
  });
  section.addEventListener('click', ({ target }) => {
    const pressed = target instanceof Element ? target.closest<HTMLElement>('[data-do]') : null;
    if (pressed) acts[pressed.dataset['do'] ?? '']?.(pressed);
  });

  // The reader’s own zone first, then all there are; only once somebody wants one.
  const zones = section.querySelector<HTMLSelectElement>('[data-zone]');
  const fill = (): void => {
    if (!zones || zones.options.length > 1) return;
    const own = new Intl.DateTimeFormat().resolvedOptions().timeZone;
    const known = [...new Set([own, 'UTC', ...Intl.supportedValuesOf('timeZone')])];
    zones.append(...known.map((zone) => new Option(zone.replaceAll('_', ' '), zone)));
  };
  zones?.addEventListener('focus', fill);
  zones?.addEventListener('pointerdown', fill);

  const kept = shelf.recall();
  setText(one('[data-said]'), kept ? 'A day is kept in this browser.' : NOTHING_KEPT);
  put(starts);
  const named = location.hash === '' || location.hash === `#${section.id}`;
  const read = named ? readFrame(location.search, starts.frame) : undefined;
  if (read) {
    put(inClock({ frame: read.frame, rows: starts.rows }, typed));
    setNotice(read.notices.join(' '));
  }
  render();
};

/** Brings the timetable on a page to life. */
export const bringDay = (shelf: Shelf): void => {
  for (const section of document.querySelectorAll<HTMLElement>('[data-day-plan]'))
    wake(section, shelf);
};
