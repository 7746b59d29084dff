import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { evaluateText } from '../src/formula/evaluate.ts';
import { idOf } from '../src/formula/record.ts';
import { factorOf } from '../src/formula/units.ts';
import {
  behindNames,
  csvRows,
  headline,
  heldOf,
  POCKET,
  readingOf,
  refusals,
  shownUnit,
} from '../src/site/quick-table.ts';
import { csv, MARK } from '../src/tabulate/csv.ts';
import { sourceOf } from '../src/reference/load.ts';
import { numberOf, readTables, tableOf } from './support/tables.ts';

const tables = readTables();
const table = (id: string) => {
  const found = tables.find((one) => one.id === id);
  if (!found) throw new Error(`no table ${id}`);
  return found;
};
const pairs = (query: string): [string, string][] => [...new URLSearchParams(query)];

it('has a table for every number a studio asks for', () => {
  expect(tables.map(({ id }) => id).toSorted()).toEqual(
    [
      'ambient-ladder', 'angle-of-view', 'backdrop-disc', 'backdrop-in-view', 'background-blur', 'depth-of-field',
      'equivalent-f-numbers', 'equivalent-lenses', 'face-coverage', 'falloff', 'flash-power', 'frame-size',
      'framing-distance', 'gel-loss', 'gels', 'grid-spots', 'light-mix', 'lighting-ratios', 'longest-lens',
      'marked-numbers', 'mired-shift', 'print-pixels', 'room-fill', 'shadow-edge', 'stops', 'tipping-pull',
      'widest-mark',
    ], // prettier-ignore
  );
  const lengths = table('depth-of-field').panels[0]?.down.heads.map(({ text }) => text);
  expect(lengths?.at(0)).toBe('1.0');
  expect(lengths?.at(-1)).toBe('4.0');
  expect(lengths).toHaveLength(16);
});

describe.each(tables.map((one) => [one.id, one] as const))('%s', (_id, one) => {
  it('says in every cell what evaluate says of the same values', () => {
    const joiner = one.file.joiner ?? ', ';
    let checked = 0;
    // Of many formats the first and the last, in both systems; the formulas' own tests have the rest.
    const ends = new Set([0, one.choices.length - 1]);
    for (const panel of one.panels.filter(({ choice }) => ends.has(choice)))
      for (const row of panel.rows)
        for (const [at, { text, cell, query }] of row.entries()) {
          expect(text).not.toMatch(/NaN|Infinity|undefined|^$/);
          if (!cell.results) {
            expect(text).toBe('—');
            expect(cell.refusal).toMatch(/\.$/);
            expect(() => evaluateText(one.formula, pairs(query))).toThrow(RangeError);
            continue;
          }
          const said = evaluateText(one.formula, pairs(query)).results;
          const columns = one.file.across ? one.columns : one.columns.slice(at, at + 1);
          const parts = columns.length > 1 ? text.split(joiner) : [text];
          expect(parts).toHaveLength(columns.length);
          for (const [i, column] of columns.entries()) {
            const output = one.formula.outputs[column.key];
            if (!output) throw new Error(`no result ${column.key}`);
            const ours = said[idOf(output)];
            const part = parts[i] ?? '';
            checked += 1;
            if (typeof ours?.value !== 'number') {
              const endless = output.unit === 'f/' ? '—' : '∞';
              expect(part).toBe(ours?.infinite ? endless : ours?.value === null ? '—' : ours?.text);
              continue;
            }
            const unit = shownUnit(one.formula, column, panel.system) ?? '1';
            const wanted = ours.value / factorOf(unit);
            const shown = numberOf(part);
            if (shown === undefined) throw new Error(`${query}: “${part}” is no number.`);
            const decimals = part.split('.')[1]?.length;
            // Half of the last place shown; feet go by eighths of an inch below one, by quarters below three, by halves
            // below ten, and by whole ones.
            const inches = wanted < 1 ? 1 / 8 : wanted < 3 ? 1 / 4 : wanted < 10 ? 1 / 2 : 1;
            const step = unit === 'ft' ? inches / 12 : part.includes('/') ? 0 : 10 ** -(decimals ?? 0); // prettier-ignore
            const room = Math.max(step / 2, Math.abs(wanted) * (decimals === undefined || part.includes('/') ? 0.05 : 0)); // prettier-ignore
            if (Math.abs(shown - wanted) > room * 1.0001 + 1e-12)
              expect.fail(`${query}: the table has ${part}, evaluate ${ours.text}`);
          }
        }
    expect(checked).toBeGreaterThan(5);
  });

  it('says what stays the same, how to read it, and from where', () => {
    const [panel] = one.panels;
    if (!panel) throw new Error('no panel');
    expect(headline(one, panel)).toMatch(/^\p{Lu}/u);
    expect(readingOf(one, panel)?.before).toMatch(/^at .+ is$/);
    const held = heldOf(one, panel).map(([name, value]) => `${name} ${value}`).join('; '); // prettier-ignore
    for (const [id, words] of [
      ['circle', /circle [\d.]+ mm/],
      ['calibration', /calibration 250/],
      ['measured-from', /measured from/],
      ['marks', /marks /],
    ] as const)
      if (Object.values(one.formula.inputs).some((input) => idOf(input) === id))
        expect(held).toMatch(words);
    for (const id of [...one.formula.sources, ...one.file.sources]) expect(sourceOf(id).title).not.toBe(''); // prettier-ignore
  });

  it('fits the folded card', () => {
    for (const panel of one.panels.filter(({ system }) => system === 'metric')) {
      expect(panel.pocket.down.length).toBeGreaterThan(1);
      expect(panel.pocket.down.length).toBeLessThanOrEqual(POCKET.down);
      expect(panel.pocket.across.length).toBeLessThanOrEqual(POCKET.across);
      for (const at of panel.pocket.down) expect(panel.rows[at]).toBeDefined();
    }
  });

  it('comes back from a file through another’s parser, number by number', () => {
    const rows = csvRows(one);
    for (const form of [
      { separator: ',', decimal: 'point' },
      { separator: ';', decimal: 'comma' },
    ] as const) {
      const text = MARK + csv(rows, form);
      const back: string[][] = parse(text, { delimiter: form.separator, bom: true });
      expect(back).toHaveLength(rows.length);
      back.forEach((line, at) => {
        line.forEach((field, i) => {
          const written = rows[at]?.[i];
          const expected = typeof written === 'number' ? written : undefined;
          if (expected === undefined || !Number.isFinite(expected)) return;
          if (Number(field.replace(',', '.')) !== expected)
            expect.fail(`line ${String(at)}: ${field} is not ${String(expected)}`);
        });
      });
    }
    const cells = one.panels.filter(({ system }) => system === 'metric').flatMap(({ rows }) => rows.flatMap((row) => (one.file.across ? row : row.slice(0, 1)))); // prettier-ignore
    expect(rows).toHaveLength(cells.length + 1);
    const [column] = one.columns;
    const place = rows[0]?.length === undefined ? 0 : rows[0].length - 1 - one.columns.length;
    cells.forEach(({ cell }, at) => {
      const value = column && cell.results?.[column.key];
      const written = rows[at + 1]?.[place];
      if (typeof value === 'number' && typeof written === 'number' && Number.isFinite(value))
        expect(Math.abs(written * factorOf(column?.unit ?? '1') - value)).toBeLessThanOrEqual(Math.abs(value) * 1e-5); // prettier-ignore
    });
  });
});

