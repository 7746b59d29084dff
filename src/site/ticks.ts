/** Lessons ticked off: shown wherever a page has a place for them, and kept in this browser when the reader presses. */
import { progress } from './kept.ts';
import { keep, recall } from './storage.ts';

const all = (selector: string): readonly HTMLElement[] => [
  ...document.querySelectorAll<HTMLElement>(selector),
];
const ticked = (): readonly string[] => recall(progress) ?? [];

/** Sets every tick, button and count on the page to what is kept. */
export const show = (): void => {
  const done = new Set(ticked());
  for (const mark of all('[data-tick]')) {
    const is = done.has(mark.dataset['tick'] ?? '');
    mark.textContent = is ? 'done' : '';
  }
  for (const button of all('[data-progress-tick]')) {
    const is = done.has(button.dataset['progressTick'] ?? '');
    button.setAttribute('aria-pressed', String(is));
    button.textContent = is ? 'Done: take the tick off' : 'Tick this lesson off';
  }
  for (const count of all('[data-progress-count]')) {
    count.textContent =
      done.size === 0
        ? 'No lesson is ticked.'
        : `${String(done.size)} of ${count.dataset['of'] ?? ''} lessons ticked.`;
  }
};

const say = (sentence: string): void => {
  for (const status of all('[data-progress-said]')) status.textContent = sentence;
};

/** Ticks a lesson off, or takes its tick away. */
export const turn = (id: string): void => {
  const done = ticked();
  const next = done.includes(id) ? done.filter((one) => one !== id) : [...done, id];
  const failed = keep(progress, next.length > 0 ? next : undefined);
  show();
  say(failed ?? (next.includes(id) ? 'Ticked, and kept in this browser.' : 'The tick is off.'));
};
