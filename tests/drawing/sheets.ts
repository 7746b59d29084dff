import fc from 'fast-check';
import { InputError } from '~/formula/errors.ts';
import { compute } from '~/formula/compute.ts';
import { complete, readInput } from '~/formula/read.ts';
import { idOf, isChoice, type Formula, type Input, type Value } from '~/formula/record.ts';
import type { Style } from '~/formula/show.ts';
import { factorOf } from '~/formula/units.ts';
import type { Given, Results } from '~/formula/record.ts';
import type { Mark, Role, Sheet } from '~/drawing/sheet.ts';

export type Draw = (given: Given, results: Results, style: Style) => Sheet;
type Path = Extract<Mark, { kind: 'path' }>;

/** Drops all but one group of inputs that stand in for one another: the one asked for, else the first. */
const oneWay = (
  formula: Formula,
  values: Record<string, Value>,
  choose: (groups: readonly (readonly string[])[]) => readonly string[] | undefined,
): Record<string, Value> => {
  const dropped = (formula.ways ?? []).flatMap(({ groups }) => {
    const kept = choose(groups) ?? groups[0];
    return groups.flat().filter((id) => !kept?.includes(id));
  });
  return Object.fromEntries(
    Object.entries(values).filter(([key]) => {
      const input = formula.inputs[key];
      return input !== undefined && !dropped.includes(idOf(input));
    }),
  );
};

/** The values a plate shows first, with some of them typed otherwise; '' leaves an optional one out. */
export const valuesOf = (formula: Formula, typed: Readonly<Record<string, string>> = {}): Given => {
  const values: Record<string, Value> = {};
  for (const [key, input] of Object.entries(formula.inputs)) {
    const text = typed[idOf(input)];
    if (text === '') continue;
    if (text !== undefined) values[key] = readInput(input, text, { stored: true });
    else if (isChoice(input)) values[key] = readInput(input, input.start);
    else if (typeof input.default !== 'function' || input.optional)
      values[key] = input.start * factorOf(input.unit);
  }
  const given = oneWay(formula, values, (groups) =>
    groups.find((group) => group.some((id) => Boolean(typed[id]))),
  );
  return complete(formula, given);
};

export const sheetOf = (
  formula: Formula,
  draw: Draw,
  typed: Readonly<Record<string, string>> = {},
  style: Style = {},
): { sheet: Sheet; results: Results } => {
  const given = valuesOf(formula, typed);
  const results = compute(formula, given);
  return { sheet: draw(given, results, style), results };
};

const anyOf = (input: Input): fc.Arbitrary<Value> => {
  if (isChoice(input)) {
    const listed = Object.values(input.choices);
    const size = fc.double({ min: 0, max: Math.log(1000), noNaN: true }).map(Math.exp);
    const custom = fc.tuple(size, size).map(([a, b]) => ({
      width: Math.max(a, b) / 1000,
      height: Math.min(a, b) / 1000,
    }));
    const all = fc.constantFrom(...listed);
    return input.custom && input.name.includes('format')
      ? fc.oneof({ weight: 3, arbitrary: all }, custom)
      : all;
  }
  const [low, high] = input.range;
  const most = Number.isFinite(high) ? high : 1e6;
  const even = fc.double({ min: low, max: most, noNaN: true });
  // Most lengths worth trying are small: as many from each decade.
  const small = Math.max(low, most / 1e7);
  const decades = fc
    .double({ min: Math.log(small), max: Math.log(most), noNaN: true })
    .map((x) => Math.min(most, Math.max(low, Math.exp(x))));
  const [from, to] = input.span ?? input.range;
  const usual = fc.double({ min: from, max: Math.min(to, most), noNaN: true });
  const ends = fc.constantFrom(low, high);
  const one = fc
    .oneof({ weight: 4, arbitrary: usual }, { weight: 3, arbitrary: decades }, even, ends)
    .map((x) => x * factorOf(input.unit));
  return input.list ? fc.array(one, { minLength: input.list.min, maxLength: input.list.max }) : one;
};

/** Any legal values of a formula with their results; optional inputs are sometimes left out. */
export const anyLegal = (formula: Formula): fc.Arbitrary<{ given: Given; results: Results }> => {
  const parts = Object.fromEntries(
    Object.entries(formula.inputs).map(([key, input]) => [
      key,
      input.optional ? fc.option(anyOf(input), { nil: undefined, freq: 6 }) : anyOf(input),
    ]),
  );
  return fc
    .tuple(fc.record(parts), fc.nat(1))
    .map(([values, way]) => {
      const given = oneWay(
        formula,
        Object.fromEntries(Object.entries(values).filter(([, one]) => one !== undefined)),
        (groups) => groups[way],
      );
      try {
        const all = complete(formula, given);
        return { given: all, results: compute(formula, all) };
      } catch (fault) {
        if (fault instanceof InputError) return undefined;
        throw fault;
      }
    })
    .filter((one) => one !== undefined);
};

