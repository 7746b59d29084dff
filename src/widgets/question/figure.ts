import type { Sheet } from '../../drawing/sheet.ts';
import { evaluateText } from '../../formula/evaluate.ts';
import type { Style } from '../../formula/notation/write.ts';
import { readInput } from '../../formula/read.ts';
import { idOf, type Formula, type Input } from '../../formula/record.ts';
import { sayInput } from '../../formula/show.ts';
import { withNames, type Variant } from '../../exercises/variant.ts';
import type { Figure, Givens, Template } from '../../exercises/template.ts';
import { make } from '../parts/dom.ts';
import { elementOf } from '../parts/marks.ts';

const SVG = 'http://www.w3.org/2000/svg';

/** A drawing as it stands on a plate, for looking at. */
const picture = ({ width, height, marks, says }: Sheet, title: string): Element => {
  const svg = make('svg', '', { viewBox: `0 0 ${width} ${height}`, width: String(width), height: String(height), role: 'img', 'aria-label': `${title}, drawn to scale. ${says}` }, SVG); // prettier-ignore
  const lines = make('g', '', { 'aria-hidden': 'true' }, SVG);
  for (const mark of marks) {
    const { name, attributes } = elementOf(mark);
    lines.append(make(name, mark.kind === 'text' ? mark.text : '', attributes, SVG));
  }
  svg.append(lines);
  return svg;
};

/** All drawings of an exercise, by its id; fetched once, however many of a class read from them. */
const fetched = new Map<string, Promise<Readonly<Record<string, Sheet>>>>();

const fetchSheets = async (template: string): Promise<Readonly<Record<string, Sheet>>> => {
  const response = await fetch(
    `${import.meta.env.BASE_URL.replace(/\/?$/, '/')}figures/${template}.json`,
  );
  if (!response.ok) throw new Error(`The drawing could not be fetched (${response.status}).`);
  return response.json() as Promise<Readonly<Record<string, Sheet>>>;
};

/** The drawing for one set of numbers. */
export const sheetOf = async (template: string, drawn: Givens): Promise<Sheet> => {
  let coming = fetched.get(template);
  if (!coming) {
    coming = fetchSheets(template);
    fetched.set(template, coming);
    // What failed once is tried again.
    coming.catch(() => fetched.delete(template));
  }
  const sheets = await coming;
  const sheet = sheets[Object.values(drawn).join('/')];
  if (!sheet) throw new Error(`There is no drawing for these numbers of ${template}.`);
  return sheet;
};

const inputOf = (formula: Formula, id: string): Input => {
  const input = Object.values(formula.inputs).find((one) => idOf(one) === id);
  if (!input) throw new Error(`${formula.id} has no input “${id}”.`);
  return input;
};

const grid = (
  formula: Formula,
  given: Givens,
  { down, across }: Figure,
  result: string,
  style: Style,
): Element => {
  if (!down || !across) throw new Error('A table needs what goes down and across.');
  const [rows, columns] = [inputOf(formula, down.input), inputOf(formula, across.input)];
  const say = (input: Input, text: string): string =>
    sayInput(input, readInput(input, text, { stored: true }), style);
  const table = make('table', '', { class: 'data-table' });
  table.append(
    make('caption', `Down: ${rows.label ?? rows.name}. Across: ${columns.label ?? columns.name}.`),
  );
  const head = make('tr', '');
  head.append(
    make('td', ''),
    ...across.values.map((text) => make('th', say(columns, text), { scope: 'col' })),
  );
  const top = make('thead', '');
  top.append(head);
  const body = make('tbody', '');
  for (const row of down.values) {
    const line = make('tr', '');
    line.append(make('th', say(rows, row), { scope: 'row' }));
    for (const column of across.values) {
      const here = { ...given, [down.input]: row, [across.input]: column };
      const { results } = evaluateText(formula, Object.entries(here), style);
      line.append(make('td', results[result]?.text ?? ''));
    }
    body.append(line);
  }
  table.append(top, body);
  return table;
};

/** What a reading exercise is read from: a table worked out here, or a drawing made when the site was built. */
export const figureOf = async (
  { template, drawn }: Variant<Extract<Template, { kind: 'reading' }>>,
  formula: Formula,
  style: Style,
): Promise<Element> => {
  const { figure, ask, id } = template;
  const frame = make('figure', '', {
    class: figure.show === 'drawing' ? 'drawing' : 'table-frame',
  });
  frame.append(
    figure.show === 'table'
      ? grid(formula, withNames(figure.given, drawn), figure, ask, style)
      : picture(await sheetOf(id, drawn), formula.title),
  );
  return frame;
};
