import { Ajv } from 'ajv';
import fc from 'fast-check';
import { strFromU8, unzipSync } from 'fflate';
import { parse } from 'parse5';
import { describe, expect, it } from 'vitest';
import rulingsSchema from '../../shared/schema/rulings.schema.json' with { type: 'json' };
import workSchema from '../../shared/schema/work.schema.json' with { type: 'json' };
import { questionsOf, writeAssignment } from '../../src/exercises/assignment.ts';
import { namer, Pack } from '../../src/exercises/copies/pack.ts';
import { pageOf } from '../../src/exercises/copies/page.ts';
import { tell } from '../../src/exercises/copies/told.ts';
import { itemsOf, markWork, sayTurn, type Row, type Ruling } from '../../src/exercises/desk.ts';
import { Pile } from '../../src/exercises/pile.ts';
import { readWork, writeWork, type Work } from '../../src/exercises/result-file.ts';
import {
  countRulings,
  mergeRulings,
  NO_RULINGS,
  overrideKey,
  readRulings,
  writeRulings,
  type AllRulings,
  type Override,
} from '../../src/exercises/rulings.ts';
import { mixedAssignment, workText, type Answering } from '../../src/site/commands/bench-class.ts';
import { bank } from '../support/bank.ts';
import { recordOf } from '../support/records.ts';

const templates = bank.map(({ template }) => template);
const tools = {
  templates: new Map(templates.map((template) => [template.id, template])),
  formulas: recordOf,
};
/** Two of every kind. */
const assignment = mixedAssignment(templates, 12);
const link = writeAssignment(assignment);
const plain: Ruling = { tolerances: new Map(), overrides: new Map(), hintCost: 0.1 };
const text = (alias: string, how: (at: number) => Answering, more: Partial<Work> = {}): string =>
  workText(assignment, alias, templates, recordOf, how, more);
const work = (alias: string, how: (at: number) => Answering): Work => {
  const read = readWork(text(alias, how));
  if (!read.ok) throw new Error(read.why);
  return read.value;
};
const rowsOf = (one: Work, ruling = plain): readonly Row[] =>
  markWork(one, questionsOf(assignment, one.alias), tools, ruling);

describe('the published format of a student’s work', () => {
  const valid = new Ajv({ allErrors: true }).compile(workSchema);
  const right = JSON.parse(text('Blue Heron', () => 'right')) as Record<string, unknown>;

  it('is what the page writes, for answers of every kind', () => {
    expect(new Set(assignment.items.map(({ template }) => tools.templates.get(template)?.kind)).size).toBe(6); // prettier-ignore
    for (const how of ['right', 'wrong', 'unreadable', 'none'] as const) {
      valid(JSON.parse(text('Ägir 2', () => how)));
      expect(valid.errors ?? []).toEqual([]);
    }
  });

  it.each<[string, (file: Record<string, unknown>, first: Record<string, unknown>) => void]>([
    ['another version', (file) => (file['sitting-by-numbers-work'] = 2)],
    ['no link', (file) => delete file['link']],
    ['an alias of blanks', (file) => (file['alias'] = '  ')],
    ['an alias with a line in it', (file) => (file['alias'] = 'a\nb')],
    ['an alias that turns text round', (file) => (file['alias'] = 'a\u202eb')],
    ['a time in words', (file) => (file['saved'] = 'yesterday')],
    ['marks of its own', (file) => (file['marks'] = [1])],
    ['answers in words', (file) => (file['answers'] = 'all')],
    ['a mark in an answer', (_file, first) => (first['credit'] = 1)],
    ['a monstrous answer', (_file, first) => (first['raw'] = 'x'.repeat(300))],
    ['an answer that is deep', (_file, first) => (first['raw'] = { line: { line: '1' } })],
    ['a setting nobody can have named', (_file, first) => (first['raw'] = { 'A b': '1' })],
    ['a seed nobody was given', (_file, first) => (first['seed'] = 1000)],
    ['hints below nothing', (_file, first) => (first['hints'] = -1)],
    ['a template that is none', (_file, first) => (first['template'] = '<script>')],
  ])('does not fit %s', (_name, spoil) => {
    const file = structuredClone(right);
    spoil(file, (file['answers'] as Record<string, unknown>[])[0] ?? {});
    expect(valid(file)).toBe(false);
  });

  it('fits whatever the desk takes, but for what the desk does not look at', () => {
    const known = Object.keys(workSchema.properties);
    fc.assert(
      fc.property(fc.constantFrom(...known), fc.jsonValue({ maxDepth: 3 }), (key, value) => {
        const file = { ...right, [key]: value };
        if (key !== 'checksum' && readWork(JSON.stringify(file)).ok) expect(valid(file)).toBe(true);
      }),
    );
  });
});

