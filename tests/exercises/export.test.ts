import { describe, expect, it } from 'vitest';
import {
  exportAs,
  itemOf,
  svgOf,
  type Item,
  type Picture,
} from '../../src/exercises/export/index.ts';
import { line } from '../../src/exercises/export/html.ts';
import type { Marks } from '../../src/exercises/export/svg.ts';
import { markNumber, type Verdict } from '../../src/exercises/mark.ts';
import { marked } from '../../src/exercises/marked.ts';
import { valuesOf } from '../../src/exercises/number-of.ts';
import type { Asking, Template } from '../../src/exercises/template.ts';
import { keyOf, variantOf, type Key, type Variant } from '../../src/exercises/variant.ts';
import { compute } from '../../src/formula/compute.ts';
import { canonical, shortest } from '../../src/formula/notation/write.ts';
import { factorOf } from '../../src/formula/units.ts';
import { bank } from '../support/bank.ts';
import { wordsOf, type CourseItem, type Entered } from '../support/course-item.ts';
import { readGift } from '../support/read-gift.ts';
import { readMoodle } from '../support/read-moodle.ts';
import { readQti } from '../support/read-qti.ts';
import { recordOf } from '../support/records.ts';
import { all, readXml } from '../support/xml.ts';

/** One seed of every template, and a second of some: reading so much XML takes longer than writing it. */
const seedsOf = (place: number): readonly number[] => (place % 4 === 0 ? [7, 404] : [7]);

const drawings = import.meta.glob<{
  readonly draw: (given: object, results: object, style: object) => Marks;
}>('../../src/drawing/*.ts');
const drawn = new Map(
  await Promise.all(
    bank
      .flatMap(({ template }) =>
        template.kind === 'reading' && template.figure.show === 'drawing'
          ? [template.figure.formula]
          : [],
      )
      .map(async (id) => [id, await drawings[`../../src/drawing/${id}.ts`]?.()] as const),
  ),
);

const picture: Picture = (id, given, says) => {
  const formula = recordOf(id);
  const values = valuesOf(formula, given);
  const module = drawn.get(id);
  if (!module) throw new Error(`no drawing of ${id}`);
  return svgOf(module.draw(values, compute(formula, values), {}), says);
};

const variants = bank.flatMap(({ template }, place) =>
  seedsOf(place).map((seed) => variantOf<Template>(template, recordOf, seed)),
);
const items: readonly Item[] = variants.map((variant) => itemOf(variant, recordOf, picture));
const title = 'Light & distance: 50 % ~ {one} = "two" <three> #4 / 5';

const qti = exportAs('qti', items, { title });
const moodle = exportAs('moodle-xml', items, { title });
const gift = exportAs('gift', items, { title });
const { files, items: fromQti } = readQti(qti.bytes);
const readers: Readonly<Record<string, ReadonlyMap<string, CourseItem>>> = {
  qti: fromQti,
  'moodle-xml': readMoodle(moodle.bytes),
  gift: readGift(gift.bytes),
};

/** Far enough outside an end to be outside for any reader. */
const OUT = 1e-6;

/** Every number at which the mark can change, and some on both sides of it, in SI. */
const numbersFor = ({ value, span, others, turns }: Key): readonly number[] => {
  const spans = [span, ...others.map((one) => one.span), ...turns.map((one) => one.span)];
  const middles = turns.flatMap((a, i) => turns.slice(i + 1).map((b) => (a.value + b.value) / 2));
  return [
    value,
    ...turns.map((one) => one.value),
    ...spans.flatMap(([low, high]) => {
      const out = OUT * Math.max(Math.abs(low), Math.abs(high));
      return [low, high, low - out, low + out, high - out, high + out];
    }),
    // Between two turns either may be meant at the very middle.
    ...middles.flatMap((middle) => [middle * (1 - OUT), middle * (1 + OUT)]),
    value * 1e6,
  ];
};

const markedAt = (si: number, key: Key): number => {
  const verdict = markNumber(canonical(si, key.asked.unit), key, true);
  return 'credit' in verdict ? verdict.credit : Number.NaN;
};

interface Trial {
  readonly raw: Parameters<typeof marked>[2];
  readonly entered: Entered;
  readonly number?: Verdict;
}

const said = (variant: Variant, text: string): string => wordsOf(line(variant.say(text)));

