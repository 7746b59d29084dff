import { complaintOfAlias, tidyAlias } from '../../exercises/alias.ts';
import { readAssignment, writeAssignment, type Assignment } from '../../exercises/assignment.ts';
import {
  isMissing,
  isSameWork,
  joinWorks,
  withoutWork,
  withWork,
  workIn,
  worksIn,
} from '../../exercises/begun.ts';
import { isBlank } from '../../exercises/blank.ts';
import { isWhole, readWork, writeWork, type Work } from '../../exercises/result-file.ts';
import { button, make, one, setText } from '../parts/dom.ts';
import type { Shelf } from '../parts/shelf.ts';
import { fetchBank, type Entry } from '../question/bank.ts';
import { showSystem, type System } from '../question/reader-style.ts';
import { download } from '../parts/download.ts';
import { setOut, type WorkSheet } from './sheet.ts';
import { count, hour, listBegun, summarise, termsOf } from './summary.ts';

/** A student’s page: an assignment from a link, an alias, the work, and the file to hand in. */

/** Milliseconds without a change until the work is kept: less than it takes to lose heart. */
const QUIET = 300;
/** Bytes of a file beyond which it is not so much as read. */
const LARGEST = 4_000_000;

/** What stands on the page: all of it changes hands at once, so that no answer is ever kept under another alias. */
interface Session {
  work: Work;
  readonly sheet: WorkSheet;
}

/** Letters and digits of a text, for the name of a file. */
const inName = (text: string): string =>
  text
    .replaceAll(/[^\p{L}\p{N}]+/gu, '-')
    .replaceAll(/^-|-$/g, '')
    .toLowerCase();

/** The units of the reader’s kit, as theme.js has set it on the page. */
const kitSystem = (): System => {
  try {
    const kit: unknown = JSON.parse(document.documentElement.dataset['kit'] ?? '');
    return (kit as { system?: unknown } | null)?.system === 'imperial' ? 'imperial' : 'metric';
  } catch {
    return 'metric';
  }
};

const messageOf = (error: unknown): string =>
  error instanceof Error ? error.message : String(error);

/** @param shelf where work that was begun is kept, as the texts of result files */
export const work = (shelf: Shelf<readonly string[]>): void => {
  const root = one(document, '[data-work]');
  if (root) begin(root, shelf);
};

