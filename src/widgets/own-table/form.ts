import { spelt } from '../../formula/notation/spelt.ts';
import { unitFor } from '../../formula/notation/write.ts';
import { idOf, isChoice, type ChoiceInput } from '../../formula/record.ts';
import type { Unit } from '../../formula/units.ts';
import { SPAN, type Part, type Trouble } from './axis.ts';
import { RESULTS } from './link.ts';
import type { Axis, OwnState, Side } from './own-state.ts';
import { el, type Branch } from './tree.ts';
import { capital, fixedLine } from './words.ts';

/** Signs that stand for a unit in a field's margin, as plates have them. */
const SIGN: Partial<Record<Unit, string>> = { deg: '°', stop: 'stops', '1': '', 'f/': '', count: '', ISO: '' }; // prettier-ignore

const note = (id: string, trouble: Trouble | undefined, echo = ''): Branch =>
  el(
    'p',
    { class: trouble ? 'field-error' : 'field-echo', id },
    trouble?.message ?? echo,
    trouble?.readings.flatMap((reading) => [
      ' ',
      el('button', { type: 'button', class: 'tool', 'data-read': reading }, reading),
    ]),
  );

const option = (value: string, text: string, chosen: boolean): Branch =>
  el('option', { value, selected: chosen ? '' : undefined }, text);

const PARTS: Readonly<Record<Part, string>> = {
  from: 'From',
  to: 'To',
  step: 'Step',
  list: 'Values',
};

/** One text field, its unit and what is to be said of it. */
const textField = (
  id: string,
  label: string,
  {
    text,
    unit,
    trouble,
    echo = '',
    placeholder = '',
    part,
    wide,
  }: {
    readonly text: string;
    readonly unit: string;
    readonly trouble: Trouble | undefined;
    readonly echo?: string;
    readonly placeholder?: string;
    readonly part?: Part;
    readonly wide?: boolean;
  },
  data: Readonly<Record<string, string>> = {},
): Branch =>
  el(
    'div',
    { class: 'field', 'data-wrong': trouble ? '' : undefined, 'data-part': part, ...data },
    el(
      'div',
      { class: 'field-line' },
      el('label', { class: 'field-name', for: id }, label),
      el('input', {
        class: wide ? 'field-value wide-value' : 'field-value',
        id,
        type: 'text',
        inputmode: wide ? 'text' : 'decimal',
        autocomplete: 'off',
        autocapitalize: 'off',
        spellcheck: 'false',
        value: text,
        placeholder: placeholder === '' ? undefined : placeholder,
        'aria-invalid': trouble ? 'true' : undefined,
        'aria-describedby': `${id}-note`,
      }),
      el('span', { class: 'field-unit' }, unit),
    ),
    note(`${id}-note`, trouble, echo),
  );

const labelOf = (input: ChoiceInput, id: string): string =>
  input.labels?.[id] ?? id.replace(/(?<=\d) ?x(?=\d)/, ' × ');

/** The values along a side: ticks for choices, else three fields or one. */
const seriesFields = (state: OwnState, side: Side, axis: Axis): readonly Branch[] => {
  const input = state.input(axis.key);
  const id = `own-${side}`;
  if (isChoice(input)) {
    const ticked = (axis.texts.list ?? '').split(';').map((one) => one.trim());
    const own = ticked.filter((one) => one !== '' && !Object.hasOwn(input.choices, one));
    return [
      el(
        'div',
        { class: 'choice', role: 'group', 'aria-label': `Which ${spelt(input)}`, id: `${id}-ticks-${axis.key}` }, // prettier-ignore
        [...Object.keys(input.choices), ...own].map((one) =>
          el(
            'label',
            {},
            el('input', {
              type: 'checkbox',
              value: one,
              'data-tick': one,
              checked: ticked.includes(one) ? '' : undefined,
            }),
            labelOf(input, one),
          ),
        ),
      ),
      note(`${id}-list-note`, axis.troubles.list),
    ];
  }
  const unit = unitFor(input.unit, input.imperial, state.style);
  const parts: readonly Part[] = axis.how === 'span' ? SPAN : ['list'];
  const radio = (how: Axis['how'], words: string): Branch =>
    el(
      'label',
      {},
      el('input', { type: 'radio', name: `${id}-how`, value: how, checked: axis.how === how ? '' : undefined }), // prettier-ignore
      words,
    );
  return [
    el(
      'div',
      { class: 'choice', role: 'group', 'aria-label': `How ${side} is given`, id: `${id}-how` },
      radio('span', 'from, to, step'),
      radio('list', 'a list'),
    ),
    el(
      'div',
      { class: `series series-${axis.how}`, id: `${id}-${axis.how}-${axis.key}` },
      parts.map((part) =>
        textField(`${id}-${part}`, PARTS[part], {
          text: axis.texts[part] ?? '',
          unit: SIGN[unit] ?? unit,
          trouble: axis.troubles[part],
          part,
          wide: part === 'list',
        }),
      ),
    ),
  ];
};

