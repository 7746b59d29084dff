import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { idOf, isChoice } from '../../../src/formula/record.ts';
import { showResult } from '../../../src/formula/show.ts';
import { evaluateText } from '../../../src/formula/evaluate.ts';
import { queryOf } from '../../../src/tabulate/table.ts';
import { csv, MARK } from '../../../src/tabulate/csv.ts';
import { canRun, MOST } from '../../../src/widgets/own-table/axis.ts';
import { fileHead, linesOf, type Line } from '../../../src/widgets/own-table/lines.ts';
import { formulaOf } from '../../../src/widgets/own-table/link.ts';
import { OwnState, type Request } from '../../../src/widgets/own-table/own-state.ts';
import { suggested } from '../../../src/widgets/own-table/suggested.ts';
import { parse } from 'csv-parse/sync';
import { recordOf, records } from '../../support/records.ts';

const own = (id: string, query?: string): OwnState =>
  new OwnState(recordOf(id), suggested[id] ?? '', query);
const asked = (state: OwnState): Request => {
  const request = state.request();
  if (!request) throw new Error(`No table: ${state.trouble()} ${state.query()}`);
  return request;
};
const linesIn = (state: OwnState): Line[] =>
  [...linesOf(asked(state), state.style)].filter((line) => line !== undefined);

const firstLine = (state: OwnState): Line | undefined => {
  for (const line of linesOf(asked(state), state.style)) if (line) return line;
  return undefined;
};

describe('a formula alone', () => {
  it.each(records.map((one) => [one.id]))('gives %s a useful table', (id) => {
    const state = own(id);
    expect(state.notice).toBe('');
    const { spec, show } = asked(state);
    const lines = linesIn(state);
    expect(lines.length).toBeGreaterThan(2);
    expect(spec.across.length * show.length).toBeGreaterThan(1);
    // Cells that hold something, and not one thing all over.
    const texts = lines.flatMap((line) => line.texts);
    expect(texts.filter((text) => text === '—' || text === 'not given')).toEqual([]);
    expect(new Set(texts).size).toBeGreaterThan(3);
    // On paper and on a phone it is a sheet, no scroll.
    expect(texts.length).toBeLessThanOrEqual(200);
  });

  it('has a table for no formula that is not there', () => {
    expect(Object.keys(suggested).toSorted()).toEqual(records.map(({ id }) => id).toSorted());
  });
});

describe.each(records.map((one) => [one.id, one] as const))('%s', (id, formula) => {
  it('lets every input run that can, and its link brings the same table back', () => {
    const able = Object.entries(formula.inputs).filter(([, input]) => canRun(input));
    expect(own(id).runnable()).toEqual(able.map(([key]) => key));
    for (const [key, input] of able)
      for (const side of ['down', 'across'] as const) {
        const state = own(id);
        state.turn(side, key);
        expect(state.axis(side)?.key, idOf(input)).toBe(key);
        // Two that stand in for one another are refused, in words.
        if (!state.request()) {
          expect(state.trouble()).toMatch(/stand in for one another/);
          continue;
        }
        const query = state.query();
        const back = own(id, query);
        expect(back.notice, query).toBe('');
        expect(back.query()).toBe(query);
        expect(firstLine(back)).toEqual(firstLine(state));
      }
  });

  it('shows in every cell what its plate shows', () => {
    const state = own(id);
    const { spec, show } = asked(state);
    const lines = linesIn(state);
    const [row, column] = [lines.length - 1, spec.across.length - 1];
    const [down, across] = [spec.down[row], spec.across[column]];
    if (!down || !across) throw new Error('no last cell');
    const said = evaluateText(formula, [...new URLSearchParams(queryOf(spec, down, across))]);
    show.forEach((key, i) => {
      const output = formula.outputs[key];
      const text = output ? said.results[idOf(output)]?.text : undefined;
      expect(lines[row]?.texts[column * show.length + i]?.replaceAll('\u00a0', ' ')).toBe(text);
    });
  });
});

