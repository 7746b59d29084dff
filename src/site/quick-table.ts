import { shortest, unitFor, writeQuantity, type Style } from '../formula/notation/write.ts';
import { readInput, writeInput } from '../formula/read.ts';
import { idOf, isChoice, type Formula, type Given, type Input } from '../formula/record.ts';
import { showResult } from '../formula/show.ts';
import { factorOf, type Unit } from '../formula/units.ts';
import { spanOf } from '../tabulate/series.ts';
import { cellOf, queryOf, type Cell, type Spec, type Step } from '../tabulate/table.ts';
import { sharedLines } from './quick-table-data.ts';
import type { AxisFile, QuickTableFile } from './quick-table-file.ts';

export type System = 'metric' | 'imperial';

/** A line or a column as it is headed. */
export interface Head {
  readonly text: string;
  readonly step: Step;
  /** In the unit of its side, for files; the text where it is no one number. */
  readonly value: string | number;
}

export interface Side {
  readonly name: string;
  /** Stands in the heading; '' where the entries say it themselves. */
  readonly unit: string;
  readonly heads: readonly Head[];
}

export interface Shown {
  readonly text: string;
  readonly cell: Cell;
  /** What follows `/plates/<formula>/?`. */
  readonly query: string;
}

/** One grid: of one choice of `each`, in one system of units. */
export interface Panel {
  readonly choice: number;
  readonly system: System;
  readonly spec: Spec;
  readonly down: Side;
  readonly across: Side;
  readonly rows: readonly (readonly Shown[])[];
  /** Places of the lines and columns the folded card has. */
  readonly pocket: { readonly down: readonly number[]; readonly across: readonly number[] };
}

/** A result with the unit its whole column is written in. */
export interface Column {
  readonly key: string;
  readonly name: string;
  readonly unit: Unit | undefined;
}

export interface QuickTable {
  readonly id: string;
  readonly file: QuickTableFile;
  readonly formula: Formula;
  readonly columns: readonly Column[];
  /** What the reader may choose between; one nameless entry where there is no choice. */
  readonly choices: readonly {
    readonly label: string;
    /** As short as still tells it from the others. */
    readonly short: string;
    readonly given: Given;
  }[];
  readonly choiceName: string | undefined;
  readonly systems: readonly System[];
  readonly panels: readonly Panel[];
}

/** The most the folded card holds. */
export const POCKET = { down: 18, across: 8 } as const;

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
const spelt = (named: { name: string; label?: string }): string => named.label ?? named.name;

/** How a heading says a unit. */
export const unitWord = (unit: Unit | undefined): string => {
  if (unit === undefined || ['1', 'count', 'f/', 'ISO'].includes(unit)) return '';
  const words: Partial<Record<Unit, string>> = {
    deg: '°', stop: 'stops', ft: 'ft and in', arcmin: '′', '1/min': 'a minute', '1/s': 'a second',
  }; // prettier-ignore
  return words[unit] ?? unit;
};

/** Takes off the unit that stands in the heading; feet and inches keep theirs, since they are two. */
export const bare = (text: string, unit: Unit | undefined): string => {
  if (unit === undefined || unit === 'ft' || unit === 'f/' || unit === 'ISO') return text;
  const tail = unit === 'in' ? '″' : unit === 'stop' ? /\u00a0?[ ]?stops?$/ : unitWord(unit);
  if (tail === '') return text;
  return (
    typeof tail === 'string' && text.endsWith(tail)
      ? text.slice(0, -tail.length)
      : text.replace(tail, '')
  ).trimEnd();
};

/** A value of an input as people write it. */
export const sayValue = (input: Input, value: unknown, style: Style = {}): string => {
  if (isChoice(input)) {
    const id = writeInput(input, value);
    return input.labels?.[id] ?? id.replaceAll('x', ' × ');
  }
  const exact = { ...style, exact: true };
  const one = (part: number): string =>
    writeQuantity(
      part,
      unitFor(input.unit, input.imperial, style),
      input.fraction || input.unit === 's' ? { fraction: true } : { significant: 4 },
      style.system === 'imperial' ? style : exact,
    );
  return Array.isArray(value)
    ? value.map((part: number) => one(part)).join(', ')
    : one(value as number);
};

