import { inputOf } from '../../exercises/design.ts';
import { readAnswer } from '../../exercises/mark.ts';
import type { Raw } from '../../exercises/result-file.ts';
import { askedOf, type Asked, type Formulas, type Variant } from '../../exercises/variant.ts';
import { InputError } from '../../formula/errors.ts';
import { SIGN } from '../../formula/notation/sign.ts';
import { spelt } from '../../formula/notation/spelt.ts';
import { unitFor, type Style } from '../../formula/notation/write.ts';
import { readInput, writeInput } from '../../formula/read.ts';
import { idOf, isChoice, type Formula, type Input } from '../../formula/record.ts';
import type { Unit } from '../../formula/units.ts';
import { make } from '../parts/dom.ts';
import { makeField, type Field } from './fields.ts';
import { leaning } from './prose.ts';

/** The parts of a question that take the answer, by kind. */
export interface Answering {
  readonly elements: readonly Element[];
  /** @param insist says of an empty field that it is */
  readonly raw: (insist: boolean) => Raw | undefined;
  readonly kept: () => Raw | undefined;
  readonly put: (raw: Raw) => void;
  readonly focus: () => void;
  /** What is still to be done where no field is at fault: nothing was chosen. */
  readonly wanting: string;
}

interface Asks {
  /** A stem for ids, unique on the page. */
  readonly id: string;
  readonly style: Style;
  readonly changed: () => void;
}

const upper = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
const named = (input: Input): string => upper(spelt(input));

const inputField = (input: Input, label: string, { id, style, changed }: Asks): Field => {
  const unit = isChoice(input) ? undefined : unitFor(input.unit, input.imperial, style);
  return makeField({
    id,
    label,
    unit: unit === undefined ? '' : (SIGN[unit] ?? unit),
    changed,
    ...(isChoice(input) && {
      choices: Object.fromEntries(
        Object.keys(input.choices).map((choice) => [choice, input.labels?.[choice] ?? choice]),
      ),
    }),
  });
};

/** Reads a field as an input; the canonical text, or undefined where it cannot be read. */
const readField = (field: Field, input: Input, style: Style, insist: boolean): string | undefined =>
  field.read(
    (text, stored) =>
      writeInput(
        input,
        readInput(
          input,
          text,
          stored || isChoice(input)
            ? { stored: true }
            : { unit: unitFor(input.unit, input.imperial, style) },
        ),
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
  wanting: '',
});

/** Boxes or buttons to choose from, in the variant’s order; the answer is their places in the template. */
const choosing = (
  texts: readonly string[],
  order: readonly number[],
  type: 'radio' | 'checkbox',
  legend: string,
  wanting: string,
  { id, changed }: Asks,
): Answering & { readonly places: () => number[] } => {
  const set = make('fieldset', '', { class: 'field options' });
  set.append(make('legend', legend, { class: 'field-name' }));
  const boxes = order.map((place) => {
    const label = make('label', '', { class: 'option' });
    const box = make('input', '', { type, name: id, value: String(place), autocomplete: 'off' });
    box.addEventListener('change', changed);
    const words = make('span', '');
    words.append(...leaning(texts[place] ?? ''));
    label.append(box, words);
    set.append(label);
    return box as HTMLInputElement;
  });
  const places = (): number[] =>
    boxes
      .filter(({ checked }) => checked)
      .map(({ value }) => Number(value))
      .sort((a, b) => a - b);
  const raw = () => (places().length > 0 ? places() : undefined);
  return {
    elements: [set],
    places,
    raw,
    kept: raw,
    put: (chosen) => {
      for (const box of boxes)
        box.checked = Array.isArray(chosen) && chosen.includes(Number(box.value));
    },
    focus: () => (boxes.find(({ checked }) => checked) ?? boxes[0])?.focus(),
    wanting,
  };
};

const reads = (text: string, asked: Asked, stored: boolean, bare: Unit | 'none'): boolean => {
  try {
    readAnswer(text, asked, stored, bare);
    return true;
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return false;
  }
};

