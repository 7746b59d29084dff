import type { Assignment } from '../../exercises/assignment.ts';
import { classRows, itemRows, type Student } from '../../exercises/class-csv.ts';
import { namer, Pack } from '../../exercises/copies/pack.ts';
import { pageOf } from '../../exercises/copies/page.ts';
import { tell } from '../../exercises/copies/told.ts';
import { sayTurn, type ItemStatistics, type Tools } from '../../exercises/desk.ts';
import { figureOf, type Shown } from '../../exercises/export/figure.ts';
import { svgOf } from '../../exercises/export/svg.ts';
import type { Tolerance } from '../../exercises/span.ts';
import { csv, MARK, type CsvForm } from '../../tabulate/csv.ts';
import { make } from '../parts/dom.ts';
import { inSlices } from '../parts/slices.ts';
import { pictureIn, picturesOf } from '../question/figure.ts';
import { download } from '../parts/download.ts';
import { answerParts } from './answer.ts';
import { totalText } from './class-table.ts';

/** What an instructor takes away from the desk; fetched when something is. */

/** A class as it is marked by now. */
export interface Class {
  readonly assignment: Assignment;
  readonly students: readonly Student[];
  readonly items: readonly ItemStatistics[];
  readonly tools: Tools;
  readonly tolerances: ReadonlyMap<string, Tolerance>;
}

const forms: Readonly<Record<'comma' | 'semicolon', CsvForm>> = {
  comma: { separator: ',', decimal: 'point' },
  semicolon: { separator: ';', decimal: 'comma' },
};

const saveCsv = (
  name: string,
  rows: readonly (readonly (string | number)[])[],
  form: keyof typeof forms,
): void =>
  download(
    `${name}${form === 'comma' ? '' : '-semicolon'}.csv`,
    MARK + csv(rows, forms[form]),
    'text/csv',
  );

export const saveMarks = ({ assignment, students }: Class, form: keyof typeof forms): void =>
  saveCsv('marks', classRows(assignment, students), form);

export const saveQuestions = ({ items, tools }: Class, form: keyof typeof forms): void =>
  saveCsv(
    'questions',
    itemRows(items, (row) => sayTurn(row, tools)?.trim()),
    form,
  );

/** Sets a marked copy of each student out in the page that prints them; whole once its drawings are there. */
export const setOutCopies = async (
  { assignment, students, tools, tolerances }: Class,
  place: Element,
  heard: (done: number) => void,
): Promise<void> => {
  const waits: Promise<unknown>[] = [];
  const made = await inSlices(
    students,
    ({ work, rows }) => {
      const copy = make('section', '', { class: 'desk-copy' });
      copy.append(
        make('h2', `${assignment.title}: ${work.alias}`),
        make('p', `${totalText(rows)}.`),
        ...rows.map((row, at) =>
          answerParts(row, at + 1, tools, tolerances.get(row.question.template), waits),
        ),
      );
      return copy;
    },
    (done) => {
      heard(done);
      return true;
    },
  );
  await Promise.all(waits);
  place.replaceChildren(...(made ?? []));
};

/** Saves a zip with a marked copy for each student, as a page of its own. */
export const saveCopies = async (
  { assignment, students, tools, tolerances }: Class,
  heard: (done: number) => void,
): Promise<void> => {
  const drawings = new Map<string, Awaited<ReturnType<typeof picturesOf>>>();
  await Promise.all(
    [...tools.templates.values()].map(async (template) => {
      if (template.kind === 'reading' && template.figure.show === 'drawing')
        drawings.set(template.id, await picturesOf(template.id, tools.style ?? {}));
    }),
  );
  const figure = (reading: ReturnType<typeof tell>['reading']): Shown | undefined =>
    reading &&
    figureOf(
      reading,
      tools.formulas,
      (_formula, _given, says) => {
        const pictures = drawings.get(reading.template.id) ?? {};
        return svgOf(pictureIn(pictures, reading.drawn, tools.style ?? {}), says);
      },
      tools.style ?? {},
    );
  const pack = new Pack();
  const name = namer();
  await inSlices(
    students,
    ({ work: { alias }, rows }) => {
      const questions = rows.map((row) => {
        const told = tell(row, tools, tolerances.get(row.question.template));
        return { told, figure: figure(told.reading) };
      });
      pack.add(
        `${name(alias)}.html`,
        pageOf({ assignment: assignment.title, alias, total: totalText(rows), questions }),
      );
    },
    (done) => {
      heard(done);
      return true;
    },
  );
  download(`${namer()(assignment.title)}-marked.zip`, pack.bytes(), 'application/zip');
};
