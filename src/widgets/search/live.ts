import { find, nearest } from '../../search/find.ts';
import { openIndex, type Index, type IndexFile } from '../../search/index.ts';
import { partQuery } from '../../search/quantities.ts';
import { tidy } from '../../search/text.ts';
import type { Answer } from './answer.ts';
import { hitItem, insteadItem } from './hit.ts';

/** After the last key, in milliseconds: results, and the address. */
const [PAUSE, SETTLED] = [60, 400];
const PLATES = 3;
const SHOWN = 12;

/** Brings the page’s search to life: from now on results follow what is typed. */
export const live = async (form: HTMLFormElement, field: HTMLInputElement): Promise<void> => {
  const one = (selector: string): HTMLElement => {
    const found = document.querySelector<HTMLElement>(selector);
    if (!found) throw new Error(`The page has no ${selector}.`);
    return found;
  };
  const status = one('[data-search-status]');
  const list = one('[data-search-results]');
  const none = one('[data-search-none]');
  const ways = one('[data-search-ways]');
  const { base = '/', index: address = '' } = form.dataset;
  const say = (text: string): void => {
    if (status.textContent !== text) status.textContent = text;
  };

  const linked = new URLSearchParams(location.search).get('q');
  if (linked !== null && field.value === '') field.value = tidy(linked).trim();

  if (field.value) say('Fetching what is searched …');
  let index: Index;
  try {
    const answered = await fetch(address);
    if (!answered.ok) throw new Error(`${answered.status}`);
    index = openIndex((await answered.json()) as IndexFile);
  } catch {
    say('The search could not be fetched. Come back to the field to try again, or look in the lists below.');
    field.addEventListener('focus', () => void live(form, field), { once: true });
    return;
  } // prettier-ignore
  const titleOf = (wanted: string): string =>
    index.entries.find((entry) => entry.address === wanted)?.title ?? '';

  let round = 0;
  /** Shows the results of what stands in the field. */
  const show = async (): Promise<void> => {
    const mine = ++round;
    const typed = field.value;
    const parts = partQuery(tidy(typed));
    const hits = typed.trim() === '' ? [] : find(index, typed);
    const plates = hits.filter(({ entry }) => entry.kind === 'Plate');
    const bar = (plates[0]?.score ?? 0) / 4;
    let answered: { readonly plate: string; readonly answer: Answer } | undefined;
    if (parts.typed.length > 0 && plates.length > 0) {
      const near = plates.filter(({ score }) => score >= bar).slice(0, PLATES);
      answered = await import('./answer.ts')
        .then(({ answer }) => answer(near.map(({ entry }) => entry.address), parts))
        .catch(() => undefined); // prettier-ignore
    }
    if (mine !== round) return;
    const shown = hits.slice(0, SHOWN).map(({ entry }) => entry);
    const first = plates.find(({ entry }) => entry.address === answered?.plate)?.entry;
    const ordered = first ? [first, ...shown.filter((entry) => entry !== first)] : shown;
    list.replaceChildren(
      ...ordered.map((entry) =>
        hitItem(entry, base, titleOf, entry === first ? answered?.answer : undefined),
      ),
    );
    const empty = typed.trim() === '';
    const failed = !empty && ordered.length === 0;
    none.hidden = !failed;
    none.lastElementChild?.replaceWith(insteadItem(failed ? nearest(index, typed) : [], base));
    ways.hidden = !empty && !failed;
    say(empty ? '' : failed ? 'No results' : `${ordered.length} result${ordered.length === 1 ? '' : 's'}`);
  }; // prettier-ignore

  /** Keeps the question in the address, without a step in the history for each letter. */
  const keep = (): void => {
    const url = new URL(location.href);
    const question = tidy(field.value).trim();
    if (question === (url.searchParams.get('q') ?? '')) return;
    if (question === '') url.searchParams.delete('q');
    else url.searchParams.set('q', question);
    history.replaceState(history.state, '', url);
  };

  let [soon, later] = [0, 0];
  field.addEventListener('input', () => {
    clearTimeout(soon);
    clearTimeout(later);
    soon = window.setTimeout(() => void show(), PAUSE);
    later = window.setTimeout(keep, SETTLED);
  });
  const links = (): HTMLElement[] => [...list.querySelectorAll<HTMLElement>('a')];
  const settle = async (): Promise<void> => {
    clearTimeout(soon);
    clearTimeout(later);
    keep();
    await show();
  };
  form.addEventListener('submit', () => void settle().then(() => links()[0]?.focus()));
  list.addEventListener('click', keep);

  form.addEventListener('keydown', (event) => {
    if (event.key === 'ArrowDown') {
      event.preventDefault();
      void settle().then(() => links()[0]?.focus());
    } else if (event.key === 'Escape' && field.value !== '') {
      event.preventDefault();
      field.value = '';
      void settle();
    }
  });
  list.addEventListener('keydown', (event) => {
    const all = links();
    const at = all.indexOf(document.activeElement as HTMLElement);
    if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
      event.preventDefault();
      const next = event.key === 'ArrowDown' ? Math.min(at + 1, all.length - 1) : at - 1;
      (all[next] ?? field).focus();
    } else if (event.key === 'Escape') {
      event.preventDefault();
      field.focus();
    }
  });
  await show();
  // What was typed while all this was fetched, and what a link held too much of.
  keep();
};
