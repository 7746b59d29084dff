import { afterAnswer, dueNow } from '../../exercises/review.ts';
import { SEEDS } from '../../exercises/assignment.ts';
import type { Practice } from '../../exercises/practice.ts';
import { all, make, one, setText } from '../parts/dom.ts';
import type { Shelf } from '../parts/shelf.ts';
import { fetchBank, type Entry } from './bank.ts';
import { localMark, showSystem, type System } from './reader-style.ts';
import { load, showQuestion, type QuestionView } from './view.ts';

/** The page that practises: one exercise at a time, and another like it as often as wanted. */

/** @param shelf where a reader may keep streak and review */
export const practise = (shelf: Shelf<Practice>): void => {
  const root = one(document, '[data-practice]');
  const stage = root && one(root, '.practice');
  if (root && stage) void begin(root, stage, shelf);
};

async function begin(
  root: HTMLElement,
  stage: HTMLElement,
  { keep, recall }: Shelf<Practice>,
): Promise<void> {
  const place = one(stage, '.practice-place');
  const count = one(stage, '.practice-count');
  const unit = one(stage, '#practice-unit') as HTMLSelectElement;
  const skill = one(stage, '#practice-skill') as HTMLSelectElement;
  const forget = one(stage, '[data-do=forget]');
  const keepButton = one(stage, '[data-do=keep]');

  let bank: readonly Entry[];
  try {
    bank = await fetchBank();
  } catch (error) {
    setText(place, error instanceof Error ? error.message : String(error));
    return;
  }
  let kept = recall();
  let state: Practice = kept ?? { streak: 0, best: 0, due: [] };
  let now: { entry: Entry; seed: number } | undefined;
  /** Tries of the exercise on the stage: only the first counts for the streak. */
  let answered = false;
  let view: QuestionView | undefined;
  let system: System =
    new URLSearchParams(location.search).get('units') === 'imperial' ? 'imperial' : 'metric';

  const chosen = (): readonly Entry[] =>
    bank.filter(
      (entry) =>
        (unit.value === 'all' || entry.unit === unit.value) &&
        (skill.value === 'all' || entry.template.skill === skill.value),
    );
  const overdue = (): Entry | undefined => {
    const due = dueNow(state.due, Date.now());
    return due.flatMap(
      ({ template }) => chosen().find((entry) => entry.template.id === template) ?? [],
    )[0];
  };
  const tell = (): void => {
    const due = dueNow(state.due, Date.now()).length;
    setText(
      count,
      [
        `${chosen().length} of ${bank.length} exercises chosen.`,
        state.streak > 0 ? `${state.streak} right in a row.` : '',
        due > 0 ? `${due} to look at again.` : '',
      ]
        .filter(Boolean)
        .join(' '),
    );
    if (keepButton) keepButton.hidden = kept !== undefined;
    if (forget) forget.hidden = kept === undefined;
    for (const entry of all(root, '[data-exercise]')) {
      const is = chosen().some(({ template }) => template.id === entry.dataset['exercise']);
      entry.hidden = !is;
    }
  };
  const say = (text: string): void => setText(one(stage, '[data-kept]'), text);
  const save = (): void => {
    if (!kept) return;
    kept = state;
    const failed = keep(state);
    if (failed) say(failed);
  };

  /** Any of them, without a preference: which numbers come is no secret and no lottery. */
  const any = (most: number): number =>
    crypto.getRandomValues(new Uint32Array(1)).reduce((_, x) => x % most, 0);

  const show = async (
    entry: Entry,
    seed: number,
    { focus = true, again = false } = {},
  ): Promise<void> => {
    const mine = { entry, seed };
    now = mine;
    if (!again) answered = false;
    const units = system === 'imperial' ? '&units=imperial' : '';
    history.replaceState(history.state, '', `?exercise=${entry.template.id}&seed=${seed}${units}`);
    showSystem(stage, system);
    const formulas = await load(entry.template);
    const shown = await showQuestion(entry.template, seed, formulas, {
      id: 'practice-question',
      hints: 'free',
      feedback: true,
      style: { decimal: localMark(), system },
      checked: ({ credit, verdict }) => {
        if (answered || verdict.kind === 'judge' || credit === undefined) return;
        answered = true;
        const right = credit === 1;
        const streak = right ? state.streak + 1 : 0;
        state = {
          streak,
          best: Math.max(state.best, streak),
          due: afterAnswer(state.due, entry.template.id, right, Date.now()),
        };
        save();
        tell();
      },
    });
    // Whoever pressed on meanwhile is not thrown back.
    if (now !== mine) return;
    const before = again ? view?.kept() : undefined;
    if (before !== undefined) shown.put(before, view?.hints() ?? 0);
    view = shown;
    place?.replaceChildren(shown.element);
    if (focus) shown.focus();
  };
  const next = (): void => {
    const from = chosen();
    const other = from.filter(({ template }) => template.id !== now?.entry.template.id);
    const entry = overdue() ?? other[any(other.length || 1)] ?? from[0];
    if (entry) void show(entry, any(SEEDS));
    else
      place?.replaceChildren(
        make('p', 'No exercise has this unit and this skill. Choose another of either.'),
      );
  };

  stage.addEventListener('click', ({ target }) => {
    const act =
      target instanceof Element
        ? target.closest<HTMLElement>('[data-do]')?.dataset['do']
        : undefined;
    if (act === 'another' && now) void show(now.entry, (now.seed + 1 + any(SEEDS - 1)) % SEEDS);
    if (act === 'next') next();
    if ((act === 'metric' || act === 'imperial') && now) {
      system = act;
      void show(now.entry, now.seed, { focus: false, again: true });
    }
    if (act === 'link')
      void navigator.clipboard.writeText(location.href).then(
        () => say('Link copied.'),
        () => say(`Copy this address: ${location.href}`),
      );
    if (act === 'keep') {
      kept = state;
      const failed = keep(state);
      say(failed ?? 'Kept in this browser, and nowhere else.');
      if (failed) kept = undefined;
      tell();
    }
    if (act === 'forget') {
      kept = undefined;
      keep(undefined);
      say('Forgotten.');
      tell();
    }
  });
  for (const select of [unit, skill]) select.addEventListener('change', tell);

  tell();
  const query = new URLSearchParams(location.search);
  const asked = bank.find(({ template }) => template.id === query.get('exercise'));
  const seed = query.get('seed') ?? '';
  const sound = /^\d{1,3}$/.test(seed) ? Number(seed) : any(SEEDS);
  if (query.has('exercise') && !asked)
    say('The link asks for an exercise that is not here; this is another.');
  const start = asked ?? overdue() ?? bank[0];
  // Who comes to read the list is not pulled into a field.
  if (start) await show(start, sound, { focus: false });
}
