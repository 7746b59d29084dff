import type { Sheet } from '../../drawing/sheet.ts';
import { evaluateText } from '../../formula/evaluate.ts';
import { compute } from '../../formula/compute.ts';
import type { Style } from '../../formula/notation/write.ts';
import { complete, readInput } from '../../formula/read.ts';
import { idOf, type Formula, type Value } from '../../formula/record.ts';
import { sayInput } from '../../formula/show.ts';
import { withNames } from '../../exercises/variant.ts';
import type { Figure, Givens } from '../../exercises/template.ts';
import type { Draw } from '../parts/calculator.ts';
import { make } from '../parts/dom.ts';
import { elementOf } from '../parts/marks.ts';

const SVG = 'http://www.w3.org/2000/svg';

const drawings = import.meta.glob<{ readonly draw: Draw }>('../../drawing/*.ts');

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

const valuesOf = (formula: Formula, given: Givens): Record<string, Value> => {
  const values: Record<string, Value> = {};
  for (const [key, input] of Object.entries(formula.inputs)) {
    const text = given[idOf(input)];
    if (text !== undefined) values[key] = readInput(input, text, { stored: true });
  }
  return complete(formula, values);
};

const inputOf = (formula: Formula, id: string) => {
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
  const say = (input: typeof rows, text: string): string =>
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

/** What a reading exercise is read from. */
export const figureOf = async (
  figure: Figure,
  drawn: Givens,
  formula: Formula,
  result: string,
  style: Style,
): Promise<Element> => {
  const frame = make('figure', '', {
    class: figure.show === 'drawing' ? 'drawing' : 'table-frame',
  });
  const given = withNames(figure.given, drawn);
  if (figure.show === 'table') frame.append(grid(formula, given, figure, result, style));
  else {
    const load = drawings[`../../drawing/${figure.formula}.ts`];
    if (!load) throw new Error(`There is no drawing of ${figure.formula}.`);
    const { draw } = await load();
    const values = valuesOf(formula, given);
    frame.append(picture(draw(values, compute(formula, values), style), formula.title));
  }
  return frame;
};
