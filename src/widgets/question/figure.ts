import type { Sheet } from '../../drawing/sheet.ts';
import type { Style } from '../../formula/notation/write.ts';
import type { Formula } from '../../formula/record.ts';
import { readingTable, type ReadingTable } from '../../exercises/reading-table.ts';
import type { Givens, Template } from '../../exercises/template.ts';
import type { Variant } from '../../exercises/variant.ts';
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

const tableElement = ({ caption, head, rows }: ReadingTable): Element => {
  const table = make('table', '', { class: 'data-table' });
  const [corner = '', ...columns] = head;
  const line = make('tr', '');
  line.append(
    make('td', corner),
    ...columns.map((text) => make('th', text, { scope: 'col', class: 'number' })),
  );
  const top = make('thead', '');
  top.append(line);
  const body = make('tbody', '');
  for (const [name = '', ...cells] of rows) {
    const row = make('tr', '');
    row.append(
      make('th', name, { scope: 'row' }),
      ...cells.map((text) => make('td', text, { class: 'number' })),
    );
    body.append(row);
  }
  table.append(make('caption', caption), top, body);
  return table;
};

/** What a reading exercise is read from: a table worked out here, or a drawing made when the site was built. */
export const figureOf = async (
  variant: Variant<Extract<Template, { kind: 'reading' }>>,
  formula: Formula,
  style: Style,
): Promise<Element> => {
  const { template, drawn, say } = variant;
  const { figure, id } = template;
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
  frame.append(tableElement(readingTable(variant, formula, style)));
  return frame;
};
