import { readAssignment, writeAssignment, type Assignment } from '../../exercises/assignment.ts';
import { blankDraft, readDraft, withBank } from '../../exercises/draft.ts';
import { all, make, one, setText } from '../parts/dom.ts';
import { chooser } from './chooser.ts';
import { handOver } from './hand-over.ts';
import { sheets } from './sheets.ts';

/** Puts an assignment together: a choice of exercises, and out of it a link, a code, sheets and a file for a course system. */

/** Milliseconds without a change until the address follows: browsers refuse it more often than they say. */
const QUIET = 150;
const DRAWS = 1_000_000;

const root = one(document, '[data-compose]');
if (root) begin(root);

function begin(root: HTMLElement): void {
  const title = one(root, '#set-title') as HTMLInputElement;
  const due = one(root, '#set-due') as HTMLInputElement;
  const result = one(root, '.set-result') as HTMLElement;
  const anew = (): number => (crypto.getRandomValues(new Uint32Array(1))[0] ?? 0) % DRAWS;
  const say = (text: string): void => setText(one(root, '[data-set-said]'), text);
  const radio = (name: string): string =>
    root.querySelector<HTMLInputElement>(`[name="${name}"]:checked`)?.value ?? '';
  const press = (name: string, value: string): void => {
    for (const button of all<HTMLInputElement>(root, `[name="${name}"]`))
      button.checked = button.value === value;
  };

  let draw = anew();
  /** While the fields are being filled from the address, nothing is made of them. */
  let filling = true;
  const current = (): Assignment => ({
    title: title.value,
    due: due.value,
    seeds: radio('set-seeds') === 'same' ? 'same' : 'alias',
    hints: (['tenth', 'none'] as const).find((one) => one === radio('set-hints')) ?? 'free',
    draw,
    items: choose.items(),
  });
  let quiet: ReturnType<typeof setTimeout> | undefined;
  const follow = (): void => {
    clearTimeout(quiet);
    quiet = undefined;
    history.replaceState(history.state, '', `?${writeAssignment(current())}${location.hash}`);
  };
  let run = 0;
  const changed = (): void => {
    if (filling) return;
    clearTimeout(quiet);
    quiet = setTimeout(follow, QUIET);
    paper.clear();
    file.clear();
    void show();
  };

  const show = async (): Promise<void> => {
    const mine = ++run;
    const assignment = current();
    const query = writeAssignment(assignment);
    const count = assignment.items.reduce((sum, { count }) => sum + count, 0);
    setText(one(root, '.set-count'), count === 0 ? 'No question is chosen yet.' : `${count} ${count === 1 ? 'question' : 'questions'} from ${assignment.items.length} ${assignment.items.length === 1 ? 'exercise' : 'exercises'}.`); // prettier-ignore
    setText(one(root, '[data-draw]'), String(draw));
    // Read back as a student’s page will read it: a link that could not be opened is never handed out.
    const read = readAssignment(query);
    result.hidden = count === 0 || !read.ok;
    const why = one(root, '[data-set-why]');
    setText(why, count > 0 && !read.ok ? read.why : '');
    if (result.hidden) return;
    const link = new URL(`${result.dataset['work'] ?? ''}?${query}`, location.href).href;
    const shown = one(result, '[data-link]') as HTMLAnchorElement;
    for (const way of [shown, one(result, '[data-open]') as HTMLAnchorElement]) way.href = link;
    setText(shown, link);
    setText(one(result, '[data-length]'), `${link.length} characters.`);
    const place = one(result, '.set-code-place');
    const { codeOf } = await import('./code.ts');
    if (mine !== run) return;
    let code: Element | undefined;
    try {
      code = codeOf(link);
    } catch (error) {
      // Longer than any code can hold.
      if (!(error instanceof RangeError)) throw error;
    }
    place?.replaceChildren(code ?? make('p', 'This link is too long for a code that a phone still reads. Fewer exercises, a shorter title or due text make it shorter; how many variants of one are set makes no difference. Or send the link itself.')); // prettier-ignore
  };

  const choose = chooser(root, changed);
  /** As a student’s page reads it: what comes of it here has the same numbers. */
  const sound = (): Assignment => {
    const read = readAssignment(writeAssignment(current()));
    return read.ok ? read.value : { ...current(), items: [] };
  };
  const paper = sheets(root, sound);
  const file = handOver(root, sound);

  const fill = ({ items, ...draft }: Assignment): void => {
    filling = true;
    title.value = draft.title;
    due.value = draft.due;
    press('set-seeds', draft.seeds);
    press('set-hints', draft.hints);
    draw = draft.draw;
    choose.put(items);
    filling = false;
    file.clear();
    void show();
  };
  const read = readDraft(location.search.replace(/^\?/, ''), draw);
  const { items, dropped } = read.ok
    ? withBank(read.value.items, choose.versionOf)
    : { items: [], dropped: [`${read.why} Nothing of it was taken.`] };
  fill({ ...(read.ok ? read.value : blankDraft(draw)), items });
  say(dropped.join(' '));

  for (const field of [title, due]) field.addEventListener('input', changed);
  for (const button of all(root, '[name="set-seeds"], [name="set-hints"]'))
    button.addEventListener('change', changed);
  addEventListener('pagehide', () => {
    if (quiet !== undefined) follow();
  });
  root.addEventListener('click', ({ target }) => {
    const act =
      target instanceof Element
        ? target.closest<HTMLElement>('[data-do]')?.dataset['do']
        : undefined;
    if (act === 'draw') {
      const before = draw;
      while (draw === before) draw = anew();
      changed();
      say('Drawn anew: the same exercises with other numbers, and so another link.');
    }
    if (act === 'none') {
      fill({ ...current(), items: [] });
      changed();
    }
    if (act === 'copy') {
      const link = one(result, '[data-link]')?.textContent ?? '';
      const copied = one(result, '[data-copied]');
      void navigator.clipboard.writeText(link).then(
        () => setText(copied, 'Link copied.'),
        () => setText(copied, 'This browser does not copy. Mark the link and copy it by hand.'),
      );
    }
  });
  root.toggleAttribute('data-live', true);
}
