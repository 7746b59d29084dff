/** Brings the checklists of a page to life: shows the ticks kept in this browser, keeps those the reader sets. */
import { checklistTicks, tickedIn, withTick, withTicks, type Ticks } from './checklist-ticks.ts';
import { keep, recall } from './storage.ts';

const lists = [...document.querySelectorAll<HTMLElement>('[data-checklist]')];
const boxesOf = (list: HTMLElement): readonly HTMLInputElement[] => [
  ...list.querySelectorAll<HTMLInputElement>('input[data-item]'),
];
const idOf = ({ dataset }: HTMLElement): string => dataset['checklist'] ?? '';
const kept = (): Ticks => recall(checklistTicks) ?? {};

const say = (list: HTMLElement, sentence: string): void => {
  const status = list.querySelector('[data-checklist-said]');
  if (status) status.textContent = sentence;
};
const count = (list: HTMLElement): string => {
  const boxes = boxesOf(list);
  return `${String(boxes.filter(({ checked }) => checked).length)} of ${String(boxes.length)} ticked`;
};

const show = (list: HTMLElement): void => {
  const ticked = tickedIn(kept(), idOf(list));
  const boxes = boxesOf(list);
  for (const box of boxes) box.checked = ticked.includes(box.dataset['item'] ?? '');
  if (boxes.some(({ checked }) => checked)) say(list, `${count(list)}, kept in this browser only.`);
};

for (const list of lists) {
  show(list);
  list.addEventListener('change', ({ target }) => {
    if (!(target instanceof HTMLInputElement) || target.dataset['item'] === undefined) return;
    const { checked, dataset } = target;
    const failed = keep(
      checklistTicks,
      withTick(kept(), idOf(list), dataset['item'] ?? '', checked),
    );
    say(list, failed ?? `${count(list)}, kept in this browser only.`);
  });
  list.querySelector('[data-checklist-clear]')?.addEventListener('click', () => {
    const failed = keep(checklistTicks, withTicks(kept(), idOf(list), []));
    for (const box of boxesOf(list)) box.checked = false;
    say(list, failed ?? 'Cleared. Nothing of this list is kept in this browser now.');
  });
}

// Ticked in another window, read from a file, or erased.
window.addEventListener('storage', () => lists.forEach(show));
