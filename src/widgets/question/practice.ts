import { SEEDS } from '../../exercises/assignment.ts';
import { FACETS, fits, offered, readChoice, type Choice } from '../../exercises/choose.ts';
import type { Practice } from '../../exercises/practice.ts';
import { afterAnswer, dueNow, why } from '../../exercises/review.ts';
import { all, make, one, setText } from '../parts/dom.ts';
import type { Shelf } from '../parts/shelf.ts';
import { fetchBank, type Entry } from './bank.ts';
import { showOwn } from './own-practice.ts';
import { localMark, showSystem, type System } from './reader-style.ts';
import { load, showQuestion, type QuestionView } from './view.ts';
import { kindWords } from './words.ts';

/** The page that practises: one exercise at a time, and another like it as often as wanted. */

/** @param shelf where a reader may keep streak and review */
export const practise = (shelf: Shelf<Practice>): void => {
  const root = one(document, '[data-practice]');
  const stage = root && one(root, '.practice');
  if (root && stage) void begin(root, stage, shelf);
};

const NONE: Practice = { streak: 0, best: 0, due: [] };

async function begin(
  root: HTMLElement,
  stage: HTMLElement,
  { keep, recall }: Shelf<Practice>,
): Promise<void> {
  const place = one(stage, '.practice-place');
  const said = one(stage, '.practice-said');
  const forget = one(stage, '[data-do=forget]');
  const keepButton = one(stage, '[data-do=keep]');
  const selects = FACETS.map(
    (facet) => [facet, one(stage, `[data-facet=${facet}]`) as HTMLSelectElement] as const,
  );

  let bank: readonly Entry[];
  try {
    bank = await fetchBank();
  } catch (error) {
    setText(place, error instanceof Error ? error.message : String(error));
    return;
  }
  let kept = recall();
  let state: Practice = kept ?? NONE;
  let choice: Choice = {};
  let now: { entry: Entry; seed: number } | undefined;
  /** Only the first try of the exercise on the stage counts for the streak. */
  let answered = false;
  let view: QuestionView | undefined;
  let system: System =
    new URLSearchParams(location.search).get('units') === 'imperial' ? 'imperial' : 'metric';

  const say = (text: string): void => setText(said, text);
  const chosen = (): readonly Entry[] => bank.filter((entry) => fits(entry, choice));
  const overdue = (): Entry | undefined =>
    dueNow(state.due, Date.now()).flatMap(
      ({ template }) => chosen().find((entry) => entry.template.id === template) ?? [],
    )[0];

  const tellOwn = (): void => {
    showOwn(stage, state, kept !== undefined, bank, Date.now());
    if (keepButton) keepButton.hidden = kept !== undefined;
    if (forget) forget.hidden = kept === undefined;
  };
  const tellChoice = (): void => {
    for (const [facet, select] of selects) {
      const counts = offered(bank, choice, facet);
      for (const option of select.options) {
        const count = counts.get(option.value) ?? 0;
        if (option.value !== '') setText(option, `${option.dataset['words'] ?? ''} (${count})`);
        // Some browsers show what is hidden in a list; disabled, it cannot be chosen there either.
        option.hidden = option.disabled = option.value !== '' && count === 0;
      }
      select.value = choice[facet] ?? '';
    }
    const ids = new Set(chosen().map(({ template }) => template.id));
    setText(one(stage, '.practice-count'), `${ids.size} of ${bank.length} exercises chosen.`);
    for (const entry of all(root, '[data-exercise]'))
      entry.hidden = !ids.has(entry.dataset['exercise'] ?? '');
    for (const group of all(root, '[data-unit]'))
      group.hidden = all(group, '[data-exercise]').every(({ hidden }) => hidden);
  };
  const save = (): void => {
    if (!kept) return;
    kept = state;
    const failed = keep(state);
    if (failed) say(failed);
  };
  const address = (): void => {
    if (!now) return;
    const query = new URLSearchParams({
      exercise: now.entry.template.id,
      seed: String(now.seed),
      ...choice,
      ...(system === 'imperial' && { units: system }),
    });
    history.replaceState(history.state, '', `?${query.toString()}`);
  };

  /** Any of them, without a preference: which numbers come is no secret and no lottery. */
  const any = (most: number): number =>
    crypto.getRandomValues(new Uint32Array(1)).reduce((_, x) => x % most, 0);

  /** A line over the exercise: what it is, where it belongs, and why it came. */
  const about = ({ template, lesson }: Entry): Element => {
    const line = make(
      'p',
      `${kindWords[template.kind]} · ${template.skill} · difficulty ${template.difficulty} of 3`,
      { class: 'practice-about' },
    );
    if (lesson !== '')
      line.append(
        ' · ',
        make('a', 'its lesson', {
          href: `${import.meta.env.BASE_URL.replace(/\/$/, '')}${lesson}`,
        }),
      );
    const due = dueNow(state.due, Date.now()).find((one) => one.template === template.id);
    if (due) line.append(make('strong', `Here again: ${why(due, Date.now())}.`));
    return line;
  };

  const show = async (
    entry: Entry,
    seed: number,
    { focus = true, again = false } = {},
  ): Promise<void> => {
    const mine = { entry, seed };
    now = mine;
    if (!again) answered = false;
    address();
    showSystem(stage, system);
    let shown: QuestionView;
    try {
      const formulas = await load(entry.template);
      shown = await showQuestion(entry.template, seed, formulas, {
        id: 'practice-question',
        heading: 'h2',
        hints: 'free',
        feedback: true,
        style: { decimal: localMark(), system },
        checked: ({ credit, verdict }) => {
          // An answer that was read off the solution says nothing either way.
          if (answered || shown.peeked() || verdict.kind === 'judge' || credit === undefined)
            return;
          if (verdict.kind === 'unreadable' || verdict.kind === 'ambiguous') return;
          answered = true;
          const right = credit === 1;
          const streak = right ? state.streak + 1 : 0;
          state = {
            streak,
            best: Math.max(state.best, streak),
            due: afterAnswer(state.due, entry.template.id, right, Date.now()),
          };
          save();
          tellOwn();
        },
      });
    } catch (error) {
      if (now === mine)
        place?.replaceChildren(
          make('p', error instanceof Error ? error.message : String(error), {
            class: 'field-error',
          }),
        );
      return;
    }
    // Whoever pressed on meanwhile is not thrown back.
    if (now !== mine) return;
    const before = again ? view?.kept() : undefined;
    if (before !== undefined) shown.put(before, view?.hints() ?? 0);
    const checkAgain = again && view?.marked() === true;
    view = shown;
    place?.replaceChildren(about(entry), shown.element);
    if (checkAgain) shown.check();
    if (focus) shown.focus();
  };
  const next = (focus = true): void => {
    const from = chosen();
    const other = from.filter(({ template }) => template.id !== now?.entry.template.id);
    const entry = overdue() ?? other[any(other.length || 1)] ?? from[0];
    if (entry) void show(entry, any(SEEDS), { focus });
  };
  const choose = (wanted: Choice): void => {
    choice = wanted;
    tellChoice();
    // What no longer fits makes room; whoever is in a list is not pulled out of it.
    if (now && fits(now.entry, choice)) address();
    else next(false);
  };

  stage.addEventListener('click', ({ target }) => {
    const pressed = target instanceof Element ? target.closest<HTMLElement>('button') : null;
    const act = pressed?.dataset['do'];
    const review = bank.find(({ template }) => template.id === pressed?.dataset['reviewOf']);
    if (review) void show(review, any(SEEDS));
    if (act !== undefined || review) say('');
    if (act === 'another' && now) void show(now.entry, (now.seed + 1 + any(SEEDS - 1)) % SEEDS);
    if (act === 'next') next();
    if (act === 'everything') choose({});
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
      say(failed ?? 'Your practice is kept in this browser, and nowhere else.');
      if (failed) kept = undefined;
      tellOwn();
      // The button that was pressed may be gone: its opposite stands in its place.
      if (!failed) forget?.focus();
    }
    if (act === 'forget') {
      kept = undefined;
      state = NONE;
      keep(undefined);
      say('Forgotten, streak and all.');
      tellOwn();
      keepButton?.focus();
    }
  });
  for (const [facet, select] of selects)
    select.addEventListener('change', () => {
      const set = Object.entries({ ...choice, [facet]: select.value });
      choose(Object.fromEntries(set.filter(([, value]) => value !== '')));
    });

  const query = new URLSearchParams(location.search);
  const read = readChoice(query, bank);
  choice = read.choice;
  tellChoice();
  tellOwn();
  const ids = query.getAll('exercise');
  const asked = bank.find(({ template }) => ids.length === 1 && template.id === ids[0]);
  const seed = query.get('seed') ?? '';
  const sound = /^\d{1,3}$/.test(seed) ? Number(seed) : any(SEEDS);
  const odd = [
    ids.length > 0 && !asked ? 'an exercise that is not here' : '',
    ...read.refused.map((facet) => `a ${facet} there are no exercises for`),
  ].filter(Boolean);
  if (odd.length > 0) say(`The link asks for ${odd.join(' and ')}; that part of it was left out.`);
  const start = asked ?? overdue() ?? chosen()[0];
  // Who comes to read the list is not pulled into a field.
  if (start) await show(start, sound, { focus: false });
}
