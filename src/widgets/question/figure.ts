import type { Sheet } from '../../drawing/sheet.ts';
import { evaluateText } from '../../formula/evaluate.ts';
import type { Style } from '../../formula/notation/write.ts';
import { readInput } from '../../formula/read.ts';
import { idOf, type Formula, type Input } from '../../formula/record.ts';
import { sayInput } from '../../formula/show.ts';
import { askedOf, withNames, type Variant } from '../../exercises/variant.ts';
import type { Figure, Givens, Template } from '../../exercises/template.ts';
import { make } from '../parts/dom.ts';
import { elementOf } from '../parts/marks.ts';

const SVG = 'http://www.w3.org/2000/svg';

/** A drawing as it was made when the site was built: without words, since a plate’s own would say the answer. */
type Picture = Omit<Sheet, 'says' | 'table'>;

/** The same for a reader who writes a comma: a drawing differs in nothing else. */
export const withCommas = (picture: Picture): Picture => ({
  ...picture,
  marks: picture.marks.map((mark) =>
    mark.kind === 'text' ? { ...mark, text: mark.text.replaceAll(/(?<=\d)\.(?=\d)/g, ',') } : mark,
  ),
});

/** A drawing as it stands on a plate, for looking at. */
const drawing = ({ width, height, marks }: Picture, says: string): Element => {
  const svg = make('svg', '', { viewBox: `0 0 ${width} ${height}`, width: String(width), height: String(height), role: 'img', 'aria-label': says }, SVG); // prettier-ignore
  const lines = make('g', '', { 'aria-hidden': 'true' }, SVG);
  for (const mark of marks) {
    const { name, attributes } = elementOf(mark);
    lines.append(make(name, mark.kind === 'text' ? mark.text : '', attributes, SVG));
  }
  svg.append(lines);
  return svg;
};

type Pictures = Readonly<Record<string, Picture>>;

/** All drawings of an exercise in one system of units; fetched once, however many of a class read from them. */
const fetched = new Map<string, Promise<Pictures>>();

const fetchPictures = async (file: string): Promise<Pictures> => {
  const response = await fetch(
    `${import.meta.env.BASE_URL.replace(/\/?$/, '/')}figures/${file}.json`,
  );
  if (!response.ok) throw new Error(`The drawing could not be fetched (${response.status}).`);
  return response.json() as Promise<Pictures>;
};

/** The drawings of an exercise in the reader’s system of units, by what was drawn. */
export const picturesOf = (template: string, style: Style): Promise<Pictures> => {
  const file = style.system === 'imperial' ? `${template}-imperial` : template;
  let coming = fetched.get(file);
  if (!coming) {
    coming = fetchPictures(file);
    fetched.set(file, coming);
    // What failed once is tried again.
    coming.catch(() => fetched.delete(file));
  }
  return coming;
};

/** Of an exercise’s drawings the one for these numbers. */
export const pictureIn = (pictures: Pictures, drawn: Givens, style: Style): Picture => {
  const picture = pictures[Object.values(drawn).join('/')];
  if (!picture) throw new Error('There is no drawing for these numbers.');
  return style.decimal === 'comma' ? withCommas(picture) : picture;
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
  const { name } = askedOf(formula, result);
  const sentence = `${name.charAt(0).toUpperCase()}${name.slice(1)}. Down: ${rows.label ?? rows.name}. Across: ${columns.label ?? columns.name}.`;
  table.append(make('caption', sentence));
  const head = make('tr', '');
  head.append(
    make('td', ''),
    ...across.values.map((text) =>
      make('th', say(columns, text), { scope: 'col', class: 'number' }),
    ),
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
      line.append(make('td', results[result]?.text ?? '', { class: 'number' }));
    }
    body.append(line);
  }
  table.append(top, body);
  return table;
};

/** What a reading exercise is read from: a table worked out here, or a drawing made when the site was built. */
export const figureOf = async (
  { template, drawn, say }: Variant<Extract<Template, { kind: 'reading' }>>,
  formula: Formula,
  style: Style,
): Promise<Element> => {
  const { figure, ask, id } = template;
  if (figure.show === 'drawing') {
    const frame = make('figure', '', { class: 'drawing' });
    frame.append(
      drawing(pictureIn(await picturesOf(id, style), drawn, style), say(figure.says ?? '', style)),
    );
    return frame;
  }
  // A wide table is scrolled by keyboard, too.
  const frame = make('div', '', {
    class: 'table-frame',
    role: 'region',
    tabindex: '0',
    'aria-label': 'Table to read from',
  });
  frame.append(grid(formula, withNames(figure.given, drawn), figure, ask, style));
  return frame;
};
