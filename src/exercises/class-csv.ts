import type { Assignment } from './assignment.ts';
import type { ItemStatistics, Row } from './desk.ts';
import type { Work } from './result-file.ts';

/** A student’s work with its marks. */
export interface Student {
  readonly work: Work;
  readonly rows: readonly Row[];
}

/** Marks to three decimals: a third stays a third for any gradebook. */
const round = (credit: number): number => Number(credit.toFixed(3));

/** What is counted of a work: the sum of marks, and how many questions wait for a person. */
export const totalOf = (
  rows: readonly Row[],
): { readonly total: number; readonly waiting: number } => ({
  total: rows.reduce((sum, { credit }) => sum + (credit ?? 0), 0),
  waiting: rows.filter(({ credit }) => credit === undefined).length,
});

const rawText = (raw: Row['raw']): string =>
  raw === undefined
    ? ''
    : typeof raw === 'string'
      ? raw
      : Array.isArray(raw)
        ? raw.map((place: number) => String(place + 1)).join(' and ')
        : Object.entries(raw)
            .map(([name, text]) => `${name} ${text}`)
            .join('; ');

/** The class as rows for a file: a student a line, and for each question its answer and its mark. */
export const classRows = (
  { title, items }: Assignment,
  students: readonly Student[],
): readonly (readonly (string | number)[])[] => {
  const names = items.flatMap(({ template, count }) =>
    Array.from({ length: count }, (_, i) => (count > 1 ? `${template} ${i + 1}` : template)),
  );
  const head = ['assignment', 'alias', 'saved', 'total', 'out of', 'waiting for a person'];
  return [
    [...head, ...names.flatMap((name) => [`${name}: answer`, `${name}: mark`, `${name}: note`])],
    ...students.map(({ work, rows }) => {
      const { total, waiting } = totalOf(rows);
      return [
        title,
        work.alias,
        work.saved,
        round(total),
        rows.length,
        waiting,
        ...rows.flatMap(({ raw, credit, override }) => [
          rawText(raw),
          credit === undefined ? '' : round(credit),
          override?.note ?? '',
        ]),
      ];
    }),
  ];
};

/**
 * The items as rows for a file.
 * @param sayTurn the wrong turn of a row in words
 */
export const itemRows = (
  items: readonly ItemStatistics[],
  sayTurn: (row: Row) => string | undefined,
): readonly (readonly (string | number)[])[] => [
  [
    'question',
    'exercise',
    'answered',
    'waiting for a person',
    'mean mark',
    'item-rest correlation',
    'commonest wrong turn',
    'times',
  ],
  ...items.map(({ template, answered, waiting, easiness, itemRest, commonestTurn }, at) => [
    at + 1,
    template,
    answered,
    waiting,
    easiness === undefined ? '' : round(easiness),
    itemRest === undefined ? '' : round(itemRest),
    commonestTurn === undefined ? '' : (sayTurn(commonestTurn.row) ?? ''),
    commonestTurn?.times ?? '',
  ]),
];