describe('rulings', () => {
  const heron = work('Blue Heron', () => 'wrong');
  const [question] = questionsOf(assignment, heron.alias);
  if (!question) throw new Error('There is no question.');
  const at = '2026-11-25T10:00:00.000Z';
  const override: Override = { ...question, alias: heron.alias, credit: 0.4, note: 'Told me, “=so” far', answer: '0123abcd', at }; // prettier-ignore
  const all: AllRulings = new Map([
    [
      link,
      {
        overrides: new Map([[overrideKey(heron.alias, question), override]]),
        tolerances: new Map([[question.template, { text: '1/3 stop', at }]]),
      },
    ],
  ]);
  const file = writeRulings(all, at);
  const changed = (change: (one: Record<string, never>) => void): string => {
    const raw = JSON.parse(file) as Record<string, never>;
    change(raw);
    return JSON.stringify(raw);
  };

  it('come back from their file as they were, and fit their format', () => {
    expect(readRulings(file)).toEqual({ ok: true, value: { all, whole: true } });
    const valid = new Ajv({ allErrors: true }).compile(rulingsSchema);
    valid(JSON.parse(file));
    expect(valid.errors ?? []).toEqual([]);
    expect(countRulings(all)).toEqual({ marks: 1, tolerances: 1 });
    // Nothing decided, nothing written.
    expect(writeRulings(new Map([[link, NO_RULINGS]]), at)).toContain('"assignments": []');
  });

  it.each<[string, string, RegExp]>([
    ['huge', ' '.repeat(2_000_001), /two megabytes/],
    ['deep', file.replace('[', '['.repeat(50)), /deeper/],
    ['cut off', file.slice(0, 200), /cut off/],
    ['newer', changed((one) => Object.assign(one, { 'sitting-by-numbers-rulings': 2 })), /newer edition/],
    ['older', changed((one) => Object.assign(one, { 'sitting-by-numbers-rulings': 0 })), /version/],
    ['without time', changed((one) => Object.assign(one, { saved: 1 })), /when it was saved/],
    ['without rulings', changed((one) => Object.assign(one, { assignments: {} })), /no rulings/],
    ['of a hostile link', file.replace(link, 'ask=<script>'), /cannot be read/],
    ['of a mark above all', file.replace('"credit": 0.4', '"credit": 4'), /between 0 and 1/],
    ['of a mark that is none', file.replace('"credit": 0.4', '"credit": "1"'), /between 0 and 1/],
    ['of a question nobody has', file.replace(`"seed": ${question.seed}`, '"seed": 1234'), /no question/],
    ['of a note with lines', file.replace('Told me', 'Told\\nme'), /notes/],
    ['of a monstrous note', file.replace('Told me', 'x'.repeat(600)), /notes/],
    ['of a tolerance for another', file.replace(/"template": "[a-z-]+",\n +"text"/, '"template": "else", "text"'), /tolerances belongs/],
    ['of a prototype', file.replace(/"template": "[a-z-]+",\n +"text"/, '"template": "constructor", "text"'), /tolerances belongs/],
    ['of a monstrous tolerance', file.replace('1/3 stop', '9'.repeat(60)), /typed here/],
    ['of one mark twice', changed((one) => { const [a] = one['assignments'] as unknown as { overrides: unknown[] }[]; a?.overrides.push(a.overrides[0]); }), /twice/],
  ])('are refused with the reason when they are %s', (_name, hostile, why) => {
    const read = readRulings(hostile);
    expect(read.ok ? 'taken' : read.why).toMatch(why);
  }); // prettier-ignore

  it('say when their sum does not fit', () => {
    expect(readRulings(file.replace('0.4', '0.5'))).toMatchObject({ value: { whole: false } });
  });

  it('are merged so that the later of two counts, whichever came first', () => {
    const newer: AllRulings = new Map([[link, { overrides: new Map([[overrideKey(heron.alias, question), { ...override, credit: 1, at: '2026-11-25T11:00:00.000Z' }]]), tolerances: new Map() }]]); // prettier-ignore
    expect(mergeRulings(all, newer)).toEqual(mergeRulings(newer, all));
    const both = mergeRulings(all, newer).get(link);
    expect([...(both?.overrides.values() ?? [])].map(({ credit }) => credit)).toEqual([1]);
    expect(both?.tolerances.size).toBe(1);
  });
});

