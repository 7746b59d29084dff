import { markOf, type Mark } from '../../formula/notation/number.ts';
import { format } from '../../optics/lens/frame.ts';
import { LENGTHS, MOST_LENSES, type Kit, type LengthId } from '../../sitting/kit.ts';
import { fieldText, readKit, textsOf, unitOf, type KitRead, type KitTexts } from './texts.ts';

/** The browser’s storage and its files, handed in by the page: writing answers with what went wrong, if anything did. */
export interface Shelf {
  /** A kit, undefined where none is kept, or `damaged`. */
  readonly recall: () => Kit | 'damaged' | undefined;
  readonly keep: (kit: Kit | undefined) => string | undefined;
  readonly save: (kit: Kit) => void;
  /** Takes a file over; the answer says what came of it. */
  readonly read: (file: string) => string;
}

const NOTHING = 'No kit is kept in this browser.';

/** Brings the kit’s page to life: its fields are its state, and nothing is kept until its reader asks. */
export const bringKit = (section: HTMLElement, shelf: Shelf): void => {
  const one = (selector: string): HTMLElement | null => section.querySelector(selector);
  const rows = one('[data-lenses]');
  const model = section.querySelector('template');
  const list = section.querySelector<HTMLSelectElement>('[data-kit="format"]');
  const size = section.querySelector<HTMLInputElement>('[data-kit="size"]');
  if (!rows || !model || !list || !size) return;

  // Where the reader's country writes a decimal comma, so does the page.
  let decimal: Mark = (0.5).toLocaleString().includes(',') ? 'comma' : 'point';
  /** The units the lengths are typed in. */
  let before: KitTexts['system'] = '';
  /** Lengths the page wrote itself: exact, whatever is shown of them. */
  const held = new Map<LengthId, string>();
  let read: KitRead = { kit: undefined, values: new Map(), troubles: new Map(), echoes: new Map() };

  const lensRows = (): HTMLElement[] => [...rows.querySelectorAll<HTMLElement>('[data-lens]')];
  const cell = (row: ParentNode, name: string): HTMLInputElement | null =>
    row.querySelector(`[data-cell="${name}"]`);
  const inputOf = (id: LengthId): HTMLInputElement | null =>
    section.querySelector(`[data-kit="${id}"]`);
  const system = (): KitTexts['system'] => {
    const chosen = section.querySelector<HTMLInputElement>('[name="kit-system"]:checked')?.value;
    return chosen === 'metric' || chosen === 'imperial' ? chosen : '';
  };
  const collect = (): KitTexts => ({
    format: list.value === 'custom' ? size.value : list.value,
    lenses: lensRows().map((row) => ({
      focal: cell(row, 'focal')?.value ?? '',
      widest: cell(row, 'widest')?.value ?? '',
    })),
    lengths: Object.fromEntries(
      LENGTHS.map((id) => [id, held.get(id) ?? inputOf(id)?.value ?? '']),
    ) as Record<LengthId, string>,
    system: system(),
  });

  const setNote = (note: Element | null, trouble = '', echo = ''): void => {
    if (!note) return;
    note.className = trouble === '' ? 'field-echo' : 'field-error';
    if (note.textContent !== (trouble || echo)) note.textContent = trouble || echo;
  };
  const mark = (input: HTMLInputElement | null, wrong: boolean): void => {
    if (wrong) input?.setAttribute('aria-invalid', 'true');
    else input?.removeAttribute('aria-invalid');
  };

  /** Reads every field and says beside each what is to be said. */
  const show = (): void => {
    const custom = list.value === 'custom';
    size.closest<HTMLElement>('.field-line')?.toggleAttribute('hidden', !custom);
    // A size not yet written is nothing wrong.
    read = readKit(collect());
    const { troubles, echoes } = read;
    const field = (input: HTMLElement, id: string, echo?: string): void => {
      const trouble = troubles.get(id);
      if (input instanceof HTMLInputElement) mark(input, trouble !== undefined);
      const box = input.closest('.field');
      box?.toggleAttribute('data-wrong', trouble !== undefined);
      setNote(box?.querySelector('[data-note]') ?? null, trouble, echo);
    };
    field(size, 'format');
    for (const id of LENGTHS) {
      const input = inputOf(id);
      if (!input) continue;
      field(input, id, held.has(id) ? '' : echoes.get(id));
      const unit = input.parentElement?.querySelector('.field-unit');
      if (unit) unit.textContent = unitOf(system());
    }
    lensRows().forEach((row, i) => {
      const ids = ['focal', 'widest'].map((name) => [name, `lens-${i}-${name}`] as const);
      for (const [name, id] of ids) mark(cell(row, name), troubles.has(id));
      const words = (of: ReadonlyMap<string, string>): string =>
        ids.flatMap(([, id]) => of.get(id) ?? []).join(' ');
      row.toggleAttribute('data-wrong', words(troubles) !== '');
      setNote(row.querySelector('[data-note]'), words(troubles), words(echoes));
      row.setAttribute('aria-label', `Lens ${i + 1}`);
      const name = cell(row, 'focal')?.value.trim();
      row
        .querySelector('[data-do="remove"]')
        ?.setAttribute('aria-label', `Remove ${name ? `the ${name} mm lens` : `lens ${i + 1}`}`);
    });
    const add = section.querySelector<HTMLButtonElement>('[data-do="add"]');
    if (add) add.disabled = lensRows().length >= MOST_LENSES;
  };

  let made = 0;
  const addRow = (focal = '', widest = ''): HTMLElement | undefined => {
    const row = model.content.firstElementChild?.cloneNode(true);
    if (!(row instanceof HTMLElement)) return undefined;
    const note = row.querySelector('[data-note]');
    if (note) note.id = `kit-lens-${made}-note`;
    for (const [name, value] of Object.entries({ focal, widest })) {
      const input = cell(row, name);
      if (!input) continue;
      input.value = value;
      input.setAttribute('aria-describedby', `kit-lens-${made}-note`);
    }
    made += 1;
    rows.append(row);
    return row;
  };

  /** Sets every field from a kit; without one they are empty. */
  const put = (kit: Kit | undefined): void => {
    const texts = textsOf(kit ?? { lenses: [] }, decimal);
    const listed = texts.format === '' || Object.hasOwn(format.choices, texts.format);
    list.value = listed ? texts.format : 'custom';
    size.value = listed ? '' : texts.format;
    rows.replaceChildren();
    for (const { focal, widest } of texts.lenses) addRow(focal, widest);
    if (texts.lenses.length === 0) addRow();
    held.clear();
    for (const id of LENGTHS) {
      const input = inputOf(id);
      if (input) input.value = texts.lengths[id];
      const exact = kit?.[id];
      if (exact !== undefined) held.set(id, exact);
    }
    const chosen = section.querySelector<HTMLInputElement>(
      `[name="kit-system"][value="${texts.system}"]`,
    );
    if (chosen) chosen.checked = true;
    before = system();
    show();
  };

  /** The other units: lengths that can be read are written anew, the rest stays as it was typed. */
  const measure = (): void => {
    const { values } = readKit({ ...collect(), system: before });
    before = system();
    for (const id of LENGTHS) {
      const [input, stored] = [inputOf(id), values.get(id)];
      if (!input || stored === undefined) continue;
      held.set(id, stored);
      input.value = fieldText(stored, unitOf(before), decimal);
    }
    show();
  };

  const say = (text: string): void => {
    const status = one('[role=status]');
    if (status) status.textContent = text;
  };
  /** The kit in the fields, or a word on why there is none. */
  const whole = (): Kit | undefined => {
    show();
    if (read.kit) return read.kit;
    say(
      read.troubles.size > 0
        ? 'Nothing was kept or saved: a field has to be put right first, and says so beside it.'
        : 'There is nothing to keep yet: fill in a field.',
    );
    section.querySelector<HTMLElement>('[aria-invalid]')?.focus();
    return undefined;
  };

  const acts: Readonly<Record<string, (pressed: HTMLElement) => void>> = {
    add: () => {
      const row = addRow();
      show();
      if (row) cell(row, 'focal')?.focus();
    },
    remove: (pressed) => {
      const row = pressed.closest('[data-lens]');
      const next = row?.nextElementSibling ?? row?.previousElementSibling;
      row?.remove();
      if (lensRows().length === 0) addRow();
      (next?.querySelector<HTMLElement>('[data-do="remove"]') ?? one('[data-do="add"]'))?.focus();
      show();
      say('The lens is out of the list; Keep makes it so in this browser.');
    },
    keep: () => {
      const kit = whole();
      if (!kit) return;
      say(
        shelf.keep(kit) ??
          'Kept in this browser, on this device only, until you erase it. Every calculator starts from it now.',
      );
    },
    save: () => {
      const kit = whole();
      if (!kit) return;
      shelf.save(kit);
      say('Saved as a file.');
    },
    erase: () => {
      const failed = shelf.keep(undefined);
      put(undefined);
      say(failed ?? `Erased. ${NOTHING}`);
    },
  };

  section.addEventListener('click', ({ target }) => {
    const pressed = target instanceof Element ? target.closest<HTMLElement>('[data-do]') : null;
    if (pressed) acts[pressed.dataset['do'] ?? '']?.(pressed);
  });
  section.addEventListener('input', ({ target }) => {
    if (!(target instanceof HTMLInputElement) || target.type === 'file') return;
    const id = LENGTHS.find((each) => each === target.dataset['kit']);
    if (id) held.delete(id);
    if (target.type !== 'text') return;
    decimal = markOf(target.value) ?? decimal;
    show();
  });
  section.addEventListener('change', ({ target }) => {
    if (target instanceof HTMLInputElement && target.name === 'kit-system') measure();
    if (target === list) {
      show();
      if (list.value === 'custom') size.focus();
    }
    if (!(target instanceof HTMLInputElement) || target.type !== 'file') return;
    void target.files?.[0]
      ?.text()
      .then((text) => {
        const said = shelf.read(text);
        start();
        say(said);
      })
      .catch(() => {
        say('That file could not be read.');
      })
      .finally(() => {
        target.value = '';
      });
  });

  const start = (): void => {
    const kept = shelf.recall();
    put(kept === 'damaged' ? undefined : kept);
    say(
      kept === undefined
        ? NOTHING
        : kept === 'damaged'
          ? 'The kit kept in this browser is damaged and cannot be read. Keep a new one, or erase it.'
          : 'This is the kit kept in this browser.',
    );
  };
  start();
};