function begin(root: HTMLElement, { keep, recall }: Shelf<readonly string[]>): void {
  const form = one(root, '.work-begin') as HTMLFormElement;
  const page = one(root, '.work-sheet') as HTMLElement;
  const begun = one(root, '.work-begun') as HTMLElement;
  const aliasField = one(root, '#work-alias') as HTMLInputElement;
  const note = one(root, '#work-alias-note') as HTMLElement;
  const said = one(root, '[data-work-said]');
  const asked = one(root, '[data-work-asked]') as HTMLElement;
  const trouble = one(page, '[data-work-trouble]') as HTMLElement;
  const texts = (): readonly string[] => recall() ?? [];

  let assignment: Assignment | undefined;
  let link = '';
  let bank: readonly Entry[] = [];
  let session: Session | undefined;
  /** Not in the address: the address is the assignment, whoever reads it. */
  let system: System = kitSystem();
  /** Why this browser keeps nothing, where it does not. */
  let refused: string | undefined;
  /** When the file was saved that holds all that is answered; nothing where there is none, or more was done since. */
  let filed: string | undefined;
  let filedBefore = false;

  const say = (text: string, ...choices: Element[]): void => {
    setText(said, text);
    asked.replaceChildren(...choices);
  };
  const state = (name: 'waiting' | 'alias' | 'working'): void => {
    root.dataset['work'] = name;
    form.hidden = name !== 'alias';
    page.hidden = name !== 'working';
    showBegun();
  };

  const showBegun = (): void => {
    const works = worksIn(texts()).filter((one) => link === '' || one.link === link);
    begun.hidden = session !== undefined || works.length === 0;
    listBegun(one(begun, 'ul') as HTMLElement, works, {
      goOn: link === '' ? undefined : (one) => void show(one, true),
      takeAway: (gone) => {
        keep(withoutWork(texts(), gone));
        showBegun();
        say(`The work of ${gone.alias} is gone from this browser.`);
      },
    });
  };

  /** Whether anything would be lost if the page went away now. */
  const unsaved = (): boolean =>
    session !== undefined &&
    refused !== undefined &&
    filed === undefined &&
    session.sheet.answers().some(({ raw }) => !isBlank(raw));

  const tell = (): void => {
    if (!session) return;
    const places = session.sheet.places();
    const done = places.filter((place) => place.state === 'answered').length;
    setText(
      one(page, '.work-progress'),
      `${done} of ${places.length} answered, as ${session.work.alias}.`,
    );
    summarise(one(page, '.work-list') as HTMLElement, places);
    const open = places.length - done;
    setText(
      one(page, '.work-open-count'),
      open === 0
        ? 'Every question is answered.'
        : `${count(open, 'question')} of ${places.length} ${open === 1 ? 'has' : 'have'} no whole answer yet. You can save as it is, and go on later.`,
    );
    setText(one(page, '.work-kept'), refused ? '' : `Kept here, ${hour(session.work.saved)}.`);
    setText(one(trouble, 'p'), refused ? `${refused} Until you do, do not close this page.` : '');
    trouble.hidden = !refused || filed !== undefined;
    setText(
      one(page, '.work-filed'),
      filed !== undefined
        ? `Saved at ${hour(filed)} with ${done} of ${places.length} answered. Hand the file in yourself, as your instructor asked.`
        : filedBefore
          ? 'Changed since the file was saved: save it again before you hand it in.'
          : '',
    );
  };

  let quiet: ReturnType<typeof setTimeout> | undefined;
  const save = (): void => {
    clearTimeout(quiet);
    quiet = undefined;
    if (!session) return;
    const { sheet } = session;
    if (sheet.read()) filed = undefined;
    const before = texts();
    // Another window may have gone on with the same work: what was changed there later is taken up, not written over.
    const stored = workIn(before, session.work);
    if (stored && sheet.adopt(stored.answers)) filed = undefined;
    session.work = { ...session.work, saved: new Date().toISOString(), answers: sheet.answers() };
    refused = keep(withWork(before, session.work));
    tell();
  };
  const changed = (): void => {
    clearTimeout(quiet);
    quiet = setTimeout(save, QUIET);
  };
  const flush = (): void => {
    if (quiet !== undefined) save();
  };
  // Whoever closes the page within the quiet, or whose phone puts it away, loses nothing either.
  addEventListener('pagehide', flush);
  document.addEventListener('visibilitychange', flush);
  addEventListener('beforeunload', (event) => {
    flush();
    if (unsaved()) event.preventDefault();
  });
  const adopt = (): void => {
    if (session) {
      const stored = workIn(texts(), session.work);
      if (stored) {
        if (session.sheet.adopt(stored.answers)) filed = undefined;
        // Both wrote at once, and the other came last: what it did not know of is written again.
        if (isMissing(session.sheet.answers(), stored.answers)) changed();
      }
      tell();
    } else if (root.hasAttribute('data-live')) showBegun();
  };
  addEventListener('storage', adopt);
  addEventListener('pageshow', ({ persisted }) => {
    if (persisted) adopt();
  });

  const head = (): void => {
    if (!assignment) return;
    const { title, due } = assignment;
    document.title = `${title} · ${document.title.replace(/^.* · /, '')}`;
    setText(one(document, '[data-work-title]'), title);
    setText(one(document, '[data-work-due]'), due === '' ? 'No date is set.' : `Due: ${due}`);
    const terms = one(root, '.work-terms') as HTMLElement;
    terms.hidden = false;
    terms.replaceChildren(...termsOf(assignment, bank).map((text) => make('li', text)));
  };
  const take = (wanted: Assignment): void => {
    assignment = wanted;
    link = writeAssignment(wanted);
    head();
  };

  let run = 0;
  /**
   * @param from what to show; it is kept at once
   * @param focus for whoever pressed what is now gone
   */
  const show = async (from: Work, focus = false): Promise<void> => {
    flush();
    const mine = ++run;
    const sheet = await setOut(from, bank, {
      system,
      changed,
      again: () => {
        flush();
        if (session) void show(session.work);
      },
    });
    if (mine !== run) return;
    // What was typed while the other sheet was being set out.
    flush();
    if (session && isSameWork(session.work, from)) sheet.adopt(session.sheet.answers());
    else [filed, filedBefore] = [undefined, false];
    session = { work: from, sheet };
    one(page, '.work-questions')?.replaceChildren(...sheet.places().map(({ element }) => element));
    one(page, '.work-list')?.replaceChildren();
    showSystem(page, system);
    // So a reload, or a browser that comes back after a crash, goes on here and asks for no alias.
    history.replaceState(
      { ...(history.state as object | null), alias: from.alias, system },
      '',
      `?${from.link}`,
    );
    state('working');
    save();
    if (focus) sheet.places()[0]?.element.focus();
  };

  form.addEventListener('submit', (event) => {
    event.preventDefault();
    const alias = tidyAlias(aliasField.value);
    const wrong = complaintOfAlias(alias);
    note.className = wrong === undefined ? 'field-echo' : 'field-error';
    setText(note, wrong ?? '');
    if (wrong === undefined) aliasField.removeAttribute('aria-invalid');
    else aliasField.setAttribute('aria-invalid', 'true');
    if (wrong !== undefined || !assignment) return;
    const before = workIn(texts(), { link, alias });
    const now = new Date().toISOString();
    say(
      before
        ? `Work was begun in this browser as ${before.alias}, and is open again. If it is not yours, choose another alias.`
        : '',
    );
    void show(before ?? { assignment, link, alias, started: now, saved: now, answers: [] }, true);
  });

  const saveFile = (): void => {
    save();
    if (!session) return;
    const { assignment, alias } = session.work;
    const name = [inName(assignment.title), inName(alias)].filter(Boolean).join('-');
    download(`${name || 'work'}.json`, writeWork(session.work), 'application/json');
    filed = new Date().toISOString();
    filedBefore = true;
    tell();
  };

  page.addEventListener('click', ({ target }) => {
    const act =
      target instanceof Element
        ? target.closest<HTMLElement>('[data-do]')?.dataset['do']
        : undefined;
    if (act === 'save') saveFile();
    if ((act === 'metric' || act === 'imperial') && session) {
      system = act;
      flush();
      void show(session.work);
    }
    if (act === 'leave') {
      flush();
      if (unsaved()) {
        say('This browser keeps nothing, and the answers here are in no file yet. Save it first.');
        said?.scrollIntoView({ block: 'center' });
        return;
      }
      session = undefined;
      run += 1;
      history.replaceState({ ...(history.state as object | null), alias: undefined }, '');
      say('');
      aliasField.value = '';
      state('alias');
      aliasField.focus();
    }
  });

  const open = (text: string): void => {
    const read = readWork(text);
    if (!read.ok) {
      say(`This file was not opened. ${read.why}`);
      return;
    }
    flush();
    if (unsaved()) {
      say(
        'This browser keeps nothing, and the answers on this page are in no file yet. Save them first; then open the other file.',
      );
      return;
    }
    const theirs = read.value;
    const go = (): void => {
      const here =
        session && isSameWork(session.work, theirs) ? session.work : workIn(texts(), theirs);
      const joined = here ? joinWorks(here, theirs) : theirs;
      const mixed = here?.answers.some((mine) => {
        const other = theirs.answers.find(
          (one) => one.template === mine.template && one.seed === mine.seed,
        );
        return !other || other.at < mine.at;
      });
      take(theirs.assignment);
      say(
        [
          mixed
            ? 'The file is open. Some answers kept in this browser are later than the file’s: of each question the later one stands.'
            : 'The file is open; go on.',
          isWhole(text) === false &&
            'Its sum does not fit what is in it: it was changed, or hurt on the way.',
        ]
          .filter(Boolean)
          .join(' '),
      );
      refused = keep(withWork(texts(), joined));
      void show(joined).then(() => {
        if (mixed) return;
        // All there is stands in the file that was opened.
        filed = theirs.saved;
        filedBefore = true;
        tell();
      });
    };
    if (link === '' || theirs.link === link) {
      go();
      return;
    }
    const yes = button('Open it', {});
    const no = button('Stay here', {});
    yes.addEventListener('click', go);
    no.addEventListener('click', () => say('The file was not opened.'));
    const { title } = theirs.assignment;
    say(
      title === assignment?.title
        ? `This file is work on another assignment called “${title}”, with other questions or numbers, as ${theirs.alias}. Open it in place of this one?`
        : `This file is work on another assignment, “${title}”, as ${theirs.alias}. Open it in place of “${assignment?.title ?? ''}”?`,
      yes,
      no,
    );
    (yes as HTMLElement).focus();
  };

  const file = one(root, '[data-work-file]') as HTMLInputElement;
  file.addEventListener('change', () => {
    const [chosen] = file.files ?? [];
    if (!chosen) return;
    // A huge file is refused by its size alone, and never read.
    const text =
      chosen.size > LARGEST
        ? Promise.reject(new Error('It is far larger than any work of ours.'))
        : chosen.text();
    file.value = '';
    void Promise.all([text, ready])
      .then(([read]) => open(read))
      .catch((error: unknown) => say(`This file could not be opened. ${messageOf(error)}`))
      // The choice of a file stands at the foot, and what comes of it at the head.
      .finally(() => said?.scrollIntoView({ block: 'center' }));
  });

  const wake = async (): Promise<void> => {
    const query = location.search.replace(/^\?/, '');
    if (query === '') state('waiting');
    try {
      bank = await fetchBank();
    } finally {
      root.toggleAttribute('data-live', true);
    }
    if (query === '') return;
    const read = readAssignment(query);
    if (!read.ok) {
      say(`This link cannot be opened. ${read.why} Open it just as you were given it.`);
      state('waiting');
      return;
    }
    const before = history.state as { alias?: unknown; system?: unknown } | null;
    if (before?.system === 'imperial' || before?.system === 'metric') system = before.system;
    take(read.value);
    const alias = typeof before?.alias === 'string' ? before.alias : undefined;
    const mine = alias === undefined ? undefined : workIn(texts(), { link, alias });
    if (mine) await show(mine);
    else state('alias');
  };
  let ready: Promise<void>;
  const start = (): void => {
    ready = wake();
    ready.catch(fail);
  };
  const fail = (error: unknown): void => {
    const again = button('Try again', {});
    again.addEventListener('click', start);
    say(messageOf(error), again);
  };
  start();
}
