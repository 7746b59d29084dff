import { ofHundred, tell } from '../../exercises/copies/told.ts';
import type { Row, Tools } from '../../exercises/desk.ts';
import { LONGEST_NOTE } from '../../exercises/rulings.ts';
import type { Tolerance } from '../../exercises/span.ts';
import { make } from '../parts/dom.ts';
import { figureOf } from '../question/figure.ts';
import { leaning, paragraphs } from '../question/prose.ts';

/** What the instructor decides about an answer; undefined takes a decision back. */
export type Decision = { readonly credit: number; readonly note: string } | undefined;

/**
 * One marked answer as a section, for screen and paper.
 * @param waits gets what has still to come: drawings are fetched
 */
export const answerParts = (
  row: Row,
  number: number,
  tools: Tools,
  tolerance: Tolerance | undefined,
  waits: Promise<unknown>[],
): Element => {
  const { title, text, list: given, facts, reading } = tell(row, tools, tolerance);
  const part = make('section', '', { class: 'desk-question' });
  part.append(make('h4', `${number} ${title}`), ...paragraphs(text));
  if (given.texts.length > 0) {
    const items = make(given.numbered ? 'ol' : 'ul', '');
    for (const one of given.texts) {
      const item = make('li', '');
      item.append(...leaning(one));
      items.append(item);
    }
    part.append(items);
  }
  if (reading) {
    const place = make('div', '', { class: 'desk-figure' });
    part.append(place);
    const formula = tools.formulas(reading.template.figure.formula);
    waits.push(
      figureOf(reading, formula, tools.style ?? {}).then(
        (figure) => place.append(figure),
        (error: unknown) => place.append(error instanceof Error ? error.message : String(error)),
      ),
    );
  }
  const list = make('dl', '');
  for (const [name, said] of facts) list.append(make('dt', name), make('dd', said));
  if (row.stale)
    list.append(
      make('dt', 'Mind'),
      make('dd', 'This mark was set on another answer; later work has come since.'),
    );
  part.append(list);
  return part;
};

/** The form with which an instructor decides by hand; for a practical brief with its rubric. */
export const overrideForm = (
  row: Row,
  tools: Tools,
  decide: (decision: Decision) => void,
): Element => {
  const template = tools.templates.get(row.question.template);
  const form = make('form', '', { class: 'desk-decide' }) as HTMLFormElement;
  const field = (id: string, label: string, more: Record<string, string>): HTMLInputElement => {
    const line = make('div', '', { class: 'field-line' });
    const input = make('input', '', {
      class: 'field-value',
      id,
      type: 'text',
      autocomplete: 'off',
      ...more,
    }) as HTMLInputElement;
    line.append(make('label', label, { class: 'field-name', for: id }), input);
    form.append(line);
    return input;
  };
  const credit = field('desk-credit', 'Mark, of 100', {
    inputmode: 'decimal',
    'aria-describedby': 'desk-credit-note',
  });
  const note = field('desk-note', 'Note to the student', { maxlength: String(LONGEST_NOTE) });
  credit.value = row.override ? ofHundred(row.override.credit) : '';
  note.value = row.override?.note ?? '';
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
    form.prepend(set);
  }
  const wrong = make('p', '', { class: 'field-error', id: 'desk-credit-note' });
  const bar = make('div', '', { class: 'plate-tools' });
  bar.append(make('button', 'Set this mark', { type: 'submit', class: 'tool tool-main' }));
  if (row.override) {
    const clear = make('button', 'Back to the worked mark', { type: 'button', class: 'tool' });
    clear.addEventListener('click', () => decide(undefined));
    bar.append(clear);
  }
  form.append(wrong, bar);
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    const typed = Number(credit.value.trim().replace(',', '.').replace(/ ?%$/, ''));
    if (credit.value.trim() === '' || !(typed >= 0 && typed <= 100)) {
      wrong.textContent = `The mark must be between 0 and 100; you typed ${credit.value.slice(0, 20) || 'nothing'}.`;
      credit.setAttribute('aria-invalid', 'true');
      credit.focus();
      return;
    }
    decide({ credit: typed / 100, note: note.value.trim().slice(0, LONGEST_NOTE) });
  });
  return form;
};
