/** The tools under “Your progress”: save as a file, read one, erase. The ticks themselves are reader.ts's. */
import { checklistTicks } from './checklist-ticks.ts';
import { everything } from './kept.ts';
import { eraseAll, exportAll, importAll } from './storage-file.ts';

const one = (selector: string): HTMLElement | null => document.querySelector<HTMLElement>(selector);

/** Says what came of it, and has every tick on the page read anew. */
const done = (sentence: string): void => {
  window.dispatchEvent(new Event('storage'));
  for (const status of document.querySelectorAll('[data-progress-said]'))
    status.textContent = sentence;
};

one('[data-progress-export]')?.addEventListener('click', () => {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([exportAll()], { type: 'application/json' }));
  link.download = 'sitting-by-numbers.json';
  link.click();
  URL.revokeObjectURL(link.href);
});

const input = one('[data-progress-import]');
input?.addEventListener('change', () => {
  if (!(input instanceof HTMLInputElement)) return;
  void input.files?.[0]
    ?.text()
    .then((text) => {
      done(importAll(text, [...everything, checklistTicks]));
    })
    .catch(() => {
      done('That file could not be read.');
    })
    .finally(() => {
      input.value = '';
    });
});

one('[data-progress-erase]')?.addEventListener('click', () => {
  const said = eraseAll();
  delete document.documentElement.dataset['theme'];
  done(said);
});