const inputOf = (formula: Formula, id: string, where: string): [string, Input] => {
  const found = Object.entries(formula.inputs).find(([, input]) => idOf(input) === id);
  if (!found)
    throw new Error(
      `${where}: ${formula.id} has no input “${id}”. It takes ${Object.values(formula.inputs).map(idOf).join(', ')}.`,
    );
  return found;
};

const read = (formula: Formula, texts: Readonly<Record<string, string>>, where: string): Given =>
  Object.fromEntries(
    Object.entries(texts).map(([id, text]) => {
      const [key, input] = inputOf(formula, id, where);
      // A table may leave out what a plate begins with.
      if (text === 'none' && !isChoice(input)) return [key, undefined];
      try {
        return [key, readInput(input, text, { stored: true })];
      } catch (cause) {
        throw new Error(`${where}: ${id}: ${cause instanceof Error ? cause.message : ''}`, {
          cause,
        });
      }
    }),
  );

const texts = (axis: AxisFile, system: System): readonly string[] => {
  if ('values' in axis) return (system === 'imperial' ? axis.imperial : undefined) ?? axis.values;
  if ('from' in axis)
    return (
      (system === 'imperial' ? axis.imperial : undefined) ??
      spanOf(axis.from, axis.to, axis.step).map((x) => `${shortest(x)} ${axis.unit}`)
    );
  return [];
};

const sideOf = (formula: Formula, axis: AxisFile, system: System, where: string): Side => {
  if ('rows' in axis)
    return {
      name: axis.name,
      unit: '',
      heads: axis.rows.map(({ label, given }) => ({
        text: label,
        value: label,
        step: { label, given: read(formula, given, where) },
      })),
    };
  if ('shared' in axis) {
    const all = sharedLines[axis.shared]();
    const only = axis.only ?? all.map(({ id }) => id);
    return {
      name: axis.name,
      unit: '',
      heads: only.map((id) => {
        const line = all.find((one) => one.id === id);
        if (!line)
          throw new Error(
            `${where}: ${axis.shared} has no “${id}”. It has ${all.map((one) => one.id).join(', ')}.`,
          );
        const { label } = line;
        return {
          text: label,
          value: label,
          step: { label, given: read(formula, line.given, where) },
        };
      }),
    };
  }
  const [key, input] = inputOf(formula, axis.input, where);
  const given = texts(axis, system).map((text) => read(formula, { [axis.input]: text }, where));
  const name = axis.name ?? spelt(input);
  if (isChoice(input))
    return {
      name,
      unit: '',
      heads: given.map((step) => {
        const label = sayValue(input, step[key]);
        // A sensor is known by its sides alone where a column must be narrow.
        const text = axis.input.endsWith('format')
          ? writeInput(input, step[key]).replace('x', '\u00a0× ').replace(/in$/, '\u00a0in')
          : label;
        return { text, value: label, step: { given: step } };
      }),
    };
  const own = system === 'imperial' && axis.imperial !== undefined;
  // Whole feet are what people set out with; everything else keeps the unit of the record.
  const unit: Unit = own ? unitFor(input.unit, input.imperial, { system }) : input.unit;
  const fraction = input.fraction === true || input.unit === 's';
  const values = given.map((step) => step[key] as number);
  // One side has as many decimals as its finest value needs: 1.0, 1.2, and not 1, 1.2.
  const places = Math.max(
    ...values.map(
      (si) => shortest(Number((si / factorOf(unit)).toPrecision(9))).split('.')[1]?.length ?? 0,
    ),
  );
  return {
    name,
    unit: unit === 'ft' || fraction ? '' : unitWord(unit),
    heads: given.map((step, at) => {
      const si = values[at] ?? 0;
      const text = bare(
        unit === 'ft' || unit === 'f/'
          ? writeQuantity(si, unit, { significant: 3 }, { exact: true })
          : writeQuantity(si, unit, fraction ? { fraction: true } : { decimals: places }),
        unit,
      );
      return { text, value: Number((si / factorOf(unit)).toPrecision(6)), step: { given: step } };
    }),
  };
};