describe('what a reader types', () => {
  it('is read in the field’s unit and mark, and asked about where it could be two things', () => {
    const state = own('depth-of-field');
    state.type('down', 'step', '0,5');
    expect(state.style.decimal).toBe('comma');
    expect(asked(state).spec.down.map(({ given }) => given['s'])).toEqual([
      1, 1.5, 2, 2.5, 3, 3.5, 4,
    ]);
    expect(linesIn(state)[1]?.heading).toBe('1,50\u00a0m');
    state.write('down', 'list');
    state.type('down', 'list', '2; 3,145; 6ft');
    expect(state.request()).toBeUndefined();
    expect(state.down.texts.list).toBe('2; 3,145; 6ft');
    const trouble = state.down.troubles.list;
    expect(trouble?.readings).toEqual(['3.145 m', '3145 m']);
    state.choose('down', 'list', '3.145 m');
    expect(asked(state).spec.down.map(({ given }) => given['s'])).toEqual([
      2,
      3.145,
      expect.closeTo(1.8288, 12),
    ]);
  });

  it('keeps its exact value through a change of units', () => {
    const state = own('depth-of-field');
    const before = state.query();
    state.measure('imperial');
    expect(state.down.texts.from).toBe('3.28084');
    expect(state.query()).toBe(before);
    state.type('down', 'to', '10');
    expect(state.query()).toContain('subject-distance=1m..3.048m..0.2m');
    state.measure('metric');
    expect(state.query()).toContain('subject-distance=1m..3.048m..0.2m');
  });

  it.each([
    ['from', 'abc', /not a number/],
    ['to', '', /is empty/],
    ['step', '0', /more than 0/],
    ['step', '-1', /between|or more/],
    ['from', 'infinity', /ends somewhere/],
    ['from', '0.001', /must be 1 cm or more|must be/],
    ['step', '0.00000001', /A table holds 10\u202f000 cells/],
  ] as const)('is refused beside its field: %s %s', (part, text, why) => {
    const state = own('depth-of-field');
    const before = state.query();
    state.type('down', part, text);
    expect(state.down.troubles[part]?.message).toMatch(why);
    expect(state.down.texts[part]).toBe(text);
    expect(state.request()).toBeUndefined();
    expect(state.query()).toBe(before);
  });

  it('may make 10 000 cells, long or square, and no more', () => {
    const long = own('depth-of-field');
    long.turn('across', 'results');
    for (const key of long.show.slice(1)) long.toggle(key, false);
    long.type('down', 'to', '100.99');
    long.type('down', 'step', '0.01');
    expect(asked(long).spec.down).toHaveLength(10_000);
    long.type('down', 'to', '101');
    expect(long.request()).toBeUndefined();
    expect(long.down.troubles.step?.message).toMatch(/10\u202f001 values.*larger step/);

    const square = own('depth-of-field');
    square.turn('across', 'f');
    square.write('across', 'span');
    square.type('across', 'from', '20');
    square.type('across', 'to', '119');
    square.type('across', 'step', '1');
    square.type('down', 'to', '4.96');
    square.type('down', 'step', '0.04');
    const { spec } = asked(square);
    expect(spec.down.length * spec.across.length).toBe(MOST.cells);
    square.type('down', 'to', '5');
    expect(square.request()).toBeUndefined();
    expect(square.trouble()).toMatch(
      /10\u202f100 cells, 101 down and 100 across.*10\u202f000.*a step of 0\.05 m or more/,
    );
    square.type('across', 'to', '250');
    expect(square.trouble()).toMatch(/at most 200 columns/);
  });

  it('says when nothing is shown', () => {
    const state = own('f-stop');
    for (const key of state.show) state.toggle(key, false);
    expect(state.request()).toBeUndefined();
    expect(state.trouble()).toBe('Choose at least one result to show.');
  });

  it('changes sides when one input is asked for on the other', () => {
    const state = own('depth-of-field');
    state.turn('down', 'N');
    expect([state.down.key, state.across?.key]).toEqual(['N', 's']);
    expect(state.across?.texts.step).toBe('0.2');
  });

  it('brings what is of use only together', () => {
    const state = own('movement-blur');
    state.turn('down', 'f');
    const { fixed } = asked(state).spec;
    expect(fixed['s']).toBeGreaterThan(0);
    expect(state.fixed()).not.toContain('m');
  });
});

