/** What every page does for its reader: the theme, the ticks, and closing what the pointer opened. */
import { progress, theme } from './kept.ts';
import { keep, recall } from './storage.ts';

const root = document.documentElement;
const all = (selector: string): readonly HTMLElement[] => [
  ...document.querySelectorAll<HTMLElement>(selector),
];
const onPress = (selector: string, act: (element: HTMLElement) => void): void => {
  for (const element of all(selector)) element.addEventListener('click', () => act(element));
};

// Theme: system, light, dark, and round again.
onPress('[data-theme-switch]', () => {
  const now = root.dataset['theme'];
  const next = now === undefined ? 'light' : now === 'light' ? 'dark' : undefined;
  if (next) root.dataset['theme'] = next;
  else delete root.dataset['theme'];
  keep(theme, next);
});

// Ticks.
const ticked = (): readonly string[] => recall(progress) ?? [];

const show = (): void => {
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

onPress('[data-progress-tick]', ({ dataset }) => {
  const id = dataset['progressTick'] ?? '';
  const done = ticked();
  const next = done.includes(id) ? done.filter((one) => one !== id) : [...done, id];
  const failed = keep(progress, next.length > 0 ? next : undefined);
  show();
  say(failed ?? (next.includes(id) ? 'Ticked, and kept in this browser.' : 'The tick is off.'));
});

show();
window.addEventListener('storage', show);

// A note shown under the pointer goes away with Escape, and comes back for the next word.
document.addEventListener('keydown', ({ key }) => {
  if (key === 'Escape') root.dataset['quiet'] = '';
});
document.addEventListener('pointerout', ({ target }) => {
  if (target instanceof Element && target.closest('.term')) delete root.dataset['quiet'];
});
