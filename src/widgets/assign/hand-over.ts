import { complaintOfAlias, tidyAlias } from '../../exercises/alias.ts';
import { questionsOf, type Assignment } from '../../exercises/assignment.ts';
import type { Format, Picture } from '../../exercises/export/index.ts';
import type { Template } from '../../exercises/template.ts';
import { variantOf } from '../../exercises/variant.ts';
import { toolsFor } from '../marking/load.ts';
import { all, one, setText } from '../parts/dom.ts';
import { inSlices } from '../parts/slices.ts';
import { fetchBank } from '../question/bank.ts';
import { pictureIn, picturesOf } from '../question/figure.ts';
import type { System } from '../question/reader-style.ts';
import { download } from '../parts/download.ts';

/** A file for a course system, made in slices in the page; what writes it is fetched when it is asked for. */
export interface HandOver {
  /** The assignment has changed: what was said of the old one goes. */
  readonly clear: () => void;
}

const MOST_OF_EACH = 20;

const titles = (templates: readonly Template[]): string =>
  templates.map(({ title }) => `“${title}”`).join(', ');

export const handOver = (root: HTMLElement, current: () => Assignment): HandOver => {
  const form = one(root, '.hand-form') as HTMLFormElement;
  const alias = one(form, '#hand-alias') as HTMLInputElement;
  const count = one(form, '#hand-count') as HTMLInputElement;
  const said = one(form, '.hand-said');
  const progress = one(form, '.hand-progress') as HTMLElement;
  const bar = one(progress, 'progress') as HTMLProgressElement;
  let run = 0;

  const radio = (name: string): string =>
    form.querySelector<HTMLInputElement>(`[name="${name}"]:checked`)?.value ?? '';
  const say = (text: string): void => setText(said, text);
  const wrong = (field: HTMLInputElement, text: string): void => {
    const note = one(form, `#${field.id}-note`);
    if (note) note.hidden = text === '';
    setText(note, text);
    if (text === '') field.removeAttribute('aria-invalid');
    else field.setAttribute('aria-invalid', 'true');
  };
  const clear = (): void => {
    run += 1;
    progress.hidden = true;
    say('');
    for (const field of [alias, count]) wrong(field, '');
    const same = current().seeds === 'same';
    const pool = radio('hand-numbers') === 'pool';
    setText(one(form, '[data-hand-whose]'), same ? 'those all students get' : 'those of one alias');
    one(form, '.hand-alias')?.toggleAttribute('hidden', pool || same);
    one(form, '.hand-count')?.toggleAttribute('hidden', !pool);
  };
  const refuse = (field: HTMLInputElement, text: string): void => {
    wrong(field, text);
    field.focus();
  };

  /** What stands in the fields, or undefined where it cannot be used; then that is said. */
  const asked = (assignment: Assignment): { alias: string } | { each: number } | undefined => {
    if (radio('hand-numbers') === 'pool') {
      const text = count.value.trim();
      const each = /^\d{1,2}$/.test(text) ? Number(text) : 0;
      if (each >= 1 && each <= MOST_OF_EACH) return { each };
      const typed = text.slice(0, 12) || 'nothing';
      refuse(count, `A whole number from 1 to ${MOST_OF_EACH}; you typed ${typed}.`);
      return undefined;
    }
    if (assignment.seeds === 'same') return { alias: '' };
    const complaint = complaintOfAlias(alias.value);
    if (complaint === undefined) return { alias: tidyAlias(alias.value) };
    refuse(alias, `Each alias has its own numbers. ${complaint}`);
    return undefined;
  };
  /** Does something for each, with the bar; undefined where it was stopped or overtaken. */
  const told = async <T, U>(
    mine: number,
    what: string,
    things: readonly T[],
    act: (thing: T) => U,
  ): Promise<readonly U[] | undefined> => {
    bar.max = things.length;
    return inSlices(things, act, (done) => {
      if (mine !== run) return false;
      bar.value = done;
      progress.hidden = false;
      setText(one(progress, 'span'), `${done} of ${things.length} ${what}`);
      return true;
    });
  };

  const save = async (): Promise<void> => {
    clear();
    const mine = run;
    const assignment = current();
    if (assignment.items.length === 0) {
      say('Choose an exercise above first.');
      return;
    }
    const wanted = asked(assignment);
    if (!wanted) return;
    const { templates, formulas } = await toolsFor(assignment, await fetchBank());
    const { exportAs, itemOf, poolOf, svgOf } = await import('./export.ts');
    const chosen = [...templates.values()];
    const pools =
      'each' in wanted
        ? await told(mine, 'exercises drawn', chosen, (template) => ({
            template,
            questions: poolOf(assignment, template, formulas, wanted.each),
          }))
        : [];
    if (!pools || mine !== run) return;
    const questions =
      'each' in wanted
        ? pools.flatMap((pool) => pool.questions)
        : questionsOf(assignment, wanted.alias);
    const variants = questions.map(({ template: id, seed }) => {
      const template = templates.get(id);
      if (!template) throw new Error(`There is no exercise “${id}”.`);
      return variantOf(template, formulas, seed);
    });
    const style = { decimal: 'point', system: radio('hand-units') as System } as const;
    const pictures = new Map<object, Picture>();
    for (const variant of variants) {
      const { template, drawn } = variant;
      if (template.kind !== 'reading' || template.figure.show !== 'drawing') continue;
      const drawing = pictureIn(await picturesOf(template.id, style), drawn, style);
      pictures.set(variant, (_formula, _given, says) => svgOf(drawing, says));
    }
    const none: Picture = (id) => {
      throw new Error(`The drawing of ${id} was not fetched.`);
    };
    const items = await told(mine, 'questions written', variants, (variant) =>
      itemOf(variant, formulas, pictures.get(variant) ?? none, style),
    );
    if (!items || mine !== run) return;
    const { name, type, bytes } = exportAs(radio('hand-format') as Format, items, {
      title: [assignment.title, 'alias' in wanted ? wanted.alias : ''].filter(Boolean).join(', '),
      hints: assignment.hints,
    });
    progress.hidden = true;
    download(name, bytes as BlobPart, type);
    const short = pools.filter((pool) => 'each' in wanted && pool.questions.length < wanted.each);
    const open = chosen.filter(({ kind }) => kind === 'design' || kind === 'practical');
    say(
      [
        `${name} saved: ${items.length} ${items.length === 1 ? 'question' : 'questions'}, ${Math.ceil(bytes.length / 1000)}\u00a0kB.`,
        ...short.map((pool) => {
          const has = pool.questions.length;
          return `“${pool.template.title}” has ${has === 1 ? 'no numbers to draw, and comes once' : `only ${has} sets of numbers`}.`;
        }),
        open.length > 0 ? `A person marks ${titles(open)}.` : '',
      ]
        .filter(Boolean)
        .join(' '),
    );
  };

  form.addEventListener('submit', (event) => {
    event.preventDefault();
    void save().catch((error: unknown) => {
      progress.hidden = true;
      say(error instanceof Error ? error.message : String(error));
    });
  });
  one(progress, '[data-do=stop]')?.addEventListener('click', () => {
    clear();
    say('Stopped. Nothing was saved.');
  });
  for (const field of all(form, 'input'))
    field.addEventListener(field.getAttribute('type') === 'radio' ? 'change' : 'input', clear);
  clear();
  return { clear };
};
