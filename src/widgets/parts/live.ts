import type { Sheet } from '../../drawing/sheet.ts';
import { isChoice } from '../../formula/record.ts';
import { showResult, showWorked } from '../../formula/show.ts';
import type { Calculator } from './calculator.ts';
import type * as Custom from './custom.ts';
import { all, button, make, one, setText, settle } from './dom.ts';
import { elementOf } from './marks.ts';
import { PlateState, type FieldView } from './plate-state.ts';

/** A plate that lives, for the parts that are fetched only when a reader needs them. */
export interface LivePlate {
  readonly section: HTMLElement;
  readonly state: PlateState;
  /** Sets the page from the state, at the next frame. */
  readonly show: () => void;
  /** The same after the reader’s own act: the address and the spoken result follow when things are quiet. */
  readonly changed: () => void;
  /** Called at every setting of the page, for a picture that is no drawing. */
  follow: (state: PlateState) => void;
  /** A word to the reader that is not part of the state. */
  readonly say: (text: string) => void;
  /** This page with this plate's state, and no other's. */
  readonly address: () => string;
}

/** All plates of the page: however numbers are written on one, they are written on all. */
const awake: LivePlate[] = [];

/** Milliseconds without a change: long enough for a drag to end, short enough to follow it. */
const QUIET = 500;

let written: typeof Custom | undefined;
/** Fetched with the first size of one's own, and at hand from then on: a key must not come between a field and what it is set to. */
const withCustom = (use: (custom: typeof Custom) => void): void => {
  if (written) use(written);
  else
    void import('./custom.ts').then((fetched) => {
      written = fetched;
      use(fetched);
    });
};

const setDrawing = (figure: HTMLElement, { width, height, marks, says }: Sheet): void => {
  const svg = figure.querySelector('svg');
  if (!svg) return;
  const box = { viewBox: `0 0 ${width} ${height}`, width: String(width), height: String(height) };
  for (const [name, value] of Object.entries(box))
    if (svg.getAttribute(name) !== value) svg.setAttribute(name, value);
  setText(one(svg, 'desc'), says);
  const lines = one(svg, 'g');
  if (lines)
    settle(
      lines,
      marks.map((mark) => ({ ...elementOf(mark), text: mark.kind === 'text' ? mark.text : '' })),
      svg.namespaceURI ?? '',
    );
};

const setTable = (figure: HTMLElement, { table }: Sheet): void => {
  const body = one(figure, 'tbody');
  if (!body) return;
  settle(
    body,
    table.rows.map(() => ({ name: 'tr' })),
  );
  table.rows.forEach((cells, i) => {
    const row = body.children[i];
    if (row)
      settle(
        row,
        cells.map((text, at) =>
          at === 0 ? { name: 'th', attributes: { scope: 'row' }, text } : { name: 'td', text },
        ),
      );
  });
};

const setNote = (note: Element | null, { trouble, echo }: FieldView): void => {
  if (!note) return;
  note.className = trouble ? 'field-error' : 'field-echo';
  setText(note, trouble?.message ?? echo);
  for (const reading of trouble?.readings ?? [])
    note.append(' ', button(reading, { 'data-read': reading }));
};

/**
 * Brings one plate to life: what the reader does goes to the state, and what the state says is set down where the page
 * built before has its place for it. Nothing is built anew that stands there already.
 */