const trialsOf = (variant: Variant): readonly Trial[] => {
  const { template } = variant;
  if (template.kind === 'choice') {
    const { options } = template;
    const many = options.filter(({ right }) => right).length > 1;
    return Array.from({ length: 2 ** options.length - 1 }, (_, i) =>
      options.flatMap((_option, place) => (((i + 1) >> place) & 1 ? [place] : [])),
    )
      .filter(({ length }) => many || length === 1)
      .map((raw) => ({
        raw,
        entered: { options: raw.map((place) => said(variant, options[place]?.text ?? '')) },
      }));
  }
  if (!('ask' in template)) return [];
  const own = variant as Variant<Extract<Template, Asking>>;
  const key = keyOf(own, recordOf);
  const numbers = numbersFor(key).map((si) => {
    const raw = canonical(si, key.asked.unit);
    return {
      raw,
      typed: shortest(si / factorOf(key.asked.unit)),
      number: markNumber(raw, key, true),
    };
  });
  return template.kind === 'mistake'
    ? template.lines.flatMap(({ text }, place) =>
        numbers.slice(0, place === 0 ? 4 : 2).map(({ raw, typed }) => ({
          raw: { line: String(place), number: raw },
          entered: { number: typed, options: [said(variant, text)] },
        })),
      )
    : numbers.map(({ raw, typed, number }) => ({ raw, entered: { number: typed }, number }));
};

/** Every answer tried, with the mark it gets here and what is said to a wrong turn. */
const answers = variants.flatMap((variant) =>
  trialsOf(variant).map(({ raw, entered, number }, i) => {
    const { template, seed } = variant;
    // The same marking without working the key out again: once for each variant it goes all the way.
    const whole = i === 0 || number === undefined;
    const { credit, verdict } = whole
      ? marked(template, seed, raw, recordOf, { stored: true })
      : { credit: 'credit' in number ? number.credit : 0, verdict: number };
    const says = 'ask' in template && template.kind !== 'mistake' && verdict.kind === 'turn';
    return {
      id: `${template.id}.${template.version}.${seed}`,
      raw,
      entered,
      credit,
      say: says ? said(variant, verdict.say) : undefined,
    };
  }),
);

/** One half of “find the mistake” without the other: what it earns differs, and the page says how. */
const HALF_ALONE: Readonly<Record<string, number>> = { qti: 0, 'moodle-xml': 0.5, gift: 0.5 };

describe.each(Object.entries(readers))('%s', (format, read) => {
  it('holds every item once, with its text, and leaves open questions to a person', () => {
    expect([...read.keys()].sort()).toEqual(items.map(({ id }) => id).sort());
    for (const [i, item] of items.entries()) {
      const found = read.get(item.id);
      expect(found?.title).toContain(item.title);
      const shown = found?.shown.replaceAll(/\s+/g, ' ');
      expect(shown).toContain(wordsOf(line(item.text.split(/\n\s*\n/)[0] ?? '')));
      const open = ['design', 'practical'].includes(variants[i]?.template.kind ?? '');
      expect(found?.mark({ number: '1', options: [] }).credit === undefined, item.id).toBe(open);
    }
  });

  it('marks every answer as we do: keys, edges, wrong turns, and what is just outside', () => {
    const wrong = answers.flatMap(({ id, raw, entered, credit, say }) => {
      const theirs = read.get(id)?.mark(entered);
      const far = Math.abs((credit ?? NaN) - (theirs?.credit ?? NaN));
      return far < 1e-6 && (say === undefined || theirs?.say === say)
        ? []
        : [`${id} ${JSON.stringify(raw)}: ${credit} here, ${theirs?.credit} there; ${theirs?.say}`];
    });
    expect(wrong.slice(0, 12)).toEqual([]);
    expect(answers.length).toBeGreaterThan(1200);
    expect(new Set(answers.map(({ credit }) => credit)).size).toBeGreaterThan(4);
  });

  it('knows both halves of a mistake to find, and earns what we say for one alone', () => {
    const found = items.filter(({ parts }) => parts.length > 1);
    expect(found.length).toBeGreaterThan(6);
    for (const { id, parts } of found) {
      const mark = read.get(id)?.mark;
      const number = parts.flatMap((one) => (one.kind === 'number' ? [shortest(one.key)] : []))[0];
      const options = parts.flatMap((one) =>
        one.kind === 'choice'
          ? one.options.flatMap(({ text, credit }) => (credit === 1 ? [wordsOf(line(text))] : []))
          : [],
      );
      expect(mark?.({ number: number ?? '', options }).credit, id).toBe(1);
      expect(mark?.({ number: number ?? '' }).credit, id).toBe(HALF_ALONE[format]);
      expect(mark?.({ options }).credit, id).toBe(HALF_ALONE[format]);
    }
  });

  it('gives nothing for what cannot be read', () => {
    for (const [i, { template }] of variants.entries()) {
      if (template.kind !== 'numeric' && template.kind !== 'reading') continue;
      for (const number of ['', 'about two', '2 m', 'NaN', 'Infinity', '1/200'])
        expect(read.get(items[i]?.id ?? '')?.mark({ number }).credit).toBe(0);
    }
  });
});

