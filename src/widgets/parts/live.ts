import type { Mark, Sheet } from '../../drawing/sheet.ts';
import { isChoice } from '../../formula/record.ts';
import { unitFor, writeQuantity } from '../../formula/notation/write.ts';
import { showResult } from '../../formula/show.ts';
import type { Calculator } from './calculator.ts';
import { elementOf } from './marks.ts';
import { PlateState, type FieldView } from './plate-state.ts';

const SVG = 'http://www.w3.org/2000/svg';
/** Long enough for a drag to end, short enough to follow the finger. */
const QUIET = 500;

const one = <E extends Element = HTMLElement>(root: ParentNode, selector: string): E | null =>
  root.querySelector<E>(selector);
const all = <E extends Element = HTMLElement>(root: ParentNode, selector: string): E[] => [
  ...root.querySelectorAll<E>(selector),
];

/** Sets what differs, so that a caret in the field and a reader's place in the page stay. */
const setText = (element: Element | null, text: string): void => {
  if (element && element.textContent !== text) element.textContent = text;
};

const element = (
  name: string,
  text: string,
  attributes: Readonly<Record<string, string>> = {},
): HTMLElement => {
  const made = document.createElement(name);
  made.textContent = text;
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value);
  return made;
};

const button = (text: string, attributes: Readonly<Record<string, string>>): HTMLElement =>
  element('button', text, { type: 'button', class: 'tool', ...attributes });

const setMark = (mark: Mark): Element => {
  const { name, attributes } = elementOf(mark);
  const made = document.createElementNS(SVG, name);
  for (const key in attributes) made.setAttribute(key, attributes[key] ?? '');
  if (mark.kind === 'text') made.textContent = mark.text;
  return made;
};

const draw = (figure: HTMLElement, { width, height, marks, says, table }: Sheet): void => {
  const svg = one<SVGElement>(figure, 'svg');
  svg?.setAttribute('viewBox', `0 0 ${width} ${height}`);
  svg?.setAttribute('width', String(width));
  svg?.setAttribute('height', String(height));
  setText(one(figure, 'desc'), says);
  one(figure, 'g')?.replaceChildren(...marks.map(setMark));
  const row = (cells: readonly string[]): HTMLElement => {
    const made = element('tr', '');
    made.append(
      ...cells.map((cell, i) =>
        element(i === 0 ? 'th' : 'td', cell, i === 0 ? { scope: 'row' } : {}),
      ),
    );
    return made;
  };
  one(figure, 'tbody')?.replaceChildren(...table.rows.map(row));
};

/**
 * One plate on the page, brought to life: what the reader does goes to the state, and what the state says is set down
 * where the page built before has its place for it. Nothing is built anew that stands there already.
 */
class LivePlate {
  readonly #section: HTMLElement;
  readonly #state: PlateState;
  readonly #calculator: Calculator;
  #drawn = false;
  #timers: Record<string, ReturnType<typeof setTimeout>> = {};

  constructor(section: HTMLElement, calculator: Calculator) {
    this.#section = section;
    this.#calculator = calculator;
    this.#state = new PlateState(calculator);
    section.addEventListener('input', (event) => this.#input(event));
    section.addEventListener('click', (event) => this.#click(event));
    section.addEventListener('submit', (event) => void this.#ask(event));
    document.addEventListener('click', (event) => this.#follow(event));
    if (this.#addressed() && this.#state.load(location.search)) this.#render();
    else this.#setFields();
  }

  /** Sets every field from the state, also over what a browser kept in it across a reload: the address alone decides. */
  #setFields(): void {
    for (const field of this.#fields()) this.#setField(field);
  }

  #fields(): HTMLElement[] {
    return all(this.#section, '[data-field]');
  }

  /** Whether the address speaks to this plate: named by the hash, else the first on the page with one of its keys. */
  #addressed(): boolean {
    const named = document.getElementById(location.hash.slice(1))?.closest('[data-plate]');
    if (named) return named === this.#section;
    const keys = [...new URLSearchParams(location.search).keys()];
    const first = all(document, '[data-plate]').find((plate) =>
      all(plate, '[data-id]').some(({ dataset }) => keys.includes(dataset['id'] ?? '')),
    );
    return first === this.#section;
  }

  #input({ target }: Event): void {
    if (!(target instanceof HTMLInputElement || target instanceof HTMLSelectElement)) return;
    const field = target.closest<HTMLElement>('[data-field]');
    const key = field?.dataset['field'];
    if (!field || key === undefined) return;
    if (target.type === 'range') {
      const value = this.#state.field(key).track?.value(Number(target.value));
      if (value !== undefined) this.#state.put(key, value);
    } else if (target instanceof HTMLSelectElement) {
      if (target.value === 'custom') this.#openCustom(field, key);
      else {
        one(field, '.field-custom')?.remove();
        this.#state.type(key, target.value);
      }
    } else if (target.closest('.field-custom')) this.#state.type(key, this.#customText(field));
    else this.#state.type(key, target.value);
    this.#changed();
  }

  /** The two fields of a written-out choice, with what was chosen before in them. */
  #openCustom(field: HTMLElement, key: string): void {
    const template = one<HTMLTemplateElement>(field, 'template');
    const input = this.#calculator.formula.inputs[key];
    if (!template || !input || !isChoice(input)) return;
    if (!one(field, '.field-custom')) template.after(template.content.cloneNode(true));
    const before = this.#state.given[key];
    const text = (before && input.custom?.write(before)) || (template.dataset['example'] ?? '');
    this.#fillCustom(field, text);
    this.#state.type(key, text);
  }

  #fillCustom(field: HTMLElement, text: string): void {
    const numbers = text.match(/[\d.,]+/g) ?? [];
    all<HTMLInputElement>(field, '.field-custom input').forEach((side, i) => {
      side.value = numbers[i] ?? '';
    });
  }

  #customText(field: HTMLElement): string {
    const { custom = '', unit = '' } = one(field, 'template')?.dataset ?? {};
    return (
      all<HTMLInputElement>(field, '.field-custom input')
        .map(({ value }) => value.trim())
        .join(custom) + unit
    );
  }