describe('a pile of files', () => {
  const later = { saved: '2026-11-25T12:00:00.000Z' };
  const names = (pile: Pile): string[] => pile.taken.map(({ name }) => name);

  it.each([[false], [true]])('keeps the later work of an alias, read last or first: %s', (swap) => {
    const pile = new Pile();
    const files = [['old', text('Blue Heron', () => 'wrong')], ['new', text('blue  heron', () => 'right', later)]] as const; // prettier-ignore
    for (const [name, one] of swap ? files.toReversed() : files) pile.add(name, one);
    expect(names(pile)).toEqual(['new']);
    expect(pile.refused.map(({ name }) => name)).toEqual(['old']);
    expect(pile.refused[0]?.why).toContain('later work');
  });

  it('tells a file that came twice from two that claim the same time', () => {
    const pile = new Pile();
    pile.add(
      'a',
      text('heron', () => 'wrong'),
    );
    pile.add(
      'b',
      text('heron', () => 'wrong'),
    );
    pile.add(
      'c',
      text('heron', () => 'right'),
    );
    pile.add(
      'd',
      text('heron', () => 'right', { ...later, started: '2026-11-25T09:31:00.000Z' }),
    );
    expect(names(pile)).toEqual(['d']);
    expect(pile.refused.map(({ why }) => why)).toEqual([
      expect.stringContaining('same work'),
      expect.stringContaining('other answers'),
      expect.stringMatching(/later work.*no two students/),
    ]);
  });

  it('keeps assignments apart, takes rulings for what they are, and shows names plainly', () => {
    const other = mixedAssignment(templates, 3, { title: 'Another', draw: 8 });
    const pile = new Pile();
    pile.add(
      'a',
      text('heron', () => 'right'),
    );
    pile.add(
      'b',
      workText(other, 'heron', templates, recordOf, () => 'right'),
    );
    pile.add(
      'c',
      workText(other, 'gull', templates, recordOf, () => 'right'),
    );
    expect(pile.assignments().map(({ assignment: { title }, files }) => [title, files])).toEqual([['Another', 2], ['Framing and light', 1]]); // prettier-ignore
    expect(pile.add('r', writeRulings(new Map(), later.saved))).toMatchObject({ whole: true });
    pile.add(`\u202egnp.${'x'.repeat(200)}`, '[]');
    expect(pile.refused.at(-1)?.name).toMatch(/^gnp\.x{76}…$/);
  });
});

