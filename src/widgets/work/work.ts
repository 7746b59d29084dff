import { complaintOfAlias, tidyAlias } from '../../exercises/alias.ts';
import { withWork, workIn } from '../../exercises/begun.ts';
import { questionsOf, readAssignment, type Assignment } from '../../exercises/assignment.ts';
import { readWork, writeWork, type Answer, type Work } from '../../exercises/result-file.ts';
import { make, one, setText } from '../parts/dom.ts';
import type { Shelf } from '../parts/shelf.ts';
import { fetchBank } from '../question/bank.ts';
import { localMark, showSystem, type System } from '../question/reader-style.ts';
import { load, showQuestion, type QuestionView } from '../question/view.ts';
import { download } from './download.ts';

/** A student’s page: an assignment from a link, an alias, the work, and the file to hand in. */

/** Milliseconds without a change until the work is kept: less than it takes to lose heart. */
const QUIET = 300;

/** @param shelf where work that was begun is kept, as the texts of result files */
export const work = (shelf: Shelf<readonly string[]>): void => {
  const root = one(document, '[data-work]');
  if (root) void begin(root, shelf);
};

async function begin(root: HTMLElement, { keep, recall }: Shelf<readonly string[]>): Promise<void> {
  const form = one(root, '.work-begin') as HTMLFormElement;
  const sheet = one(root, '.work-sheet') as HTMLElement;
  const place = one(root, '.work-questions') as HTMLElement;
  const said = one(root, '[data-work-said]');
  const aliasField = one(root, '#work-alias') as HTMLInputElement;
  const note = one(root, '#work-alias-note') as HTMLElement;
  const say = (text: string): void => setText(said, text);

  let link = location.search.replace(/^\?/, '');
  let assignment: Assignment | undefined;
  let work: Work | undefined;
  let views: readonly QuestionView[] = [];
  let times: Record<string, string> = {};
  /** Not in the address: the address is the assignment, whoever reads it. */
  let system: System = 'metric';

  const head = (): void => {
    if (!assignment) return;
    setText(one(document, '[data-work-title]'), assignment.title);
    setText(
      one(document, '[data-work-due]'),
      assignment.due === '' ? 'No date is set.' : assignment.due,
    );
  };
  const take = (query: string): boolean => {
    const read = readAssignment(query);
    if (!read.ok) {
      say(read.why);
      return false;
    }
    assignment = read.value;
    link = query;
    head();
    return true;
  };

  const stamp = ({ template, seed }: QuestionView): string => `${template.id}/${seed}`;
  const answers = (): readonly Answer[] =>
    views.flatMap((view) => {
      const raw = view.kept();
      return raw === undefined
        ? []
        : [
            {
              template: view.template.id,
              version: view.template.version,
              seed: view.seed,
              raw,
              hints: view.hints(),
              at: times[stamp(view)] ?? new Date().toISOString(),
            },
          ];
    });
  const progress = (): void => {
    const done = views.filter((view) => view.raw() !== undefined).length;
    setText(
      one(sheet, '.work-progress'),
      `${done} of ${views.length} answered, as ${work?.alias ?? ''}.`,
    );
  };
  const save = (): void => {
    if (!work) return;
    work = { ...work, saved: new Date().toISOString(), answers: answers() };
    const failed = keep(withWork(recall() ?? [], work));
    if (failed) say(failed);
    progress();
  };

  let quiet: ReturnType<typeof setTimeout> | undefined;
  const changed = (view: () => QuestionView | undefined) => (): void => {
    const moved = view();
    if (moved) times[stamp(moved)] = new Date().toISOString();
    clearTimeout(quiet);
    quiet = setTimeout(save, QUIET);
  };
  // Whoever closes the page within the quiet loses nothing either.
  addEventListener('pagehide', () => {
    if (quiet !== undefined) save();
  });

  const show = async (from: Work): Promise<void> => {
    if (!assignment) return;
    work = from;
    // A file may be opened before the exercises are here.
    const bank = await fetchBank();
    times = Object.fromEntries(
      from.answers.map(({ template, seed, at }) => [`${template}/${seed}`, at]),
    );
    const made: QuestionView[] = [];
    const elements: Element[] = [];
    for (const question of questionsOf(assignment, from.alias)) {
      const entry = bank.find(({ template }) => template.id === question.template);
      if (entry?.template.version !== question.version) {
        elements.push(
          make(
            'p',
            `“${question.template}” was set from ${entry ? 'an older version of the exercise' : 'another edition of this site'}, and cannot be shown here. Tell your instructor.`,
            { class: 'field-error' },
          ),
        );
        continue;
      }
      const at = made.length;
      const view = await showQuestion(entry.template, question.seed, await load(entry.template), {
        id: `work-${at}`,
        hints: assignment.hints,
        feedback: false,
        style: { decimal: localMark(), system },
        changed: changed(() => made[at]),
      });
      const before = from.answers.find(
        (one) => one.template === question.template && one.seed === question.seed,
      );
      if (before) view.put(before.raw, before.hints);
      made.push(view);
      elements.push(view.element);
    }
    views = made;
    place.replaceChildren(...elements);
    form.hidden = true;
    sheet.hidden = false;
    progress();
  };

  form.addEventListener('submit', (event) => {
    event.preventDefault();
    const alias = tidyAlias(aliasField.value);
    const wrong = complaintOfAlias(alias);
    note.className = wrong === undefined ? 'field-echo' : 'field-error';
    setText(note, wrong ?? '');
    if (wrong !== undefined) return;
    const before = workIn(recall() ?? [], { link, alias });
    const now = new Date().toISOString();
    if (assignment)
      void show(before ?? { assignment, link, alias, started: now, saved: now, answers: [] }).then(
        save,
      );
  });

  sheet.addEventListener('click', ({ target }) => {
    const act =
      target instanceof Element
        ? target.closest<HTMLElement>('[data-do]')?.dataset['do']
        : undefined;
    if (act === 'save' && work) {
      save();
      download(
        `${work.alias.replaceAll(/[^\p{L}\p{N}]+/gu, '-')}-work.json`,
        writeWork(work),
        'application/json',
      );
      say(
        `Saved with ${views.filter((view) => view.raw() !== undefined).length} of ${views.length} answers. Hand the file in yourself.`,
      );
    }
    if ((act === 'metric' || act === 'imperial') && work) {
      system = act;
      showSystem(sheet, act);
      save();
      void show(work);
    }
    if (act === 'leave') {
      work = undefined;
      sheet.hidden = true;
      form.hidden = false;
      aliasField.focus();
    }
  });

  const file = one(root, '[data-work-file]') as HTMLInputElement;
  file.addEventListener('change', () => {
    const chosen = file.files?.[0];
    if (!chosen) return;
    void chosen.text().then(async (text) => {
      const read = readWork(text);
      if (!read.ok) {
        say(`This file was not opened. ${read.why}`);
        return;
      }
      if (!take(read.value.link)) return;
      history.replaceState(history.state, '', `?${read.value.link}`);
      await show(read.value);
      save();
      say('The file is open; go on.');
    });
  });

  try {
    await fetchBank();
  } catch (error) {
    say(error instanceof Error ? error.message : String(error));
    return;
  } finally {
    root.toggleAttribute('data-live', true);
  }
  // Whoever has opened a file meanwhile is at work.
  if (work) return;
  if (link === '') {
    say('This page was opened without an assignment. Use the whole link, or open a saved file.');
    return;
  }
  if (!take(link)) return;
  form.hidden = false;
  const texts = recall() ?? [];
  const mine = texts.flatMap((text) => {
    const read = readWork(text);
    return read.ok && read.value.link === link ? [read.value.alias] : [];
  });
  // After a reload, whoever worked last goes on where they were.
  const last = mine.at(-1);
  const before = last === undefined ? undefined : workIn(texts, { link, alias: last });
  if (before) await show(before);
}