describe('a link from anyone', () => {
  const good = own('depth-of-field').query();

  it('names its formula once', () => {
    expect(formulaOf(`?${good}`)).toBe('depth-of-field');
    expect(formulaOf(`?${good}&formula=gel`)).toBeUndefined();
    expect(formulaOf('?down=x')).toBeUndefined();
    expect(formulaOf(`?formula=${'x'.repeat(9000)}`)).toBeUndefined();
  });

  it('still opens the tables of the first readers', () => {
    const old =
      '?formula=depth-of-field&down=subject-distance&across=f-number&show=near;far&subject-distance=1.5m..3m..0.5m&f-number=f/2.8;f/5.6&format=23.6x15.8&focal-length=50mm&pupil-magnification=1&marks=typed&measured-from=lens';
    const state = own('depth-of-field', old);
    expect(state.notice).toBe('');
    expect(`?${state.query()}`).toBe(old);
    expect(linesIn(state).map((line) => line.texts)).toHaveLength(4);
  });

  it.each([
    [good.replace('down=subject-distance', 'down=nothing'), /“nothing” run down/],
    [good.replace('across=f-number', 'across=subject-distance'), /both ways/],
    [good.replace('show=total', 'show=all;total'), /“all”, which is no result/],
    [good.replace('1m..4m..0.2m', '1m..4m..0m'), /step must be more than 0/],
    [good.replace('1m..4m..0.2m', '1m..1000000000m..1m'), /1\u202f000\u202f000\u202f000 values/],
    [good.replace('1m..4m..0.2m', '1..4..0.2'), /has no unit/],
    [good.replace('1m..4m..0.2m', 'NaNm..4m..0.2m'), /not a number/],
    [good.replace('f/1.4;f/2', '<script>;f/2'), /could not be used/],
    [`${good}&down=f-number`, /gives down 2 times/],
    [`${good}&focal-length=50mm`, /gives focal length 2 times/],
    [`${good}&__proto__=1&constructor=2`, /also holds “__proto__”, “constructor”/],
    [good.replace('focal-length=85mm', 'focal-length=-5mm'), /focal length could not be used/],
    [`${good}&x=${'9'.repeat(7000)}`, /too long/],
    [`formula=depth-of-field&a=%E0%A4%A&=&&`, /does not know|gives no/],
  ])('is answered with a table and a word about what was wrong: %s', (query, why) => {
    const state = own('depth-of-field', `?${query}`);
    expect(state.notice).toMatch(why);
    expect(linesIn(state).length).toBeGreaterThan(2);
    expect(state.notice).not.toMatch(/plate|undefined/);
  });

  it('never breaks, whatever it holds', () => {
    const word = fc.oneof(
      fc.constantFrom('formula', 'down', 'across', 'show', 'f-number', 'subject-distance', 'format', 'results', 'total', '1m..4m..0.2m', 'f/2;f/4', '..', ';', '1m..', 'sensor', 'measured-from'), // prettier-ignore
      fc.string({ maxLength: 8 }),
    );
    fc.assert(
      fc.property(fc.array(fc.tuple(word, word), { maxLength: 8 }), (pairs) => {
        const state = own('depth-of-field', `?${new URLSearchParams(pairs).toString()}`);
        expect(state.request() ?? state.trouble()).toBeTruthy();
      }),
    );
  });
});

describe('a file', () => {
  it('has its units in the headings and its numbers unrounded enough', () => {
    const state = own('depth-of-field');
    state.toggle('near', true);
    const request = asked(state);
    const rows = [fileHead(request, state.style), ...linesIn(state).map(({ file }) => file)];
    for (const form of [
      { separator: ',', decimal: 'point' },
      { separator: ';', decimal: 'comma' },
    ] as const) {
      const read: string[][] = parse(MARK + csv(rows, form), {
        delimiter: form.separator,
        bom: true,
      });
      expect(read[0]?.slice(0, 3)).toEqual([
        'subject distance (m)',
        'f-number f/1.4: near (m)',
        'f-number f/1.4: total (cm)',
      ]);
      const number = (text = ''): number => Number(text.replace(',', '.'));
      request.spec.down.forEach((down, line) => {
        request.spec.across.forEach((across, i) => {
          const pairs = [...new URLSearchParams(queryOf(request.spec, down, across))];
          const { near, total } = evaluateText(state.formula, pairs).results;
          const cells = read[line + 1]?.slice(1 + 2 * i, 3 + 2 * i);
          expect(number(cells?.[0])).toBeCloseTo(near?.value as number, 4);
          expect(number(cells?.[1])).toBeCloseTo(100 * (total?.value as number), 3);
        });
      });
    }
  });

  it('follows the reader’s units, and keeps words as words', () => {
    const state = own('depth-of-field');
    state.measure('imperial');
    expect(fileHead(asked(state), state.style)[1]).toBe('f-number f/1.4: total (in)');
    expect(linesIn(state)[0]?.file[0]).toBeCloseTo(3.28084, 6);
    const words = own('room-fit');
    words.toggle('light', true);
    const [line] = linesIn(words);
    const { light } = words.formula.outputs;
    expect(light && line?.file).toContain(light && showResult(light, true, {}));
    expect(isChoice(words.input('format'))).toBe(true);
  });
});