const columnsOf = (formula: Formula, file: QuickTableFile, where: string): readonly Column[] =>
  file.results.map((id) => {
    const found = Object.entries(formula.outputs).find(([, output]) => idOf(output) === id);
    if (!found)
      throw new Error(
        `${where}: ${formula.id} has no result “${id}”. It gives ${Object.values(formula.outputs).map(idOf).join(', ')}.`,
      );
    const [key, output] = found;
    return { key, name: file.names[id] ?? spelt(output), unit: output.unit };
  });

/** The unit a result is written in, the same all over a table. */
export const shownUnit = (
  formula: Formula,
  { key, unit }: Column,
  system: System,
): Unit | undefined => unit && unitFor(unit, formula.outputs[key]?.imperial, { system });

const DASH = '\u2014';

/** An f-number without end is no f-number. */
const beyond = (value: unknown, { unit }: Column): boolean => unit === 'f/' && value === Infinity;

/** One result of a cell in the table's own unit, without it. */
const numberIn = (formula: Formula, column: Column, cell: Cell, system: System): string => {
  const value = cell.results?.[column.key];
  const output = formula.outputs[column.key];
  if (!output || value === undefined || beyond(value, column)) return DASH;
  const unit = shownUnit(formula, column, system);
  if (typeof value !== 'number' || unit === undefined) return showResult(output, value, { system });
  return bare(writeQuantity(value, unit, output.digits ?? 3, { system }), unit);
};

const placesOf = (
  wanted: readonly string[] | undefined,
  axis: AxisFile | undefined,
  side: Side,
  most: number,
  where: string,
): readonly number[] => {
  const all = side.heads.map((_head, at) => at);
  if (!wanted) {
    if (all.length > most)
      throw new Error(
        `${where}: the card holds ${String(most)}, and here are ${String(all.length)}. Name some under \`pocket\`.`,
      );
    return all;
  }
  if (wanted.length > most)
    throw new Error(`${where}: \`pocket\` names more than ${String(most)}.`);
  const known =
    axis && 'input' in axis
      ? texts(axis, 'metric')
      : axis && 'shared' in axis
        ? (axis.only ?? sharedLines[axis.shared]().map(({ id }) => id))
        : side.heads.map(({ text }) => text);
  return wanted.map((text) => {
    const at = known.indexOf(text);
    if (at < 0)
      throw new Error(
        `${where}: \`pocket\` names “${text}”, which is not in the table: ${known.join(', ')}.`,
      );
    return at;
  });
};

/** The same in feet: lines of their own are taken evenly where they are too many, the others stand where they stood. */
const pocketOf = (
  wanted: readonly string[] | undefined,
  axis: AxisFile | undefined,
  side: Side,
  most: number,
  system: System,
  where: string,
): readonly number[] => {
  const own = axis && 'imperial' in axis ? axis.imperial : undefined;
  if (system === 'metric' || own === undefined) return placesOf(wanted, axis, side, most, where);
  const step = Math.ceil(own.length / most);
  return own.map((_text, at) => at).filter((at) => at % step === 0);
};

/**
 * Works out one file of content/tables.
 * Throws: Error naming the file, what is wrong, and what is allowed.
 */