const wake = (section: HTMLElement, calculator: Calculator): LivePlate => {
  const { formula, draw } = calculator;
  const state = new PlateState(calculator);
  const fields = all(section, '[data-field]');
  const keyOf = (element: Element): string =>
    element.closest<HTMLElement>('[data-field]')?.dataset['field'] ?? '';

  const set = new Map<string, string>();
  const setField = (field: HTMLElement): void => {
    const key = keyOf(field);
    const view = state.field(key);
    const { text, trouble, track, value } = view;
    const select = field.querySelector('select');
    // Most fields stay as they are while one is moved, and a phone has no time to look them all over. A choice may
    // have fields of its own open, which its text does not tell.
    const sight = JSON.stringify([view, track?.min, track?.max]);
    const asChosen = !select || (select.value === text && !one(field, '.field-custom'));
    if (asChosen && set.get(key) === sight) return;
    set.set(key, sight);
    field.hidden = !view.shown;
    field.toggleAttribute('data-wrong', trouble !== undefined);
    setNote(one(field, '[id$="-note"]'), view);
    for (const control of all<HTMLInputElement>(field, 'input, select')) {
      const { type } = control;
      if (type === 'range') {
        if (!track) continue;
        const { min, max, step } = track;
        Object.assign(control, { min, max, step });
        if (value !== undefined) control.value = String(track.position(value));
        control.setAttribute('aria-valuetext', view.spoken);
        continue;
      }
      if (trouble) control.setAttribute('aria-invalid', 'true');
      else control.removeAttribute('aria-invalid');
      if (type === 'radio') control.checked = control.value === text;
      else if (type === 'text' && control.id !== '') {
        if (control.value !== text) control.value = text;
        control.placeholder = view.placeholder;
        setText(one(field, '.field-unit'), view.unit);
      }
    }
    const input = formula.inputs[key];
    if (select && input && isChoice(input)) {
      const open = one(field, '.field-custom');
      if (!open && Object.hasOwn(input.choices, text)) select.value = text;
      else withCustom(({ setCustom }) => setCustom(field, select, input, text));
    }
    for (const preset of all(field, '[data-put]'))
      preset.setAttribute('aria-pressed', String(Number(preset.dataset['put']) === value));
  };

  const dimmed = all(section, '.result, .result-more, .drawing, .worked');
  const outs = all(section, '[data-out]');
  const places = all<MathMLElement>(section, '[data-val]');
  const systems = all(section, '[data-do][aria-pressed]');
  const said = one(section, '.result');
  const figure = one(section, '.drawing');

  let sheet: Sheet | undefined;
  let after: ReturnType<typeof setTimeout> | undefined;
  const render = (): void => {
    const { given, results, style, stale, notice, trouble } = state;
    fields.forEach(setField);
    said?.replaceChildren(
      ...state
        .sentence()
        .map(({ text, main, italic }) =>
          main || italic
            ? make(italic ? 'i' : 'span', text, main ? { class: 'result-number' } : {})
            : text,
        ),
    );
    for (const part of dimmed) part.toggleAttribute('data-stale', stale);
    setNotice([notice, trouble?.message].filter(Boolean).join(' '));
    for (const tool of systems)
      tool.setAttribute('aria-pressed', String(tool.dataset['do'] === style.system));
    if (figure && !stale) {
      sheet = draw(given, results, style);
      setDrawing(figure, sheet);
    }
    plate.follow(state);
    after ??= setTimeout(renderRest);
  };

  /** What stands under the result and the drawing follows once those are painted: a phone shows them the sooner. */
  const renderRest = (): void => {
    after = undefined;
    const { given, results, style } = state;
    for (const cell of outs) {
      const key = cell.dataset['out'] ?? '';
      const output = formula.outputs[key];
      if (output) setText(cell, showResult(output, results[key], style));
    }
    const worked = formula.worked.values(given, results);
    for (const place of places) {
      const number = worked[place.dataset['val'] ?? ''];
      if (number) setText(place, showWorked(number, style).replaceAll(' ', '\u00a0'));
    }
    if (figure && sheet) setTable(figure, sheet);
  };

  const status = one(section, '[role=status]');
  const notice = one(section, '.result-notice');
  const setNotice = (text: string): void => {
    setText(notice, text);
    if (notice) notice.hidden = text === '';
  };

  const spoken = (): string => {
    if (!state.stale)
      return state
        .sentence()
        .map(({ text }) => text)
        .join('');
    const wrong = [...fields.map((field) => state.field(keyOf(field)).trouble), state.trouble];
    return wrong
      .map((trouble) => trouble?.message)
      .filter(Boolean)
      .join(' ');
  };

  const address = (): string => {
    const { origin, pathname, hash } = location;
    // Where a page has several plates, the hash says whose state the address holds.
    const alone = all(document, '[data-plate]').length === 1;
    return `${origin}${pathname}?${state.query()}${alone ? hash : `#${section.id}`}`;
  };

  let frame = 0;
  let quiet: ReturnType<typeof setTimeout> | undefined;
  const show = (): void => {
    // One picture a frame, however fast the slider runs.
    frame ||= requestAnimationFrame(() => {
      frame = 0;
      render();
    });
  };
  const changed = (): void => {
    show();
    for (const other of awake) if (other.state.adopt(state.style)) other.show();
    clearTimeout(quiet);
    quiet = setTimeout(() => {
      history.replaceState(history.state, '', address());
      setText(status, spoken());
    }, QUIET);
  };

  const plate: LivePlate = {
    section,
    state,
    show,
    changed,
    follow: () => undefined,
    address,
    say: (text) => {
      setNotice(text);
      setText(status, text);
    },
  };

  section.addEventListener('input', ({ target }) => {
    if (!(target instanceof HTMLInputElement || target instanceof HTMLSelectElement)) return;
    const key = keyOf(target);
    if (key === '') return;
    const custom =
      target.closest('.field-custom') ??
      (target.value === 'custom' && target.type === 'select-one');
    if (custom) {
      withCustom(({ readCustom }) => {
        readCustom(plate, key, target);
      });
      return;
    }
    const value =
      target.type === 'range' ? state.field(key).track?.value(Number(target.value)) : undefined;
    if (value !== undefined) state.put(key, value);
    else {
      // A listed choice closes the fields of a written-out one.
      one(target.closest('[data-field]') ?? section, '.field-custom')?.remove();
      state.type(key, target.value);
    }
    changed();
  });

  section.addEventListener('click', ({ target }) => {
    const pressed = target instanceof Element ? target.closest<HTMLElement>('button') : null;
    if (!pressed) return;
    const { put, read, do: act, key = keyOf(pressed) } = pressed.dataset;
    if (put !== undefined) state.put(key, Number(put));
    else if (read !== undefined) state.choose(key, read);
    else if (act === 'reset') state.reset();
    else if (act === 'metric' || act === 'imperial') state.measure(act);
    else {
      if (act === 'copy') void import('./links.ts').then(({ copy }) => copy(plate));
      return;
    }
    changed();
  });

  section.addEventListener('submit', (event) => {
    const form = event.target;
    if (!(form instanceof HTMLFormElement)) return;
    event.preventDefault();
    void import('./ask.ts').then(({ answer }) => answer(plate, form));
  });

  // Links that load a case, wherever on the page they stand; without script they are plain links to the same.
  document.addEventListener('click', (event) => {
    const link =
      event.target instanceof Element
        ? event.target.closest<HTMLAnchorElement>('a[data-load]')
        : null;
    const elsewhere =
      event.button !== 0 || event.metaKey || event.ctrlKey || event.shiftKey || event.altKey;
    if (!link || elsewhere || link.hash !== `#${section.id}` || link.pathname !== location.pathname)
      return;
    event.preventDefault();
    void import('./links.ts').then(({ load }) => load(plate, link.search));
  });

  // The address alone decides what stands in the fields, not what a browser kept in them over a reload.
  fields.forEach(setField);
  // Where the reader's country writes a decimal comma, so does the page.
  if ((0.5).toLocaleString().includes(',') && state.adopt({ ...state.style, decimal: 'comma' }))
    show();
  awake.push(plate);
  if (location.search || document.documentElement.dataset['kit'])
    void import('./links.ts').then(({ open }) => open(plate));
  return plate;
};

/** Brings every plate of a formula on this page to life. */
export const bring = (calculator: Calculator): readonly LivePlate[] =>
  all(document, `[data-plate="${calculator.formula.id}"]`).map((section) =>
    wake(section, calculator),
  );