describe('a QTI package', () => {
  const manifest = readXml(files['imsmanifest.xml'] ?? '');

  it('lists the files it holds, and no other', () => {
    const listed = all(manifest, 'file').map(({ attributes }) => attributes['href'] ?? '');
    expect([...listed, 'imsmanifest.xml'].sort()).toEqual(Object.keys(files).sort());
    const ids = all(manifest, 'resource').map(({ attributes }) => attributes['identifier']);
    expect(new Set(ids).size).toBe(ids.length);
    for (const { attributes } of all(manifest, 'dependency'))
      expect(ids).toContain(attributes['identifierref']);
  });

  it('declares whatever its items use, and calls for nothing outside', () => {
    for (const [path, text] of Object.entries(files)) {
      const root = readXml(text);
      expect(text.replaceAll(/(?:xmlns(?::xsi)?|schemaLocation)="[^"]*"/g, '')).not.toMatch(
        /https?:|<script/,
      );
      for (const { attributes } of all(root, 'img')) {
        expect(Object.keys(files)).toContain(attributes['src']);
        expect(attributes['alt']?.length).toBeGreaterThan(40);
      }
      if (root.name !== 'assessmentItem') continue;
      const declared = [
        ...all(root, 'responseDeclaration'),
        ...all(root, 'outcomeDeclaration'),
      ].map(({ attributes }) => attributes['identifier']);
      expect(new Set(declared).size, path).toBe(declared.length);
      const used = ['variable', 'mapResponse', 'setOutcomeValue'].flatMap((name) =>
        all(root, name).map(({ attributes }) => attributes['identifier']),
      );
      used.push(
        ...all(root, 'modalFeedback').map(({ attributes }) => attributes['outcomeIdentifier']),
      );
      expect(
        used.filter((one) => !declared.includes(one)),
        path,
      ).toEqual([]);
    }
  });

  it('is the same in 2.2, but for the names of the version', () => {
    const kinds = variants.map(({ template }) => template.kind);
    const few = items.filter((_item, i) => kinds.indexOf(kinds[i] ?? 'numeric') === i);
    expect(few).toHaveLength(6);
    const older = readQti(exportAs('qti', few, { title }).bytes).files;
    const newer = exportAs('qti-2.2', few, { title });
    expect(newer.name).toMatch(/\.qti-2\.2\.zip$/);
    const read = readQti(newer.bytes);
    expect(read.items.size).toBe(few.length);
    const renamed = Object.entries(read.files).map(([path, text]) => [
      path,
      text.replaceAll('v2p2', 'v2p1').replace('QTIv2.2', 'QTIv2.1'),
    ]);
    expect(Object.fromEntries(renamed)).toEqual(older);
    for (const [path, text] of Object.entries(read.files))
      expect(/v2p1|v2\.1/.test(text), path).toBe(false);
  });

  it('has the same bytes each time, and in any zone', () => {
    const zone = process.env['TZ'];
    try {
      process.env['TZ'] = 'Pacific/Kiritimati';
      expect(Buffer.compare(exportAs('qti', items, { title }).bytes, qti.bytes)).toBe(0);
    } finally {
      if (zone === undefined) delete process.env['TZ'];
      else process.env['TZ'] = zone;
    }
  });
});

describe('Moodle XML', () => {
  // The shares of a mark its importer knows.
  const shares = [100, 90, 83.33333, 80, 75, 70, 66.66667, 60, 50, 40, 33.33333, 30, 25, 20, 16.66667, 14.28571, 12.5, 11.11111, 10, 5, 0]; // prettier-ignore
  it('uses shares, pictures and lengths that its importer takes', () => {
    const quiz = readXml(new TextDecoder().decode(moodle.bytes));
    for (const { attributes } of all(quiz, 'answer'))
      expect(shares).toContain(Math.abs(Number(attributes['fraction'])));
    for (const question of all(quiz, 'question')) {
      const shown = all(question, 'questiontext')[0];
      expect(shown?.text.includes('@@PLUGINFILE@@') ?? false).toBe(
        question.children.some((one) => all(one, 'file').length > 0),
      );
    }
    for (const { text } of all(quiz, 'file'))
      expect(readXml(Buffer.from(text, 'base64').toString()).name).toBe('svg');
    const ids = all(quiz, 'idnumber').map(({ text }) => text);
    expect(new Set(ids).size).toBe(ids.length);
    expect(Math.max(...ids.map(({ length }) => length))).toBeLessThanOrEqual(100);
  });

  it.each([
    ['free', '0', true],
    ['tenth', '0.1', true],
    ['none', '0', false],
  ] as const)('has hints that are %s at the price set', (hints, price, some) => {
    const few = items.slice(0, 3);
    const quiz = readXml(
      new TextDecoder().decode(exportAs('moodle-xml', few, { title, hints }).bytes),
    );
    expect(new Set(all(quiz, 'penalty').map(({ text }) => text))).toEqual(new Set([price]));
    const told = all(quiz, 'hint').map(({ text }) => wordsOf(text));
    expect(told).toEqual(
      some ? few.flatMap((one) => one.hints.map((hint) => wordsOf(line(hint)))) : [],
    );
  });
});