export const quickTable = (id: string, file: QuickTableFile, formula: Formula): QuickTable => {
  const where = `content/tables/${id}.yaml`;
  const columns = columnsOf(formula, file, where);
  const fixed = read(formula, file.fixed, where);
  const each = file.each;
  const chosen = each && inputOf(formula, each.input, where);
  const named =
    each && chosen
      ? each.values.map((text) => {
          const given = read(formula, { [each.input]: text }, where);
          const input = chosen[1];
          return { label: sayValue(input, given[chosen[0]]), given };
        })
      : [{ label: '', given: {} }];
  const choices = named.map((one) => {
    const [short = ''] = one.label.split(',');
    const twins = named.filter(({ label }) => label.split(',')[0] === short).length;
    return { ...one, short: twins === 1 ? short : one.label };
  });
  const panel = (choice: number, system: System): Panel => {
    const down = sideOf(formula, file.down, system, where);
    const across: Side = file.across
      ? sideOf(formula, file.across, system, where)
      : {
          name: '',
          unit: '',
          heads: columns.map((column) => {
            const unit = unitWord(shownUnit(formula, column, system));
            const text =
              unit && !column.name.endsWith(unit) ? `${column.name}, ${unit}` : column.name;
            return { text, value: text, step: { given: {} } };
          }),
        };
    const spec: Spec = {
      formula,
      fixed: { ...fixed, ...choices[choice]?.given },
      down: down.heads.map(({ step }) => step),
      across: across.heads.map(({ step }) => step),
    };
    const rows = down.heads.map((line) =>
      across.heads.map((column, at): Shown => {
        const cell = cellOf(spec, line.step, column.step);
        const shown = file.across ? columns : columns.slice(at, at + 1);
        const text = cell.results
          ? shown.map((one) => numberIn(formula, one, cell, system)).join(file.joiner ?? ', ')
          : DASH;
        return { text, cell, query: queryOf(spec, line.step, column.step) };
      }),
    );
    return {
      choice, system, spec, down, across, rows,
      pocket: {
        down: pocketOf(file.pocket.down, file.down, down, POCKET.down, system, `${where}, down`),
        across: pocketOf(file.pocket.across, file.across, across, POCKET.across, system, `${where}, across`),
      },
    }; // prettier-ignore
  };
  const ownFeet = [file.down, file.across].some(
    (axis) => axis && 'imperial' in axis && axis.imperial,
  );
  const differs =
    ownFeet ||
    columns.some(
      (column) => shownUnit(formula, column, 'imperial') !== shownUnit(formula, column, 'metric'),
    );
  const systems: readonly System[] = differs ? ['metric', 'imperial'] : ['metric'];
  return {
    id, file, formula, columns, choices,
    choiceName: chosen && capital(spelt(chosen[1])),
    systems,
    panels: systems.flatMap((system) => choices.map((_choice, at) => panel(at, system))),
  }; // prettier-ignore
};

/** “total, cm, by subject distance (m) down and f-number across”. */
export const headline = (table: QuickTable, panel: Panel): string => {
  const side = ({ name, unit }: Side): string => (unit ? `${name} (${unit})` : name);
  if (!table.file.across) {
    const names = table.columns.map(({ name }) => name);
    return capital(
      `${names.slice(0, -1).join(', ')} and ${names.at(-1) ?? ''}, by ${side(panel.down)}`,
    );
  }
  const results = table.columns.map((column) => {
    const unit = unitWord(shownUnit(table.formula, column, panel.system));
    return unit && !column.name.endsWith(unit) ? `${column.name} (${unit})` : column.name;
  });
  return capital(
    `${results.join(table.file.joiner ?? ', ')}, by ${side(panel.down)} down and ${side(panel.across)} across`,
  );
};

/** What is the same in every cell, written out: the lens, the circle, where distance starts, how marks are taken. */
export const heldOf = (table: QuickTable, panel: Panel): readonly (readonly [string, string])[] => {
  const cells = panel.rows.flat();
  const whole = cells.filter(({ cell }) => cell.results);
  return Object.entries(table.formula.inputs).flatMap(([key, input]) => {
    const values = new Set(whole.map(({ cell }) => cell.given[key]));
    const [value] = values;
    if (values.size !== 1 || value === undefined) return [];
    const [name, said] = [spelt(input), sayValue(input, value, { system: panel.system })];
    // “ISO 100” and “metered ISO 100”, and neither with its ISO twice.
    if (said.startsWith('ISO ') && name.endsWith('ISO'))
      return [[name.slice(0, -3).trimEnd(), said]];
    return [[said.startsWith(name) ? '' : name, said]];
  });
};

/** What stands behind the names of lines or columns that come from shared data: “seated, full: frame height 0.896 m”. */
export const behindNames = (table: QuickTable, panel: Panel): readonly string[] =>
  (['down', 'across'] as const).flatMap((side) => {
    const axis = table.file[side];
    // A sheet of paper is its name.
    if (!axis || !('shared' in axis) || axis.shared === 'papers') return [];
    return panel[side].heads.map(({ text, step }) => {
      const values = Object.entries(step.given).flatMap(([key, value]) => {
        const input = table.formula.inputs[key];
        return input ? [`${spelt(input)} ${sayValue(input, value, { system: panel.system })}`] : [];
      });
      return `${text}: ${values.join(', ')}`;
    });
  });