describe('statistics of a class', () => {
  const HOW: readonly Answering[] = ['right', 'right', 'wrong', 'right', 'none', 'right', 'wrong'];
  const class_ = Array.from({ length: 14 }, (_none, student) =>
    rowsOf(work(`bird ${student}`, (at) => HOW[(student * student + at * 3) % HOW.length] ?? 'right')),
  ); // prettier-ignore
  const items = itemsOf(class_);
  const open = items.map(({ waiting }) => waiting > 0);

  it('are those of another reckoning', () => {
    expect(open.filter(Boolean)).toHaveLength(2);
    items.forEach((item, at) => {
      const x = class_.map((rows) => rows[at]?.credit ?? 0);
      const y = class_.map((rows) => rows.reduce((sum, { credit }, other) => sum + (other === at || open[other] ? 0 : (credit ?? 0)), 0)); // prettier-ignore
      const n = x.length;
      // By sums of products, not by deviations.
      const sum = (all: readonly number[]): number => all.reduce((a, b) => a + b, 0);
      const top = n * sum(x.map((a, i) => a * (y[i] ?? 0))) - sum(x) * sum(y);
      const under = Math.sqrt((n * sum(x.map((a) => a * a)) - sum(x) ** 2) * (n * sum(y.map((b) => b * b)) - sum(y) ** 2)); // prettier-ignore
      // Nothing goes with what all answered alike.
      if (open[at] || under === 0) expect(item.itemRest).toBeUndefined();
      else expect(item.itemRest).toBeCloseTo(top / under, 10);
      if (!open[at]) expect(item.easiness).toBeCloseTo(sum(x) / n, 10);
    });
    expect(items.filter(({ itemRest }) => itemRest !== undefined).length).toBeGreaterThan(6);
  });

  it('say no correlation of nine, and one of ten', () => {
    expect(itemsOf(class_.slice(0, 9)).every(({ itemRest }) => itemRest === undefined)).toBe(true);
    expect(itemsOf(class_.slice(0, 10)).some(({ itemRest }) => itemRest !== undefined)).toBe(true);
  });

  it('name the wrong option that was chosen most, and the line that was pointed at', () => {
    const [choice, mistake] = (['choice', 'mistake'] as const).map((kind) => {
      const at = assignment.items.findIndex(({ template }) => tools.templates.get(template)?.kind === kind); // prettier-ignore
      const template = tools.templates.get(assignment.items[at]?.template ?? '');
      if (!template) throw new Error(`There is no ${kind}.`);
      return { at, template };
    });
    if (choice?.template.kind !== 'choice' || mistake?.template.kind !== 'mistake') throw new Error('The kinds are mixed up.'); // prettier-ignore
    const wrong = choice.template.options.flatMap(({ right }, place) => (right ? [] : [place]));
    const line = mistake.template.lines.findIndex((one) => !one.wrong);
    const answers = [[wrong[1] ?? 0], [wrong[0] ?? 0], [wrong[1] ?? 0]];
    const rows = answers.map((raw, student) => {
      const one = work(`bird ${student}`, () => 'right');
      return rowsOf({
        ...one,
        answers: one.answers.map((answer, at) =>
          at === choice.at
            ? { ...answer, raw }
            : at === mistake.at
              ? { ...answer, raw: { line: String(line), number: '1' } }
              : answer,
        ),
      });
    });
    const found = itemsOf(rows);
    expect(found[choice.at]?.commonestTurn?.times).toBe(2);
    const told = found[choice.at]?.commonestTurn?.row;
    expect(told && sayTurn(told, tools)).toContain(choice.template.options[wrong[1] ?? 0]?.feedback.slice(0, 12)); // prettier-ignore
    expect(found[mistake.at]?.commonestTurn?.times).toBe(3);
    const pointed = found[mistake.at]?.commonestTurn?.row;
    expect(pointed && sayTurn(pointed, tools)).toContain(mistake.template.lines[line]?.feedback.slice(0, 12)); // prettier-ignore
  });
});

