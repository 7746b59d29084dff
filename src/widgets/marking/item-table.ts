import { ofHundred } from '../../exercises/copies/told.ts';
import { ENOUGH, sayTurn, type ItemStatistics, type Tools } from '../../exercises/desk.ts';
import { LONGEST_TOLERANCE } from '../../exercises/rulings.ts';
import { make, setText } from '../parts/dom.ts';

/** The questions on the page, with what the class made of each. */
export interface ItemTable {
  readonly element: Element;
  readonly paint: (items: readonly ItemStatistics[]) => void;
  /** Writes a tolerance into its field, with what is wrong with it. */
  readonly put: (template: string, text: string, wrong: string) => void;
}

/** How to read the table, for before it. */
export const READING = `The lower the mean mark, the harder the question. Its correlation with the rest of the work stands here from ${ENOUGH} files on, for what is judged in all of them: near 1, whoever does well elsewhere does well here; near 0 or below, look at the question. Another tolerance, such as 5 % or 1/3 stop, marks all again at once.`;

const HEADS = [
  'Question',
  'Answered',
  'Mean mark',
  'With the rest',
  'Commonest wrong turn',
  'Tolerance',
];

/**
 * @param templates of each question, in order
 * @param changed called with a tolerance as it was typed
 */
export const itemTable = (
  templates: readonly string[],
  tools: Tools,
  changed: (template: string, text: string) => void,
): ItemTable => {
  const frame = make('div', '', {
    class: 'desk-items',
    tabindex: '0',
    role: 'region',
    'aria-label': 'The questions',
  });
  const table = make('table', '', { class: 'data-table' });
  const head = make('tr', '');
  head.append(...HEADS.map((name) => make('th', name, { scope: 'col' })));
  const top = make('thead', '');
  top.append(head);
  const body = make('tbody', '');
  const fields = new Map<string, readonly [HTMLInputElement, Element]>();
  const lines = templates.map((id, at) => {
    const template = tools.templates.get(id);
    const line = make('tr', '');
    const cells = HEADS.slice(1).map((name) =>
      make('td', '', name === 'Commonest wrong turn' ? { class: 'desk-turn' } : {}),
    );
    line.append(make('th', `${at + 1} ${template?.title ?? id}`, { scope: 'row' }), ...cells);
    body.append(line);
    const place = cells.at(-1);
    const first = templates.indexOf(id);
    if (template && 'ask' in template && first < at) place?.append(`as question ${first + 1}`);
    if (template && 'ask' in template && first === at) {
      const note = `desk-tolerance-${at}`;
      const input = make('input', '', {
        class: 'field-value',
        type: 'text',
        'aria-label': `Tolerance of question ${at + 1}`,
        'aria-describedby': note,
        placeholder: 'as set',
        autocomplete: 'off',
        maxlength: String(LONGEST_TOLERANCE),
      }) as HTMLInputElement;
      const wrong = make('p', '', { class: 'field-error', id: note });
      input.addEventListener('change', () => changed(id, input.value));
      place?.append(input, wrong);
      fields.set(id, [input, wrong]);
    }
    return cells;
  });
  table.append(top, body);
  frame.append(table);

  return {
    element: frame,
    paint: (items) =>
      items.forEach(({ answered, waiting, easiness, itemRest, commonestTurn }, at) => {
        const turn = commonestTurn && sayTurn(commonestTurn.row, tools);
        const texts = [
          String(answered),
          // A mean of what happens to be judged already would say more about the judging.
          waiting > 0 ? `${waiting} to judge` : easiness === undefined ? '–' : ofHundred(easiness),
          itemRest === undefined ? '–' : itemRest.toFixed(2).replace('-', '−'),
          turn === undefined
            ? '–'
            : `${turn.trim().replaceAll('*', '')} (${commonestTurn?.times ?? 0})`,
        ];
        texts.forEach((text, column) => setText(lines[at]?.[column] ?? null, text));
      }),
    put: (template, text, wrong) => {
      const [input, note] = fields.get(template) ?? [];
      if (input && input.value !== text) input.value = text;
      input?.toggleAttribute('aria-invalid', wrong !== '');
      setText(note ?? null, wrong);
    },
  };
};
