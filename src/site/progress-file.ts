/** The tools under “Your progress”: save as a file, read one, erase. The ticks themselves are reader.ts's. */
import { eraseAll, exportAll, importAll, saveFile } from './storage-file.ts';

const one = (selector: string): HTMLElement | null => document.querySelector<HTMLElement>(selector);

/** Says what came of it, and has every tick on the page read anew. */
const done = (sentence: string): void => {
  window.dispatchEvent(new Event('storage'));
  for (const status of document.querySelectorAll('[data-progress-said]'))
    status.textContent = sentence;
};

one('[data-progress-export]')?.addEventListener('click', () => {
  saveFile(exportAll(), 'sitting-by-numbers.json');
});

const input = one('[data-progress-import]');
input?.addEventListener('change', () => {
  if (!(input instanceof HTMLInputElement)) return;
  const text = input.files?.[0]?.text();
  if (text === undefined) return;
  void Promise.all([text, import('./everything.ts')])
    .then(([text, { everything }]) => {
      done(importAll(text, everything));
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
  delete document.documentElement.dataset['kit'];
  done(said);
});