/** A letter at 13 units is no wider than this on average; the same room the drawings leave. */
const LETTER = 6.5;

/** What is wrong with a sheet: marks that are no numbers or lie off it, words over its edges, a table or a text with holes. */
export const faults = (sheet: Sheet): string[] => {
  const found: string[] = [];
  const { width, height } = sheet;
  for (const mark of sheet.marks) {
    if (mark.kind === 'path') {
      if (!/^M[-\d.MLHAaZ ]+$/.test(mark.d)) found.push(`odd path ${mark.d.slice(0, 80)}`);
      // Numbers of an arc's flags stay small, so every number can be held to the sheet.
      const worst = Math.max(...(mark.d.match(/-?[\d.]+/g) ?? []).map((x) => Math.abs(Number(x))));
      if (!(worst < 3 * width))
        found.push(`far off the sheet: ${mark.role} ${mark.d.slice(0, 80)}`);
      continue;
    }
    const room =
      mark.text.length * LETTER * { start: 0, middle: 0.5, end: 1 }[mark.anchor ?? 'start'];
    const [left, right] = [mark.x - room, mark.x - room + mark.text.length * LETTER];
    if (!(left >= 0 && right <= width)) found.push(`${mark.text} from ${left} to ${right}`);
    if (!(mark.y >= 9 && mark.y <= height)) found.push(`${mark.text} at height ${mark.y}`);
  }
  const words = [sheet.says, ...sheet.table.head, ...sheet.table.rows.flat()].join(' ');
  if (/NaN|undefined|Infinity|\[object/.test(words)) found.push(words);
  if (sheet.table.rows.some((row) => row.length !== sheet.table.head.length))
    found.push('ragged table');
  return found;
};

/** The numbers of a path, in pairs: its corners, where it is drawn of straight lines. */
export const corners = (mark: Path): [number, number][] => {
  const numbers = (mark.d.match(/-?[\d.]+/g) ?? []).map(Number);
  return numbers.flatMap((x, i) => (i % 2 ? [] : [[x, numbers[i + 1] ?? Number.NaN]]));
};

export const paths = (sheet: Sheet, role: Role, filled = false): [number, number][][] =>
  sheet.marks
    .filter((mark): mark is Path => mark.kind === 'path')
    .filter((mark) => mark.role === role && (mark.filled ?? false) === filled)
    .map(corners);

export const texts = (sheet: Sheet): string[] =>
  sheet.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));

export const spread = (values: readonly number[]): number =>
  Math.max(...values) - Math.min(...values);
export const wide = (points: readonly (readonly [number, number])[]): number =>
  spread(points.map(([x]) => x));
export const high = (points: readonly (readonly [number, number])[]): number =>
  spread(points.map(([, y]) => y));

/** Units a metre, from nothing but the scale bar and the length written beside it; the bar is the lowest at its left. */
export const scaleOf = (sheet: Sheet, left = 8): number => {
  const drawn = paths(sheet, 'dimension').findLast(
    (points) => points.length === 4 && points[0]?.[0] === left,
  );
  const end = drawn?.[2] ?? [Number.NaN, Number.NaN];
  const label = sheet.marks.find(
    (mark) =>
      mark.kind === 'text' &&
      Math.abs(mark.x - end[0] - 6) < 0.01 &&
      Math.abs(mark.y - end[1] - 2) < 0.01,
  );
  const [, number = '', unit = ''] =
    /^([\d.\u202f]+) (m|cm|mm)$/.exec(label?.kind === 'text' ? label.text : '') ?? [];
  const metres = Number(number.replace('\u202f', '')) * { m: 1, cm: 0.01, mm: 0.001 }[unit as 'm'];
  return (end[0] - left) / metres;
};

/** A sheet's marks for a reviewed snapshot, one a line, numbers to three decimals. */
export const written = (sheet: Sheet): string =>
  [
    `${sheet.width} × ${sheet.height}`,
    ...sheet.marks.map((mark) =>
      mark.kind === 'path'
        ? `${mark.role}${mark.filled ? ' filled' : ''}: ${mark.d.replace(/-?\d+\.\d+/g, (x) => String(Number(Number(x).toFixed(3))))}`
        : `text ${Number(mark.x.toFixed(3))} ${Number(mark.y.toFixed(3))} ${mark.anchor ?? 'start'}: ${mark.text}`,
    ),
    sheet.says,
    ...sheet.table.rows.map((row) => row.join(' | ')),
  ].join('\n');