describe('in imperial units', () => {
  const lengths = variants.filter(
    (variant) =>
      ['numeric', 'reading'].includes(variant.template.kind) &&
      ['m', 'cm'].includes(
        keyOf(variant as Variant<Extract<Template, Asking>>, recordOf).asked.unit,
      ),
  );
  const own = lengths.map((variant) => itemOf(variant, recordOf, picture, { system: 'imperial' }));

  it.each([
    ['qti', (bytes: Uint8Array) => readQti(bytes).items],
    ['moodle-xml', readMoodle],
    ['gift', readGift],
  ] as const)(
    '%s asks for decimal feet or inches, and marks them as the tape has them',
    (format, read) => {
      expect(lengths.length).toBeGreaterThan(12);
      const items = read(exportAs(format, own, { title }).bytes);
      for (const [i, variant] of lengths.entries()) {
        const key = keyOf(variant as Variant<Extract<Template, Asking>>, recordOf);
        const found = items.get(own[i]?.id ?? '');
        const per = key.asked.unit === 'm' ? 0.3048 : 0.0254;
        expect(found?.shown).toContain(
          key.asked.unit === 'm' ? 'of feet: write' : 'of inches: write',
        );
        const credit = (si: number) => found?.mark({ number: shortest(si / per) }).credit;
        for (const si of [key.value, ...key.span]) expect(credit(si), own[i]?.id).toBe(1);
        const out = OUT * key.value;
        for (const si of [key.span[0] - out, key.span[1] + out])
          expect(credit(si)).toBe(markedAt(si, key));
        // The same number of metres is another length.
        expect(credit(key.value * per)).toBe(markedAt(key.value * per, key));
      }
    },
  );
});

it('carries any sign through every format, and none of it becomes markup', () => {
  const signs = String.raw`~50% = #4 {a} }: \ \n ]]> <b>&amp;</b> "q" // $CATEGORY: x`;
  const [option] = items.flatMap(({ parts }) =>
    parts.flatMap((part) => (part.kind === 'choice' && !part.many ? [part] : [])),
  );
  if (!option) throw new Error('no choice to try');
  const options = option.options.map((one, i) => ({
    ...one,
    text: `${signs} ${i}`,
    say: `${signs} said`,
  }));
  const right = options.find(({ credit }) => credit === 1)?.text ?? '';
  const number = items
    .flatMap(({ parts }) => parts)
    .flatMap((part) => (part.kind === 'number' ? [part] : []))
    .map((part): typeof part => ({
      ...part,
      weight: 0.5,
      accepted: part.accepted.slice(0, 1).map((one) => ({ ...one, say: `${signs} number` })),
    }))[0];
  if (!number) throw new Error('no number to try');
  const item: Item = {
    ...(items[0] as Item),
    title: signs,
    text: `${signs}\n\n// ${signs}`,
    parts: [{ ...option, weight: 1, options }],
  };
  const both: Item = {
    ...item,
    id: 'both',
    parts: [
      { ...option, id: 'line', weight: 0.5, options },
      { ...number, id: 'number', prompt: signs },
    ],
  };
  const write = (format: 'qti' | 'moodle-xml' | 'gift'): Uint8Array =>
    exportAs(format, [item, both], { title: signs }).bytes;
  for (const read of [
    readQti(write('qti')).items,
    readMoodle(write('moodle-xml')),
    readGift(write('gift')),
  ]) {
    const found = read.get(item.id);
    expect(found?.title).toBe(signs);
    expect(found?.shown).toContain(signs);
    expect(found?.shown).toContain(`// ${signs}`);
    expect(found?.mark({ options: [right] })).toEqual({ credit: 1, say: `${signs} said` });
    const whole = read.get('both');
    expect(whole?.shown).toContain(`// ${signs}`);
    expect(whole?.mark({ options: [right], number: shortest(number.key) })).toEqual({
      credit: 1,
      say: `${signs} said ${signs} number`,
    });
  }
});

it('refuses to write nothing, or one variant twice', () => {
  expect(() => exportAs('gift', [], { title })).toThrow('no question');
  expect(() => exportAs('qti', items.slice(0, 1).concat(items.slice(0, 1)), { title })).toThrow(
    'twice',
  );
});

it('names its files by their title, whatever it holds', () => {
  expect([qti.name, moodle.name]).toEqual([
    'light-distance-50-one-two-three-4-5.qti.zip',
    'light-distance-50-one-two-three-4-5.moodle.xml',
  ]);
  expect(exportAs('gift', items.slice(0, 1), { title: '光' }).name).toBe('exercises.gift.txt');
});