/** A bare number with the unit it was read in, so that it means the same wherever it is read again. */
const withUnit = (text: string, asked: Asked, stored: boolean, unit: Unit): string =>
  reads(text, asked, stored, 'none') || !reads(text, asked, stored, unit)
    ? text
    : `${text.trim()} ${unit}`;

const numberField = (
  formula: Formula,
  ask: string,
  label: string,
  { id, style, changed }: Asks,
): readonly [Field, Reading, put: (text: string) => void] => {
  const asked = askedOf(formula, ask);
  const shown = unitFor(asked.unit, asked.imperial, style);
  const field = makeField({
    id,
    label,
    unit: SIGN[shown] ?? shown,
    wide: label.length > 16,
    changed,
  });
  return [
    field,
    // The text stays as it was typed; reading it only says whether it can be.
    (insist) =>
      field.read((text, stored) => {
        readAnswer(text, asked, stored, shown);
        return shown === asked.unit ? text : withUnit(text, asked, stored, shown);
      }, insist),
    (text) => field.put(shown === asked.unit ? text : withUnit(text, asked, true, asked.unit)),
  ];
};

/** The fields, boxes and buttons that take the answer to a variant. */
export const answering = (variant: Variant, formulas: Formulas, asks: Asks): Answering => {
  const { template, say, order } = variant;
  const { id, style } = asks;
  const at = (name: string): Asks => ({ ...asks, id: `${id}-${name}` });
  switch (template.kind) {
    case 'choice': {
      const many = template.options.filter(({ right }) => right).length > 1;
      return choosing(
        template.options.map(({ text }) => say(text, style)),
        order,
        many ? 'checkbox' : 'radio',
        many ? 'All that are right' : 'Which is right?',
        many ? 'Tick at least one answer first.' : 'Choose one of the answers first.',
        at('choice'),
      );
    }
    case 'design':
      return several(
        template.settings.map((setting) => {
          const input = inputOf(setting, formulas);
          const label =
            setting.name === idOf(input)
              ? named(input)
              : named({ ...input, name: setting.name.replaceAll('-', ' ') });
          const field = inputField(input, label, at(setting.name));
          const read: Reading = (insist) => readField(field, input, style, insist);
          return [setting.name, field, read] as const;
        }),
      );
    case 'practical': {
      const formula = formulas(template.formula);
      const asked = askedOf(formula, template.compare);
      const [compare, read, put] = numberField(
        formula,
        template.compare,
        `${upper(asked.name)}, as you measured it`,
        at(template.compare),
      );
      return several([
        ...template.measured.map((name) => {
          const input = Object.values(formula.inputs).find((one) => idOf(one) === name);
          if (!input) throw new Error(`${formula.id} has no input “${name}”.`);
          const field = inputField(input, named(input), at(name));
          const reading: Reading = (insist) => readField(field, input, style, insist);
          return [name, field, reading] as const;
        }),
        [template.compare, { ...compare, put }, read] as const,
      ]);
    }
    case 'mistake': {
      const lines = choosing(
        template.lines.map(({ text }) => say(text, style)),
        order,
        'radio',
        'Which line is wrong?',
        'Choose the line that is wrong first.',
        at('line'),
      );
      const [field, read, put] = numberField(
        formulas(template.formula),
        template.ask,
        'What should have come out',
        at('number'),
      );
      return {
        elements: [...lines.elements, field.element],
        wanting: lines.wanting,
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
          put(number ?? '');
        },
        focus: lines.focus,
      };
    }
    case 'numeric':
    case 'reading': {
      const [field, read, put] = numberField(
        formulas(template.formula),
        template.ask,
        'Your answer',
        at('number'),
      );
      return {
        elements: [field.element],
        raw: read,
        kept: () => read(false) ?? (field.typed() || undefined),
        put: (raw) => put(typeof raw === 'string' ? raw : ''),
        focus: field.focus,
        wanting: '',
      };
    }
  }
};