  #click({ target }: Event): void {
    const pressed = target instanceof Element ? target.closest<HTMLElement>('button') : null;
    if (!pressed) return;
    const { put, read, do: act } = pressed.dataset;
    const key =
      pressed.closest<HTMLElement>('[data-field]')?.dataset['field'] ?? pressed.dataset['key'];
    if (key !== undefined && put !== undefined) this.#state.put(key, Number(put));
    else if (key !== undefined && read !== undefined) this.#state.choose(key, read);
    else if (act === 'reset') this.#state.reset();
    else if (act === 'metric' || act === 'imperial') this.#state.measure(act);
    else {
      if (act === 'copy') void this.#copy();
      return;
    }
    this.#changed();
  }

  /** Links that load a case into this plate, wherever on the page they stand. */
  #follow(event: MouseEvent): void {
    const link =
      event.target instanceof Element
        ? event.target.closest<HTMLAnchorElement>('a[data-load]')
        : null;
    const plain =
      event.button === 0 && !(event.metaKey || event.ctrlKey || event.shiftKey || event.altKey);
    if (
      !link ||
      !plain ||
      link.hash !== `#${this.#section.id}` ||
      link.pathname !== location.pathname
    )
      return;
    if (!this.#state.load(link.search)) return;
    event.preventDefault();
    this.#changed();
    one(this.#section, '.result-block')?.scrollIntoView({ block: 'nearest' });
  }

  async #copy(): Promise<void> {
    const address = this.#address();
    try {
      await navigator.clipboard.writeText(address);
      this.#say('Link copied.');
    } catch {
      this.#say(`Copy this address: ${address}`);
    }
  }

  /** A word to the reader that is not part of the state. */
  #say(text: string): void {
    this.#notice(text);
    setText(one(this.#section, '[role=status]'), text);
  }

  #notice(text: string): void {
    const notice = one(this.#section, '.result-notice');
    setText(notice, text);
    notice?.toggleAttribute('hidden', text === '');
  }

  /** This page with this plate's state, and no other's. */
  #address(): string {
    const { origin, pathname, hash } = location;
    const alone = all(document, '[data-plate]').length === 1;
    return `${origin}${pathname}?${this.#state.query()}${alone ? hash : `#${this.#section.id}`}`;
  }

  async #ask(event: SubmitEvent): Promise<void> {
    const form = event.target;
    if (!(form instanceof HTMLFormElement) || !form.matches('[data-ask]')) return;
    event.preventDefault();
    const { ask } = await import('./ask.ts');
    const answer = ask(this.#state, new FormData(form));
    const place = form.nextElementSibling;
    place?.replaceChildren(
      answer.text,
      ...answer.choices.map(({ text, key, si }) =>
        button(text, { 'data-key': key, 'data-put': String(si) }),
      ),
    );
    place?.classList.toggle('field-error', answer.failed);
    const [only] = answer.choices;
    if (only && answer.choices.length === 1) {
      this.#state.put(only.key, only.si);
      place?.replaceChildren(`${answer.text} ${only.text}.`);
      this.#changed();
    }
  }

  #changed(): void {
    if (!this.#drawn) {
      this.#drawn = true;
      // One picture a frame, however fast the slider runs.
      requestAnimationFrame(() => {
        this.#drawn = false;
        this.#render();
      });
    }
    this.#later('address', () => history.replaceState(history.state, '', this.#address()));
    this.#later('status', () => setText(one(this.#section, '[role=status]'), this.#spoken()));
  }

  #later(name: string, act: () => void): void {
    clearTimeout(this.#timers[name]);
    this.#timers[name] = setTimeout(act, QUIET);
  }

  #spoken(): string {
    const { stale, trouble } = this.#state;
    if (!stale)
      return this.#state
        .sentence()
        .map(({ text }) => text)
        .join('');
    const wrong = this.#fields().flatMap(
      ({ dataset }) => this.#state.field(dataset['field'] ?? '').trouble ?? [],
    );
    return [...wrong, ...(trouble ? [trouble] : [])].map(({ message }) => message).join(' ');
  }

  #render(): void {
    const { formula } = this.#calculator;
    const { given, results, style, stale, notice, trouble } = this.#state;
    this.#setFields();

    const sentence = one(this.#section, '.result');
    sentence?.replaceChildren(
      ...this.#state
        .sentence()
        .map(({ text, main }) => (main ? element('span', text, { class: 'result-number' }) : text)),
    );
    for (const part of all(this.#section, '.result, .result-more, .drawing, .worked'))
      part.toggleAttribute('data-stale', stale);
    this.#notice([notice, trouble?.message].filter(Boolean).join(' '));

    for (const cell of all(this.#section, '[data-out]')) {
      const key = cell.dataset['out'] ?? '';
      const output = formula.outputs[key];
      if (output) setText(cell, showResult(output, results[key], style));
    }
    const shown = formula.worked.values(given, results);
    for (const place of all<MathMLElement>(this.#section, '[data-val]')) {
      const number = shown[place.dataset['val'] ?? ''];
      if (number)
        setText(
          place,
          writeQuantity(
            number.value,
            unitFor(number.unit, undefined, style),
            number.digits,
            style,
          ).replaceAll(' ', '\u00a0'),
        );
    }
    for (const tool of all(this.#section, '[data-do][aria-pressed]'))
      tool.setAttribute('aria-pressed', String(tool.dataset['do'] === style.system));
    const figure = one(this.#section, '.drawing');
    if (figure && !stale) draw(figure, this.#calculator.draw(given, results, style));
  }

  #setField(field: HTMLElement): void {
    const key = field.dataset['field'] ?? '';
    const view = this.#state.field(key);
    field.hidden = !view.shown;
    field.toggleAttribute('data-wrong', view.trouble !== undefined);
    this.#setNote(field, view);
    for (const control of all<HTMLInputElement>(field, 'input, select')) {
      control.toggleAttribute('aria-invalid', false);
      if (view.trouble && control.type !== 'range') control.setAttribute('aria-invalid', 'true');
    }
    const typed = one<HTMLInputElement>(field, 'input[type=text]');
    const select = one<HTMLSelectElement>(field, 'select');
    if (select) this.#setSelect(field, select, key, view);
    else if (typed) {
      if (typed.value !== view.text) typed.value = view.text;
      typed.placeholder = view.placeholder;
      setText(one(field, '.field-unit'), view.unit);
    }
    for (const radio of all<HTMLInputElement>(field, '[type=radio]'))
      radio.checked = radio.value === view.text;
    const slider = one<HTMLInputElement>(field, '[type=range]');
    if (slider && view.track) {
      const { min, max, step } = view.track;
      Object.assign(slider, { min, max, step });
      if (view.value !== undefined) slider.value = String(view.track.position(view.value));
      slider.setAttribute('aria-valuetext', view.spoken);
    }
    for (const preset of all(field, '[data-put]'))
      preset.setAttribute('aria-pressed', String(Number(preset.dataset['put']) === view.value));
  }

  #setSelect(
    field: HTMLElement,
    select: HTMLSelectElement,
    key: string,
    { text }: FieldView,
  ): void {
    const input = this.#calculator.formula.inputs[key];
    const listed = input && isChoice(input) && Object.hasOwn(input.choices, text);
    const open = one(field, '.field-custom');
    // A size that happens to be a listed one stays in the two fields while they are open.
    if (open && this.#customText(field) === text) return;
    open?.remove();
    select.value = listed ? text : 'custom';
    if (listed) return;
    const template = one<HTMLTemplateElement>(field, 'template');
    template?.after(template.content.cloneNode(true));
    this.#fillCustom(field, text);
  }

  #setNote(field: HTMLElement, { trouble, echo }: FieldView): void {
    const note = one(field, '[id$="-note"]');
    if (!note) return;
    note.classList.toggle('field-error', trouble !== undefined);
    note.classList.toggle('field-echo', trouble === undefined);
    if (trouble && trouble.readings.length > 0)
      note.replaceChildren(
        `${trouble.message} `,
        ...trouble.readings.map((reading) => button(reading, { 'data-read': reading })),
      );
    else setText(note, trouble?.message ?? echo);
  }
}

/** Brings every plate of a formula on this page to life. */
export const bring = (calculator: Calculator): void => {
  for (const section of all(document, `[data-plate="${calculator.formula.id}"]`))
    new LivePlate(section, calculator);
};
