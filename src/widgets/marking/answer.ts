import { overrideKey, type Override, type Row } from '../../exercises/desk.ts';
import type { Template } from '../../exercises/template.ts';
import { keyOf, variantOf, type Variant } from '../../exercises/variant.ts';
import type { Asking } from '../../exercises/template.ts';
import { writeQuantity } from '../../formula/notation/write.ts';
import { make } from '../parts/dom.ts';
import { leaning, paragraphs } from '../question/prose.ts';
import { verdictText } from '../question/verdict.ts';
import type { Tools } from './load.ts';

/** A credit in hundredths, as the desk writes it. */
export const percent = (credit: number | undefined): string =>
  credit === undefined ? '?' : `${Math.round(credit * 100)}`;

const answerText = (row: Row, template: Template, variant: Variant): string => {
  const { raw } = row;
  if (raw === undefined) return 'not answered';
  if (typeof raw === 'string') return raw;
  if (Array.isArray(raw))
    return 'options' in template
      ? raw.map((place: number) => variant.say(template.options[place]?.text ?? '?')).join('; ')
      : raw.join(', ');
  return Object.entries(raw as Readonly<Record<string, string>>)
    .map(([name, text]) =>
      name === 'line' && 'lines' in template
        ? `line ${Number(text) + 1}`
        : `${name.replaceAll('-', ' ')} ${text}`,
    )
    .join('; ');
};

const keyText = (template: Template, variant: Variant, { formulas }: Tools): string => {
  if (template.kind === 'choice')
    return template.options
      .filter(({ right }) => right)
      .map(({ text }) => variant.say(text))
      .join('; ');
  if (!('ask' in template)) return 'anything that keeps the brief, or that a person judges good';
  const { value, asked } = keyOf(variant as Variant<Extract<Template, Asking>>, formulas);
  const number = writeQuantity(value, asked.unit, { significant: 4 }, {});
  const line = template.kind === 'mistake' ? template.lines.findIndex(({ wrong }) => wrong) : -1;
  return line < 0 ? number : `line ${line + 1}; ${number}`;
};

/** Question, answer, key and verdict of one row, as a list for screen and paper. */
export const answerParts = (row: Row, tools: Tools): readonly Element[] => {
  const template = tools.templates.get(row.question.template);
  if (template?.version !== row.question.version)
    return [
      make(
        'p',
        'This exercise is not in this edition of the site, or has another version: judge it by hand.',
      ),
    ];
  const variant = variantOf(template, tools.formulas, row.question.seed);
  const list = make('dl', '');
  const add = (name: string, text: string): void => {
    list.append(make('dt', name), make('dd', text));
  };
  add('Answer', answerText(row, template, variant));
  add('Key', keyText(template, variant, tools));
  if (row.marked) add('Verdict', verdictText(row.marked));
  if (row.marked?.verdict.kind === 'design')
    for (const held of row.marked.verdict.held)
      add(held.kept ? 'Kept' : 'Not kept', `${held.say} ${held.refusal ?? held.came}`);
  if (row.marked?.gap?.kind === 'compared') {
    const { asked, computed, measured, gap, inStops } = row.marked.gap;
    const write = (si: number): string => writeQuantity(si, asked.unit, asked.digits ?? 3, {});
    add(
      'Compared',
      `measured ${write(measured)}, computed ${write(computed)}: ${inStops ? `${gap.toFixed(2)} stops` : `${(gap * 100).toFixed(1)} %`} apart`,
    );
  }
  if (row.hints > 0) add('Hints taken', String(row.hints));
  add('Mark', row.credit === undefined ? 'waits for you' : `${percent(row.credit)} of 100`);
  if (row.override) add('Your note', row.override.note || 'none');
  return [make('h4', template.title), ...paragraphs(variant.say(template.text)), list];
};

/** The form with which an instructor decides by hand; for a practical brief with its rubric. */
export const overrideForm = (
  row: Row,
  alias: string,
  tools: Tools,
  decide: (key: string, override: Override | undefined) => void,
): Element => {
  const template = tools.templates.get(row.question.template);
  const form = make('form', '', { class: 'fields' }) as HTMLFormElement;
  const field = (id: string, label: string, value: string): HTMLInputElement => {
    const wrap = make('div', '', { class: 'field' });
    const line = make('div', '', { class: 'field-line' });
    const input = make('input', '', {
      class: 'field-value',
      id,
      type: 'text',
      autocomplete: 'off',
    }) as HTMLInputElement;
    input.value = value;
    line.append(make('label', label, { class: 'field-name', for: id }), input);
    wrap.append(line);
    form.append(wrap);
    return input;
  };
  const key = overrideKey(alias, row.question);
  const credit = field(
    'desk-credit',
    'Mark, of 100',
    row.override ? percent(row.override.credit) : '',
  );
  const note = field('desk-note', 'Note to the student', row.override?.note ?? '');
  if (template?.kind === 'practical') {
    const out = template.rubric.reduce((sum, { points }) => sum + points, 0);
    const set = make('fieldset', '', { class: 'field options' });
    set.append(make('legend', `Rubric, ${out} points`, { class: 'field-name' }));
    const boxes = template.rubric.map(({ text, points }) => {
      const label = make('label', '', { class: 'option' });
      const box = make('input', '', { type: 'checkbox' }) as HTMLInputElement;
      const words = make('span', '');
      words.append(...leaning(`${text} (${points})`));
      label.append(box, words);
      set.append(label);
      box.addEventListener('change', () => {
        const got = boxes.reduce((sum, one) => sum + (one.box.checked ? one.points : 0), 0);
        credit.value = String(Math.round((100 * got) / out));
      });
      return { box, points };
    });
    form.append(set);
  }
  const tools_ = make('div', '', { class: 'plate-tools' });
  const wrong = make('p', '', { class: 'field-error' });
  const clear = make('button', 'Back to the worked mark', { type: 'button', class: 'tool' });
  clear.addEventListener('click', () => decide(key, undefined));
  tools_.append(
    make('button', 'Set this mark', { type: 'submit', class: 'tool tool-main' }),
    clear,
  );
  form.append(tools_, wrong);
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    const typed = Number(credit.value.trim().replace(',', '.').replace(/ ?%$/, ''));
    if (credit.value.trim() === '' || !(typed >= 0 && typed <= 100)) {
      wrong.textContent = `The mark must be between 0 and 100; you typed ${credit.value.slice(0, 20) || 'nothing'}.`;
      credit.focus();
      return;
    }
    decide(key, { credit: typed / 100, note: note.value.trim().slice(0, 500) });
  });
  return form;
};