describe('a marked copy', () => {
  const copyOf = (one: Work, ruling = plain): string =>
    pageOf({
      assignment: assignment.title,
      alias: one.alias,
      total: '1.0 of 12',
      questions: rowsOf(one, ruling).map((row) => ({
        told: tell(row, tools, ruling.tolerances.get(row.question.template)),
        figure: undefined,
      })),
    });

  it('says question, answer as typed, what is accepted, feedback, mark, note and total', () => {
    const one = work('heron', (at) => (at % 2 === 0 ? 'wrong' : 'right'));
    const [question] = questionsOf(assignment, 'heron');
    if (!question) throw new Error('There is no question.');
    const override: Override = { ...question, alias: 'heron', credit: 0.4, note: 'Told me, “=so” far', answer: '', at: one.saved }; // prettier-ignore
    const copy = copyOf(one, { ...plain, overrides: new Map([[overrideKey('heron', question), override]]) }); // prettier-ignore
    for (const words of ['1.0 of 12', 'Told me, “=so” far', '40 of 100, set by the instructor', 'Accepted', 'Feedback', 'Kept', 'not right', JSON.stringify(one.answers[0]?.raw).slice(1, -1)]) expect(copy).toContain(words); // prettier-ignore
    for (const { template } of assignment.items) expect(copy).toContain(tools.templates.get(template)?.title); // prettier-ignore
    // The options and the lines of a reckoning stand there as they were read.
    const [choice, mistake] = (['choice', 'mistake'] as const).map((kind) => rowsOf(one).map((row) => tell(row, tools, undefined)).find((_told, at) => tools.templates.get(assignment.items[at]?.template ?? '')?.kind === kind)); // prettier-ignore
    for (const told of [choice, mistake]) expect(told?.list.texts.length).toBeGreaterThan(2);
    expect([choice?.list.numbered, mistake?.list.numbered]).toEqual([false, true]);
    expect(copy.match(/<ol>/g)?.length).toBe(2);
    expect(copy).not.toMatch(/undefined|NaN|\[object|\{[a-z-]+\}(?![^<]*<\/style>)/);
  });

  it('holds no script, whatever a student typed', () => {
    const evil = '"><script>alert(1)</script><img src=x onerror=alert(1)>';
    const one = work('<script>alert(1)</script>', () => 'right');
    const copy = copyOf({ ...one, answers: one.answers.map((answer) => (typeof answer.raw === 'string' ? { ...answer, raw: evil } : answer)) }); // prettier-ignore
    const names = new Set<string>();
    const walk = (node: { nodeName?: string; childNodes?: unknown[] }): void => {
      names.add(node.nodeName ?? '');
      (node.childNodes ?? []).forEach((child) => walk(child as typeof node));
    };
    walk(parse(copy));
    expect([...names].filter((name) => ['script', 'img', 'iframe', 'object'].includes(name))).toEqual([]); // prettier-ignore
    expect(names).toContain('dl');
    expect(copy).toContain('&lt;script&gt;alert(1)&lt;/script&gt;&lt;img');
  });

  it('goes into a zip under a name of its own that any folder can hold, the same bytes every time', () => {
    const name = namer();
    expect(['Blue Heron', 'blue-heron', '../../etc', 'CON', '<b>', '…', 'Ägir 2'].map(name)).toEqual(['blue-heron', 'blue-heron-2', 'etc', 'alias-con', 'b', 'alias', 'ägir-2']); // prettier-ignore
    const made = (): Uint8Array => {
      const pack = new Pack();
      pack.add('ägir.html', copyOf(work('Ägir', () => 'right')));
      pack.add('b.html', 'b');
      return pack.bytes();
    };
    const bytes = made();
    expect(made()).toEqual(bytes);
    const read = unzipSync(bytes);
    expect(Object.keys(read)).toEqual(['ägir.html', 'b.html']);
    expect(strFromU8(read['ägir.html'] ?? new Uint8Array())).toContain(
      '<h1>Framing and light</h1>',
    );
  });
});

it('writes work that was taken out of a file just as it was', () => {
  const one = text('heron', () => 'right');
  const read = readWork(one);
  expect(read.ok && writeWork(read.value)).toBe(one);
});
