import type { Item } from '../../exercises/assignment.ts';
import { all, one, setText } from '../parts/dom.ts';

/** The most variants of one exercise that can be set. */
const MOST = 20;

interface Row {
  readonly element: HTMLElement;
  readonly id: string;
  readonly version: number;
  readonly field: HTMLInputElement;
  readonly note: HTMLElement | null;
}

/** The list of exercises with a count for each. */
export interface Chooser {
  readonly items: () => readonly Item[];
  readonly put: (items: readonly Item[]) => void;
  readonly versionOf: (template: string) => number | undefined;
}

const COUNT = /^\d{1,2}$/;

/**
 * Brings the list to life: counts, and what of it is shown.
 * @param changed called when a count has changed
 */
export const chooser = (root: HTMLElement, changed: () => void): Chooser => {
  const rows = all(root, '[data-set]').flatMap((element): Row[] => {
    const field = element.querySelector('input');
    const id = element.dataset['set'];
    return field && id !== undefined
      ? [{ element, id, version: Number(element.dataset['version']), field, note: one(element, '.field-error') }]
      : []; // prettier-ignore
  });
  const countOf = ({ field }: Row): number =>
    COUNT.test(field.value.trim()) ? Math.min(MOST, Number(field.value)) : 0;
  const step = (row: Row, by: number): void => {
    row.field.value = String(Math.max(0, Math.min(MOST, countOf(row) + by)));
    read(row);
  };
  const read = (row: Row): void => {
    const text = row.field.value.trim();
    const sound = text === '' || (COUNT.test(text) && Number(text) <= MOST);
    row.field.toggleAttribute('aria-invalid', false);
    if (!sound) row.field.setAttribute('aria-invalid', 'true');
    if (row.note) row.note.hidden = sound;
    setText(
      row.note,
      sound ? '' : `A whole number from 0 to ${MOST}; you typed ${text.slice(0, 12)}.`,
    );
    row.element.toggleAttribute('data-chosen', sound && countOf(row) > 0);
    for (const press of all<HTMLButtonElement>(row.element, '[data-step]'))
      press.disabled = countOf(row) === (press.dataset['step'] === '-1' ? 0 : MOST);
    changed();
  };
  /** Places in the assignment that was opened: another order would draw other numbers. */
  let places: readonly string[] = [];
  const placeOf = ({ template }: Item): number => {
    const at = places.indexOf(template);
    return at < 0 ? places.length : at;
  };
  const items = (): readonly Item[] =>
    rows
      .flatMap((row) => {
        const count = row.field.hasAttribute('aria-invalid') ? 0 : countOf(row);
        return count > 0 ? [{ template: row.id, version: row.version, count }] : [];
      })
      .toSorted((a, b) => placeOf(a) - placeOf(b));

  const filters = ['unit', 'skill', 'kind'].map(
    (name) => [name, one(root, `#set-${name}`) as HTMLSelectElement] as const,
  );
  const chosen = one(root, '#set-chosen') as HTMLInputElement;
  const filter = (): void => {
    let shown = 0;
    for (const { element } of rows) {
      const fits =
        filters.every(([name, { value }]) => value === 'all' || element.dataset[name] === value) &&
        (!chosen.checked || element.hasAttribute('data-chosen'));
      element.hidden = !fits;
      if (fits) shown += 1;
    }
    for (const group of all(root, '.set-unit'))
      group.hidden = !group.querySelector('[data-set]:not([hidden])');
    setText(one(root, '.set-shown'), `${shown} of ${rows.length} exercises shown.`);
  };
  for (const [, select] of filters) select.addEventListener('change', filter);
  chosen.addEventListener('change', filter);

  const rowOf = (target: EventTarget | null): Row | undefined =>
    target instanceof Element
      ? rows.find(({ element }) => element === target.closest('[data-set]'))
      : undefined;
  root.addEventListener('click', ({ target }) => {
    const press = target instanceof Element ? target.closest<HTMLElement>('[data-step]') : null;
    const row = rowOf(target);
    if (press && row) step(row, Number(press.dataset['step']));
  });
  root.addEventListener('input', ({ target }) => {
    const row = rowOf(target);
    if (row?.field === target) read(row);
  });
  root.addEventListener('keydown', (event) => {
    const row = rowOf(event.target);
    if (row?.field !== event.target) return;
    const by = event.key === 'ArrowUp' ? 1 : event.key === 'ArrowDown' ? -1 : 0;
    if (by === 0) return;
    event.preventDefault();
    step(row, by);
  });

  filter();
  return {
    items,
    put: (wanted) => {
      places = wanted.map(({ template }) => template);
      for (const row of rows) {
        row.field.value = String(wanted.find(({ template }) => template === row.id)?.count ?? 0);
        read(row);
      }
      filter();
    },
    versionOf: (template) => rows.find(({ id }) => id === template)?.version,
  };
};
