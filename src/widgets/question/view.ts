import type { Raw } from '../../exercises/result-file.ts';
import { inputOf } from '../../exercises/design.ts';
import { marked, type Marked } from '../../exercises/marked.ts';
import { readAnswer, tooCoarse } from '../../exercises/mark.ts';
import { formulasNeeded } from '../../exercises/needs.ts';
import type { Asking, Template } from '../../exercises/template.ts';
import { askedOf, keyOf, variantOf, type Formulas, type Variant } from '../../exercises/variant.ts';
import { SIGN } from '../../formula/notation/sign.ts';
import { spelt } from '../../formula/notation/spelt.ts';
import type { Style } from '../../formula/notation/write.ts';
import { readInput, writeInput } from '../../formula/read.ts';
import { idOf, isChoice, type Formula, type Input } from '../../formula/record.ts';
import { formulas as all } from '../../formulas.ts';
import { make, setText } from '../parts/dom.ts';
import { makeField, type Field } from './fields.ts';
import { figureOf } from './figure.ts';
import { leaning, paragraphs } from './prose.ts';

/** How a question is shown: what a student may see of it before and after the answer. */
export interface Showing {
  /** A stem for ids, unique on the page. */
  readonly id: string;
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

const unitText = (input: Input): string =>
  isChoice(input) ? '' : (SIGN[input.unit] ?? input.unit);

/** The parts that take the answer, by kind. */
interface Answering {
  readonly elements: readonly Element[];
  /** @param insist says of an empty field that it is */
  readonly raw: (insist: boolean) => Raw | undefined;
  readonly kept: () => Raw | undefined;
  readonly put: (raw: Raw) => void;
  readonly focus: () => void;
}

const named = (input: Input): string => {
  const name = spelt(input);
  return name.charAt(0).toUpperCase() + name.slice(1);
};

const inputField = (input: Input, id: string, label: string, changed: () => void): Field =>
  makeField({
    id,
    label,
    unit: unitText(input),
    changed,
    ...(isChoice(input) && {
      choices: Object.fromEntries(
        Object.keys(input.choices).map((choice) => [choice, input.labels?.[choice] ?? choice]),
      ),
    }),
  });

/** Reads a field as an input; the canonical text, or undefined where it cannot be read. */
const readField = (field: Field, input: Input, insist: boolean): string | undefined =>
  field.read(
    (text, stored) =>
      writeInput(
        input,
        readInput(input, text, stored || isChoice(input) ? { stored: true } : { unit: input.unit }),
      ),
    insist,
  );

type Reading = (insist: boolean) => string | undefined;

const several = (
  fields: readonly (readonly [name: string, field: Field, read: Reading])[],
): Answering => ({
  elements: fields.map(([, field]) => field.element),
  raw: (insist) => {
    const texts = fields.map(([name, , read]) => [name, read(insist)] as const);
    return texts.some(([, text]) => text === undefined)
      ? undefined
      : (Object.fromEntries(texts) as Record<string, string>);
  },
  kept: () => {
    const texts = fields.map(
      ([name, field, read]) => [name, read(false) ?? field.typed()] as const,
    );
    return fields.some(([, field]) => field.typed() !== '') ? Object.fromEntries(texts) : undefined;
  },
  put: (raw) => {
    if (typeof raw !== 'object' || Array.isArray(raw)) return;
    for (const [name, field] of fields)
      field.put((raw as Readonly<Record<string, string>>)[name] ?? '');
  },
  focus: () => fields[0]?.[1].focus(),
});

/** Boxes or buttons to choose from, in the variant’s order; the answer is their places in the template. */
const choosing = (
  texts: readonly string[],
  order: readonly number[],
  type: 'radio' | 'checkbox',
  id: string,
  legend: string,
  changed: () => void,
): Answering & { readonly places: () => number[] } => {
  const set = make('fieldset', '', { class: 'field options' });
  set.append(make('legend', legend, { class: 'field-name' }));
  const boxes = order.map((place) => {
    const label = make('label', '', { class: 'option' });
    const box = make('input', '', { type, name: id, value: String(place) }) as HTMLInputElement;
    box.addEventListener('change', changed);
    const words = make('span', '');
    words.append(...leaning(texts[place] ?? ''));
    label.append(box, words);
    set.append(label);
    return box;
  });
  const places = (): number[] =>
    boxes
      .filter(({ checked }) => checked)
      .map(({ value }) => Number(value))
      .sort((a, b) => a - b);
  return {
    elements: [set],
    places,
    raw: () => (places().length > 0 ? places() : undefined),
    kept: () => (places().length > 0 ? places() : undefined),
    put: (raw) => {
      for (const box of boxes) box.checked = Array.isArray(raw) && raw.includes(Number(box.value));
    },
    focus: () => boxes[0]?.focus(),
  };
};

const numberField = (
  formula: Formula,
  ask: string,
  id: string,
  changed: () => void,
): readonly [Field, Reading] => {
  const asked = askedOf(formula, ask);
  const field = makeField({
    id,
    label: 'Your answer',
    unit: SIGN[asked.unit] ?? asked.unit,
    changed,
  });
  return [
    field,
    // The text stays as it was typed; reading it only says whether it can be.
    (insist) => field.read((text, stored) => (readAnswer(text, asked, stored), text), insist),
  ];
};

const answering = (
  variant: Variant,
  formulas: Formulas,
  { id, style = {}, changed = () => undefined }: Showing,
): Answering => {
  const { template, say, order } = variant;
  switch (template.kind) {
    case 'choice': {
      const many = template.options.filter(({ right }) => right).length > 1;
      return choosing(
        template.options.map(({ text }) => say(text, style)),
        order,
        many ? 'checkbox' : 'radio',
        `${id}-choice`,
        many ? 'All that are right' : 'Which is right?',
        changed,
      );
    }
    case 'design':
      return several(
        template.settings.map((setting) => {
          const input = inputOf(setting, formulas);
          const field = inputField(
            input,
            `${id}-${setting.name}`,
            setting.name === idOf(input)
              ? named(input)
              : named({ ...input, name: setting.name.replaceAll('-', ' ') }),
            changed,
          );
          return [
            setting.name,
            field,
            (insist: boolean) => readField(field, input, insist),
          ] as const;
        }),
      );
    case 'practical': {
      const formula = formulas(template.formula);
      const asked = askedOf(formula, template.compare);
      const compare = makeField({
        id: `${id}-${template.compare}`,
        label: `${asked.name.charAt(0).toUpperCase()}${asked.name.slice(1)}, as you measured it`,
        unit: SIGN[asked.unit] ?? asked.unit,
        changed,
      });
      return several([
        ...template.measured.map((name) => {
          const input = Object.values(formula.inputs).find((one) => idOf(one) === name) as Input;
          const field = inputField(input, `${id}-${name}`, named(input), changed);
          return [name, field, (insist: boolean) => readField(field, input, insist)] as const;
        }),
        [
          template.compare,
          compare,
          (insist: boolean) =>
            compare.read((text, stored) => (readAnswer(text, asked, stored), text), insist),
        ] as const,
      ]);
    }
    case 'mistake': {
      const lines = choosing(
        template.lines.map(({ text }) => say(text, style)),
        order,
        'radio',
        `${id}-line`,
        'Which line is wrong?',
        changed,
      );
      const [field, read] = numberField(
        formulas(template.formula),
        template.ask,
        `${id}-number`,
        changed,
      );
      return {
        elements: [...lines.elements, field.element],
        raw: (insist) => {
          const number = read(insist);
          const [line] = lines.places();
          return number === undefined || line === undefined
            ? undefined
            : { line: String(line), number };
        },
        kept: () => {
          const [line] = lines.places();
          const number = read(false) ?? field.typed();
          return line === undefined && number === ''
            ? undefined
            : { ...(line !== undefined && { line: String(line) }), number };
        },
        put: (raw) => {
          if (typeof raw !== 'object' || Array.isArray(raw)) return;
          const { line, number } = raw as Readonly<Record<string, string>>;
          lines.put(line === undefined ? [] : [Number(line)]);
          field.put(number ?? '');
        },
        focus: lines.focus,
      };
    }
    case 'numeric':
    case 'reading': {
      const [field, read] = numberField(
        formulas(template.formula),
        template.ask,
        `${id}-number`,
        changed,
      );
      return {
        elements: [field.element],
        raw: read,
        kept: () => read(false) ?? (field.typed() || undefined),
        put: (raw) => field.put(typeof raw === 'string' ? raw : ''),
        focus: field.focus,
      };
    }
  }
};

/** What came of an answer, in words for the page and for those who listen. */
export const verdictText = ({ verdict, credit, accepted }: Marked): string => {
  const range = accepted === undefined ? '' : ` Anything from ${accepted} is taken.`;
  switch (verdict.kind) {
    case 'right':
      return `Right${verdict.because === undefined ? '' : `, ${verdict.because}`}.${range}`;
    case 'turn':
      return `Not quite: ${Math.round((credit ?? 0) * 100)} % of the mark. ${verdict.say}`;
    case 'wrong':
      return `Not right. ${verdict.say ?? ''}`.trim();
    case 'design': {
      const kept = verdict.held.filter((one) => one.kept).length;
      return `${kept} of ${verdict.held.length} kept.`;
    }
    case 'judge':
      return 'Compared with the formula; your instructor judges it by the rubric.';
    default:
      return verdict.say;
  }
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
  }) as HTMLElement;
  element.append(
    make('h3', template.title, { id: `${id}-title` }),
    ...paragraphs(variant.say(template.text, style)),
  );
  if (template.kind === 'reading')
    element.append(
      await figureOf(variant as Variant<typeof template>, formulas(template.figure.formula), style),
    );
  if (template.kind === 'design') {
    const list = make('ol', '', { class: 'requirements' });
    for (const { say } of template.requirements) {
      const item = make('li', '');
      item.append(...leaning(variant.say(say, style)), ' ', make('span', '', { class: 'held' }));
      list.append(item);
    }
    element.append(list);
  }
  const parts = answering(variant, formulas, showing);
  const fields = make('div', '', { class: 'fields' });
  fields.append(...parts.elements);
  const said = make('div', '', { class: 'verdict', role: 'status' });
  element.append(fields, said);

  let taken = 0;
  const tools = make('div', '', { class: 'plate-tools' });
  const hintList = make('ol', '', { class: 'hints' });
  const hintButton = make('button', '', { type: 'button', class: 'tool' });
  const setHints = (): void => {
    const left = template.hints.length - taken;
    const price = hints === 'tenth' ? ' (a tenth of the mark)' : '';
    setText(
      hintButton,
      left > 0 ? `Hint ${taken + 1} of ${template.hints.length}${price}` : 'No more hints',
    );
    hintButton.toggleAttribute('disabled', left === 0);
    hintList.replaceChildren(
      ...template.hints.slice(0, taken).map((hint) => {
        const item = make('li', '');
        item.append(...leaning(variant.say(hint, style)));
        return item;
      }),
    );
  };
  hintButton.addEventListener('click', () => {
    taken += 1;
    setHints();
    changed();
  });
  if (hints !== 'none') {
    tools.append(hintButton);
    setHints();
  }
  element.append(tools, hintList);

  const say = (...nodes: (string | Node)[]): void => said.replaceChildren(...nodes);
  const check = (): Marked | undefined => {
    const raw = parts.raw(true);
    if (raw === undefined) {
      say(element.querySelector('[aria-invalid]') ? '' : 'Choose an answer first.');
      (element.querySelector<HTMLElement>('[aria-invalid]') ?? parts).focus();
      return undefined;
    }
    // Every field was read just now, so that the text of each can be read as one of ours.
    const result = marked(template, seed, raw, formulas, { style, stored: true });
    checked?.(result);
    if (!feedback) return result;
    say(make('p', verdictText(result)));
    if (result.verdict.kind === 'design')
      result.verdict.held.forEach((held, i) => {
        const place = element.querySelectorAll('.requirements .held')[i] ?? null;
        setText(place, `${held.kept ? '✓ kept' : '✗ not kept'}: ${held.refusal ?? held.came}`);
      });
    if (result.gap?.kind === 'compared')
      said.append(
        ...paragraphs(variant.say(template.kind === 'practical' ? template.gap : '', style)),
      );
    if ('ask' in template && typeof raw === 'string') {
      const coarse = tooCoarse(raw, keyOf(variant as Variant<Extract<Template, Asking>>, formulas));
      if (coarse) said.append(make('p', coarse));
    }
    return result;
  };

  if (feedback) {
    const checkButton = make('button', 'Check', { type: 'button', class: 'tool tool-main' });
    checkButton.addEventListener('click', () => void check());
    const solution = make('details', '', { class: 'solution' });
    solution.append(
      make('summary', 'Worked solution'),
      ...paragraphs(variant.say(template.solution, style)),
    );
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
    focus: parts.focus,
  };
};