/** A cell in the middle, to read a table by. */
export const workedCell = (
  panel: Panel,
): { line: Head; column: Head; shown: Shown } | undefined => {
  const order = (count: number): number[] => {
    const middle = Math.floor(count / 2);
    return Array.from({ length: count }, (_none, at) => at).toSorted((a, b) => Math.abs(a - middle) - Math.abs(b - middle)); // prettier-ignore
  };
  for (const at of order(panel.down.heads.length))
    // Beside the middle, since a table of one thing by itself has nothing to say on its diagonal.
    for (const i of order(panel.across.heads.length + 2)) {
      const [line, column, shown] = [
        panel.down.heads[at],
        panel.across.heads[i],
        panel.rows[at]?.[i],
      ];
      if (line && column && shown?.cell.results) return { line, column, shown };
    }
  return undefined;
};

/** Why cells of this table hold a dash, each reason once. */
export const refusals = (table: QuickTable, panel: Panel): readonly string[] => {
  const cells = panel.rows.flat().map(({ cell }) => cell);
  const endless = table.columns.filter((column) =>
    cells.some(({ results }) => beyond(results?.[column.key], column)),
  );
  return [
    ...new Set(cells.flatMap(({ refusal }) => refusal ?? [])),
    ...endless.map(({ name }) => `No f-number is large enough to be the ${name}.`),
  ];
};

const figures = (x: number): number => (Number.isFinite(x) ? Number(x.toPrecision(6)) : x);

/** The table as lines for a file: one for each cell, every value with its unit in the heading, metric. */
export const csvRows = (table: QuickTable): readonly (readonly (string | number)[])[] => {
  const { formula, columns, choiceName, choices } = table;
  const headed = (name: string, unit: string): string => (unit ? `${name} (${unit})` : name);
  const panels = table.panels.filter(({ system }) => system === 'metric');
  const [first] = panels;
  if (!first) return [];
  const across = table.file.across !== undefined;
  const heading = [
    ...(choiceName ? [choiceName.toLowerCase()] : []),
    headed(first.down.name, first.down.unit),
    ...(across ? [headed(first.across.name, first.across.unit)] : []),
    ...columns.map((column) => headed(column.name, unitWord(column.unit))),
    'remark',
  ];
  const resultOf = (column: Column, cell: Cell): string | number => {
    const value = cell.results?.[column.key];
    const output = formula.outputs[column.key];
    if (value === undefined || !output || beyond(value, column)) return '';
    return typeof value === 'number' && column.unit
      ? figures(value / factorOf(column.unit))
      : showResult(output, value);
  };
  return [
    heading,
    ...panels.flatMap((panel) =>
      panel.rows.flatMap((row, at) =>
        (across ? row : row.slice(0, 1)).map((shown, i) => [
          ...(choiceName ? [choices[panel.choice]?.label ?? ''] : []),
          panel.down.heads[at]?.value ?? '',
          ...(across ? [panel.across.heads[i]?.value ?? ''] : []),
          ...columns.map((column) => resultOf(column, shown.cell)),
          shown.cell.refusal ?? '',
        ]),
      ),
    ),
  ];
};

const joined = (text: string, unit: string): string =>
  unit === '' || text === '' ? text : `${text}${unit === '°' ? '' : '\u00a0'}${unit}`;

/** How to read a table: a cell in words, before its number, and the number with its unit. */
export const readingOf = (
  table: QuickTable,
  panel: Panel,
): { before: string; number: string; query: string } | undefined => {
  const worked = workedCell(panel);
  if (!worked) return undefined;
  const { line, column, shown } = worked;
  const place = ({ name, unit }: Side, { text }: Head): string => `${name} ${joined(text, unit)}`;
  const unitOf = (one: Column | undefined): string =>
    one ? unitWord(shownUnit(table.formula, one, panel.system)) : '';
  if (!table.file.across) {
    const at = panel.across.heads.indexOf(column);
    const result = table.columns[at];
    return {
      before: `at ${place(panel.down, line)}, ${result?.name ?? ''} is`,
      number: joined(shown.text, unitOf(result)),
      query: shown.query,
    };
  }
  const [first, ...others] = table.columns;
  const same = others.every((one) => unitOf(one) === unitOf(first));
  return {
    before: `at ${place(panel.down, line)} and ${place(panel.across, column)}, ${table.columns.map(({ name }) => name).join(table.file.joiner ?? ', ')} is`,
    number: same ? joined(shown.text, unitOf(first)) : shown.text,
    query: shown.query,
  };
};
