import { questionsOf, type Assignment } from '../../exercises/assignment.ts';
import { readClassList } from '../../exercises/class-list.ts';
import { toolsFor } from '../marking/load.ts';
import { all, one, setText } from '../parts/dom.ts';
import { inSlices } from '../parts/slices.ts';
import { fetchBank } from '../question/bank.ts';
import { localMark, type System } from '../question/reader-style.ts';
import { questionOnPaper, sheetHead, type Part } from './paper.ts';

/** Sheets for a class, made in slices in the page that prints them. */
export interface Sheets {
  /** The assignment has changed: what was made of the old one goes. */
  readonly clear: () => void;
}

export const sheets = (root: HTMLElement, current: () => Assignment): Sheets => {
  const form = one(root, '.sheets-form') as HTMLFormElement;
  const list = one(form, '#sheets-class') as HTMLTextAreaElement;
  const place = one(root, '.sheets') as HTMLElement;
  const said = one(root, '.sheets-said');
  const told = one(form, '#sheets-class-note');
  const progress = one(root, '.sheets-progress') as HTMLElement;
  const bar = one(progress, 'progress') as HTMLProgressElement;
  let run = 0;

  const radio = (name: string): string =>
    form.querySelector<HTMLInputElement>(`[name="${name}"]:checked`)?.value ?? '';
  const say = (text: string): void => setText(said, text);
  const clear = (): void => {
    run += 1;
    place.replaceChildren();
    place.removeAttribute('data-whole');
    progress.hidden = true;
    say('');
  };

  const setOut = async (whole: boolean): Promise<boolean> => {
    const mine = ++run;
    const assignment = current();
    place.removeAttribute('data-whole');
    if (assignment.items.length === 0) {
      say('Choose an exercise above first.');
      return false;
    }
    const { aliases, complaints } = readClassList(list.value);
    setText(told, complaints.join(' '));
    if (aliases.length === 0 && assignment.seeds === 'alias') {
      place.replaceChildren();
      say('Each alias has its own numbers: type at least one alias.');
      list.focus();
      return false;
    }
    const part = radio('sheets-part') as Part;
    const who = (aliases.length > 0 ? aliases : ['']).slice(0, whole ? undefined : 1);
    const bank = await fetchBank();
    const tools = await toolsFor(assignment, bank);
    if (mine !== run) return false;
    const style = { decimal: localMark(), system: radio('sheets-units') as System };
    const things = who.flatMap((alias) =>
      questionsOf(assignment, alias).map((question, at) => ({ alias, question, at })),
    );
    const waits: Promise<unknown>[] = [];
    bar.max = things.length;
    const made = await inSlices(
      things,
      ({ alias, question, at }) => ({
        alias,
        element: questionOnPaper(part, question, at + 1, tools, style, waits),
      }),
      (done) => {
        if (mine !== run) return false;
        bar.value = done;
        progress.hidden = false;
        setText(one(progress, 'span'), `${done} of ${things.length} questions set out`);
        return true;
      },
    );
    if (!made) return false;
    await Promise.all(waits);
    if (mine !== run) return false;
    progress.hidden = true;
    place.dataset['paper'] = radio('sheets-paper');
    place.replaceChildren(
      ...who.map((alias) => {
        const sheet = sheetHead(part, assignment, alias);
        sheet.append(...made.filter((one) => one.alias === alias).map(({ element }) => element));
        return sheet;
      }),
    );
    place.toggleAttribute('data-whole', whole);
    const count = who.length === 1 ? 'One sheet' : `${who.length} sheets`;
    say(
      whole
        ? `${count} of ${things.length / who.length} questions made. On the screen stands the first.`
        : `This is the first; printing makes ${Math.max(1, aliases.length)}.`,
    );
    return true;
  };
  const attempt = (whole: boolean): void => {
    void setOut(whole).then(
      (done) => {
        if (done && whole) print();
      },
      (error: unknown) => {
        progress.hidden = true;
        say(error instanceof Error ? error.message : String(error));
      },
    );
  };

  form.addEventListener('submit', (event) => {
    event.preventDefault();
    attempt(true);
  });
  one(form, '[data-do=look]')?.addEventListener('click', () => attempt(false));
  one(progress, '[data-do=stop]')?.addEventListener('click', () => {
    clear();
    say('Stopped.');
  });
  list.addEventListener('input', () => {
    clear();
    setText(told, readClassList(list.value).complaints.join(' '));
  });
  for (const choice of all(form, '[type=radio]')) choice.addEventListener('change', clear);
  clear();
  return { clear };
};
