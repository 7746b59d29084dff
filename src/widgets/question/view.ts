import type { Raw } from '../../exercises/result-file.ts';
import { marked, type Marked } from '../../exercises/marked.ts';
import { inWords } from '../../exercises/mark.ts';
import { formulasNeeded } from '../../exercises/needs.ts';
import type { Asking, Template } from '../../exercises/template.ts';
import { keyOf, variantOf, type Formulas, type Variant } from '../../exercises/variant.ts';
import type { Style } from '../../formula/notation/write.ts';
import type { Formula } from '../../formula/record.ts';
import { formulas as all } from '../../formulas.ts';
import { make, setText } from '../parts/dom.ts';
import { answering } from './answering.ts';
import { figureOf } from './figure.ts';
import { leaning, paragraphs } from './prose.ts';
import { verdictOf } from './verdict.ts';

/** How a question is shown: what a student may see of it before and after the answer. */
export interface Showing {
  /** A stem for ids, unique on the page. */
  readonly id: string;
  /** The level its heading has on the page. */
  readonly heading?: 'h2' | 'h3';
  readonly style?: Style;
  readonly hints: 'free' | 'tenth' | 'none';
  /** Says at once what came of an answer, and shows the worked solution when asked. */
  readonly feedback: boolean;
  /** Called whenever the answer or the hints taken have changed. */
  readonly changed?: () => void;
  /** Called with what came of an answer that could be read. */
  readonly checked?: (marked: Marked) => void;
}

/** A question on the page. */
export interface QuestionView {
  readonly element: HTMLElement;
  readonly template: Template;
  readonly seed: number;
  /** The answer as a file keeps it; undefined while there is none that can be read. */
  readonly raw: () => Raw | undefined;
  /** The same of an answer that is not whole yet, so that a reload loses nothing of it; undefined while it is empty. */
  readonly kept: () => Raw | undefined;
  readonly put: (raw: Raw, hints: number) => void;
  readonly hints: () => number;
  /** Marks the answer, says what came of it, and returns it; undefined where it could not be read. */
  readonly check: () => Marked | undefined;
  /** Whether an answer was marked here. */
  readonly marked: () => boolean;
  /** Whether the worked solution was opened before there was an answer. */
  readonly peeked: () => boolean;
  /** To its heading, so that whoever listens hears the question from its beginning. */
  readonly focus: () => void;
}

/** Loads what a template works with. */
export const load = async (template: Template): Promise<Formulas> => {
  const loaded = new Map<string, Formula>();
  for (const id of formulasNeeded(template)) {
    const fetched = await all[id]?.();
    if (fetched) loaded.set(id, fetched.default);
  }
  return (id) => {
    const formula = loaded.get(id);
    if (!formula) throw new Error(`The formula ${id} was not loaded.`);
    return formula;
  };
};

/** The answer in words and what is taken for it, to stand before the way there. */
const answerWords = (variant: Variant, formulas: Formulas, style: Style): readonly string[] => {
  const { template, say } = variant;
  switch (template.kind) {
    case 'choice':
      return [
        `Right: ${template.options.flatMap(({ right, text }) => (right ? [`*${say(text, style).replace(/\.$/, '')}*`] : [])).join('; ')}.`,
      ];
    case 'design':
    case 'practical':
      return [];
    case 'mistake':
    case 'numeric':
    case 'reading': {
      const key = keyOf(variant as Variant<Extract<Template, Asking>>, formulas);
      const line =
        template.kind === 'mistake'
          ? template.lines.flatMap(({ wrong, text }) =>
              wrong ? [`The wrong line: *${say(text, style).replace(/\.$/, '')}*.`] : [],
            )
          : [];
      return [
        ...line,
        `${say(`{${template.ask}}`, style)}. Anything from ${inWords(key.span, key.asked, style)} is taken.`,
        ...key.others.map(
          ({ span, because }) => `Right as well: ${inWords(span, key.asked, style)}, ${because}.`,
        ),
      ];
    }
  }
};

const requirementsOf = (variant: Variant, style: Style): Element => {
  const list = make('ol', '', { class: 'requirements' });
  for (const { say } of variant.template.kind === 'design' ? variant.template.requirements : []) {
    const item = make('li', '');
    item.append(...leaning(variant.say(say, style)), make('span', '', { class: 'held' }));
    list.append(item);
  }
  return list;
};

/**
 * Puts a question on the page, its numbers drawn from the seed.
 * @param formulas what `load` gave for the template
 */