it('says in words why a cell holds a dash', () => {
  const widest = table('widest-mark');
  const sheet = widest.panels.find(({ rows }) => rows.flat().some(({ text }) => text === '—'));
  if (!sheet) throw new Error('no dash to explain');
  expect(refusals(widest, sheet)).toEqual(['No f-number is large enough to be the widest mark.']);
  for (const one of tables)
    for (const panel of one.panels)
      expect(refusals(one, panel).length > 0).toBe(panel.rows.flat().some(({ text }) => text === '—')); // prettier-ignore
});

it('names what stands behind a shot or a gel', () => {
  const shots = table('framing-distance');
  const [panel] = shots.panels;
  if (!panel) throw new Error('no panel');
  expect(behindNames(shots, panel)[0]).toBe('head and shoulders: frame height 0.348 m');
});

it('labels a fill by the stops it is under the key', () => {
  const ratios = table('lighting-ratios');
  for (const [at, row] of (ratios.panels[0]?.rows ?? []).entries()) {
    const label = ratios.panels[0]?.down.heads[at]?.text ?? '';
    const [whole = '0', part] = label.includes(' ') ? label.split(' ') : label.includes('/') ? ['0', label] : [label]; // prettier-ignore
    const [over = '0', under = '1'] = (part ?? '0').split('/');
    const stops = Number(whole) + Number(over) / Number(under);
    expect(Math.log2(row[0]?.cell.results?.['plain'] as number)).toBeCloseTo(stops, 6);
  }
});

it('tells an author what is wrong, in a sentence that names the file', () => {
  const fails = (change: Readonly<Record<string, unknown>>) => () => tableOf('depth-of-field', change); // prettier-ignore
  expect(fails({ results: ['totally'] })).toThrow(/depth-of-field\.yaml: .* no result “totally”\. It gives/); // prettier-ignore
  expect(fails({ fixed: { aperture: 'f/4' } })).toThrow(/has no input “aperture”\. It takes/);
  expect(fails({ fixed: { 'focal-length': '85' } })).toThrow(
    /depth-of-field\.yaml: focal-length: /,
  );
  expect(fails({ pocket: { across: ['f/3'] } })).toThrow(/names “f\/3”, which is not in the table/);
  expect(fails({ each: { input: 'format', values: ['36x24', '1x'] } })).toThrow(/depth-of-field\.yaml: format/); // prettier-ignore
  expect(fails({ question: 'How deep.' })).toThrow(/question mark/);
  expect(fails({ colour: 'red' })).toThrow(/colour/);
  expect(fails({ down: { shared: 'shots' } })).toThrow(/A side has an input/);
  expect(fails({ down: { name: 'shot', shared: 'shots', only: ['profile'] } })).toThrow(/shots has no “profile”/); // prettier-ignore
});