const side = (state: OwnState, name: Side): Branch => {
  const axis = state.axis(name);
  const keys = state.runnable();
  return el(
    'fieldset',
    { class: 'side', 'data-side': name },
    el('legend', {}, capital(name)),
    el(
      'div',
      { class: 'field-line' },
      el('label', { class: 'field-name', for: `own-${name}-input` }, name === 'down' ? 'What goes down' : 'What goes across'), // prettier-ignore
      el(
        'select',
        { class: 'field-value', id: `own-${name}-input`, 'data-turn': '', autocomplete: 'off' },
        name === 'across' && option(RESULTS, 'several results', axis === undefined),
        keys.map((key) => option(key, spelt(state.input(key)), axis?.key === key)),
      ),
    ),
    axis
      ? seriesFields(state, name, axis)
      : el('p', { class: 'hint' }, 'A column for each result ticked below.'),
  );
};

/** What can be chosen about the two sides and the results. */
export const sidesOf = (state: OwnState): readonly Branch[] => [
  side(state, 'down'),
  side(state, 'across'),
  el(
    'fieldset',
    { class: 'shown' },
    el('legend', {}, 'Shown'),
    el(
      'div',
      { class: 'choice', id: `own-shown-${state.formula.id}` },
      Object.entries(state.formula.outputs).map(([key, output]) =>
        el(
          'label',
          {},
          el('input', {
            type: 'checkbox',
            'data-show': key,
            checked: state.show.includes(key) ? '' : undefined,
          }),
          spelt(output),
        ),
      ),
    ),
  ),
];

/** The line that says what stays the same, before anyone opens the fields. */
export const fixedSummary = (state: OwnState): string => {
  const keys = state.fixed();
  const line = fixedLine(state, keys, state.plate.given);
  return line === '' ? 'Nothing else has to be given' : `The same in every cell: ${line}`;
};

/** The fields of all that stays the same. */
export const fixedFields = (state: OwnState): readonly Branch[] =>
  state.fixed().map((key) => {
    const input = state.input(key);
    const view = state.plate.field(key);
    const id = `own-fixed-${idOf(input)}`;
    const label = capital(spelt(input));
    if (!isChoice(input))
      return textField(
        id,
        label,
        { text: view.text, unit: view.unit, trouble: view.trouble, echo: view.echo, placeholder: view.placeholder }, // prettier-ignore
        { 'data-fixed': key, id: `own-at-${idOf(input)}` },
      );
    const ids = Object.keys(input.choices);
    const own = Object.hasOwn(input.choices, view.text) ? [] : [view.text];
    return el(
      'div',
      { class: 'field', 'data-fixed': key, id: `own-at-${idOf(input)}` },
      el(
        'div',
        { class: 'field-line' },
        el('label', { class: 'field-name', for: id }, label),
        el(
          'select',
          { class: 'field-value', id, autocomplete: 'off', 'aria-describedby': `${id}-note` },
          [...ids, ...own].map((one) => option(one, labelOf(input, one), one === view.text)),
        ),
      ),
      note(`${id}-note`, view.trouble),
    );
  });