export const showQuestion = async (
  template: Template,
  seed: number,
  formulas: Formulas,
  showing: Showing,
): Promise<QuestionView> => {
  const { id, style = {}, hints, feedback, changed = () => undefined, checked } = showing;
  const variant = variantOf(template, formulas, seed);
  const element = make('section', '', {
    class: 'question-sheet',
    'aria-labelledby': `${id}-title`,
    'data-kind': template.kind,
  }) as HTMLElement;
  const title = make(showing.heading ?? 'h3', template.title, {
    id: `${id}-title`,
    class: 'question-title',
    tabindex: '-1',
  }) as HTMLElement;
  element.append(title, ...paragraphs(variant.say(template.text, style)));
  if (template.kind === 'reading')
    element.append(
      await figureOf(variant as Variant<typeof template>, formulas(template.figure.formula), style),
    );
  if (template.kind === 'design') element.append(requirementsOf(variant, style));
  const parts = answering(variant, formulas, { id, style, changed });
  const fields = make('div', '', { class: 'fields' });
  fields.append(...parts.elements);
  element.append(fields);

  let taken = 0;
  const tools = make('div', '', { class: 'plate-tools' });
  const hintList = make('ol', '', { class: 'hints' });
  const hintBox = make('div', '', { 'aria-live': 'polite' });
  hintBox.append(hintList);
  const hintButton = make('button', '', { type: 'button', class: 'tool' });
  const setHints = (): void => {
    const left = template.hints.length - taken;
    const price = hints === 'tenth' ? ' (a tenth of the mark)' : '';
    setText(
      hintButton,
      left > 0 ? `Hint ${taken + 1} of ${template.hints.length}${price}` : 'No more hints',
    );
    // Not disabled: that would throw whoever presses it by keyboard off the page’s order.
    hintButton.setAttribute('aria-disabled', String(left === 0));
    // Those that stand there stay, so that only the new one is read out.
    for (const hint of template.hints.slice(hintList.children.length, taken)) {
      const item = make('li', '');
      item.append(...leaning(variant.say(hint, style)));
      hintList.append(item);
    }
  };
  hintButton.addEventListener('click', () => {
    if (taken === template.hints.length) return;
    taken += 1;
    setHints();
    changed();
  });
  if (hints !== 'none') {
    tools.append(hintButton);
    setHints();
  }
  const said = make('div', '', { class: 'verdict', role: 'status' }) as HTMLElement;
  element.append(tools, hintBox, said);

  const show = (look: string, ...nodes: readonly (string | Node)[]): void => {
    said.dataset['look'] = look;
    said.replaceChildren(...nodes);
  };
  /** What came out at the try before, for a design that is made better step by step. */
  let before: readonly string[] = [];
  const showMargins = ({ verdict }: Marked): void => {
    if (verdict.kind !== 'design') return;
    const now = verdict.held.map(({ refusal, came }) => refusal ?? came);
    element.querySelectorAll<HTMLElement>('.requirements .held').forEach((place, i) => {
      const kept = verdict.held[i]?.kept === true;
      const was = before[i];
      place.dataset['kept'] = String(kept);
      place.replaceChildren(
        make('span', kept ? '✓' : '✗', { class: 'verdict-sign', 'aria-hidden': 'true' }),
        ' ',
        make('strong', kept ? 'kept' : 'not kept'),
        `, ${now[i] ?? ''}`,
        ...(was !== undefined && was !== now[i]
          ? [make('span', ` (before: ${was})`, { class: 'held-before' })]
          : []),
      );
    });
    before = now;
  };
  let open = false;
  let answered = false;
  const check = (): Marked | undefined => {
    const raw = parts.raw(true);
    if (raw === undefined) {
      const field = element.querySelector<HTMLElement>('[aria-invalid]');
      show(
        'open',
        make(
          'p',
          field
            ? 'Not marked yet: see what is said under the field. It costs nothing.'
            : parts.wanting,
        ),
      );
      (field ?? parts).focus();
      return undefined;
    }
    // Every field was read just now, so that the text of each can be read as one of ours.
    const result = marked(template, seed, raw, formulas, { style, stored: true });
    checked?.(result);
    answered = true;
    if (!feedback) return result;
    const { look, elements } = verdictOf(result, raw, variant, formulas, style);
    show(look, ...elements);
    showMargins(result);
    return result;
  };

  if (feedback) {
    const checkButton = make('button', 'Check', { type: 'button', class: 'tool tool-main' });
    checkButton.addEventListener('click', () => void check());
    const solution = make('details', '', { class: 'solution' }) as HTMLDetailsElement;
    solution.append(
      make('summary', 'Worked solution'),
      ...answerWords(variant, formulas, style).flatMap(paragraphs),
      ...paragraphs(variant.say(template.solution, style)),
    );
    solution.addEventListener('toggle', () => {
      open ||= solution.open && !answered;
    });
    tools.prepend(checkButton);
    element.append(solution);
    element.addEventListener('keydown', (event) => {
      if (event.key !== 'Enter' || !(event.target instanceof HTMLInputElement)) return;
      event.preventDefault();
      check();
    });
  }

  return {
    element,
    template,
    seed,
    raw: () => parts.raw(false),
    kept: parts.kept,
    put: (raw, hintsTaken) => {
      parts.put(raw);
      taken = Math.min(hintsTaken, template.hints.length);
      if (hints !== 'none') setHints();
    },
    hints: () => taken,
    check,
    marked: () => answered,
    peeked: () => open,
    focus: () => title.focus(),
  };
};
