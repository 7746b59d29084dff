import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inWords, markNumber, readAnswer } from '../../src/exercises/mark.ts';
import { marked, type Marked } from '../../src/exercises/marked.ts';
import type { Asking, Template } from '../../src/exercises/template.ts';
import { keyOf, variantOf, workOut, type Asked, type Key } from '../../src/exercises/variant.ts';
import type { Style } from '../../src/formula/notation/write.ts';
import { idOf, isChoice } from '../../src/formula/record.ts';
import { dimensionOf, factorOf, UNITS, type Unit } from '../../src/formula/units.ts';
import { bank } from '../support/bank.ts';
import { recordOf } from '../support/records.ts';

/** How many seeds of each template are gone through; all there are with SBN_SEEDS=1000, which takes minutes. */
const SEEDS = Number(process.env['SBN_SEEDS'] ?? 1);

type AskingTemplate = Extract<Template, Asking>;
const asking = bank.flatMap(({ template }) => ('ask' in template ? [template] : []));

const LOCALES: readonly Style[] = [
  {},
  { decimal: 'comma' },
  { system: 'imperial' },
  { system: 'imperial', decimal: 'comma' },
];

/** A number with all its digits, and no exponent. */
const digits = (x: number): string => {
  const text = String(Number(x.toPrecision(14)));
  return text.includes('e') ? x.toFixed(20).replace(/0+$/, '') : text;
};
/** Three digits after the only mark would be asked about: with one more they cannot be thousands. */
const plain = (x: number): string => digits(x).replace(/^(-?\d{1,3}\.\d{3})$/, '$10');
const comma = (text: string): string => text.replace('.', ',');
const grouped = (text: string, space: string): string =>
  text.replace(/\d+/, (whole) => whole.replaceAll(/\B(?=(\d{3})+$)/g, space));
const arabic = (text: string): string =>
  text.replaceAll(/\d/g, (digit) => String.fromCharCode(0x660 + Number(digit)));
const wide = (text: string): string =>
  text.replaceAll(/\d/g, (digit) => String.fromCharCode(0xff10 + Number(digit)));

/** One number in every way a keyboard and a habit have of writing it. */
const numbers = (x: number): readonly string[] => {
  const text = plain(x);
  return [
    text,
    comma(text),
    grouped(text, '\u2009'),
    comma(grouped(text, '\u202f')),
    // Both marks say which is which, where there are both.
    ...(text.includes('.') && Math.abs(x) >= 1000
      ? [grouped(text, ','), grouped(text.replace('.', ','), '.')]
      : []),
    arabic(text).replace('.', '٫'),
    wide(text),
    ...(x < 0 ? [text.replace('-', '\u2212'), text.replace('-', '\u2013')] : [`+${text}`]),
  ];
};

const NAMES: Partial<Record<Unit, readonly string[]>> = {
  m: ['metres', 'M'],
  in: ['″', '"', 'inches'],
  ft: ['′', 'feet'],
  deg: ['°', 'degrees'],
  s: ['sec', 'seconds'],
  stop: ['stops', 'EV'],
  EV: ['stops'],
  'px/in': ['ppi'],
};

/** Two units in one value: 7 ft 3 in, 2 m 21 cm, 12° 30′. */
const compounds = (si: number, dimension: string): readonly string[] => {
  const sign = si < 0 ? '\u2212' : '';
  const pairs: readonly (readonly [Unit, Unit, readonly (readonly [string, string])[]])[] =
    dimension === 'length'
      ? [
          ['ft', 'in', [[' ft ', ' in'], ['′ ', '″'], ["'", '"'], [' feet ', ' inches']]],
          ['m', 'cm', [[' m ', ' cm']]],
        ]
      : dimension === 'angle'
        ? [['deg', 'arcmin', [['° ', '′'], [' deg ', ' arcmin']]]]
        : dimension === 'time'
          ? [['min', 's', [[' min ', ' s']]]]
          : []; // prettier-ignore
  return pairs.flatMap(([large, small, signs]) => {
    const whole = Math.floor(Math.abs(si) / factorOf(large));
    const rest = plain((Math.abs(si) - whole * factorOf(large)) / factorOf(small));
    return signs.flatMap(([a, b]) =>
      [rest, comma(rest)].map((part) => `${sign}${whole}${a}${part}${b}`),
    );
  });
};

/** Every spelling of an answer: each unit of its dimension, bare, and what the dimension has of its own. */
const spellings = (si: number, { unit }: Asked): readonly string[] => {
  const dimension = dimensionOf(unit);
  const own = si / factorOf(unit);
  const units = (Object.keys(UNITS) as Unit[]).filter(
    // A bare number is one of the unit asked for: a share of one in bare digits is none of per cent.
    (one) =>
      dimensionOf(one) === dimension &&
      !['f/', 'ISO'].includes(one) &&
      !(one === '1' && unit === '%'),
  );
  const inUnits = units.flatMap((one) =>
    one.startsWith('1/')
      ? [`${plain(si / factorOf(one))}${one.slice(1)}`]
      : [
          ...numbers(si / factorOf(one)).map((text) => `${text} ${one === '1' ? '' : one}`),
          ...(NAMES[one] ?? []).map((name) => `${plain(si / factorOf(one))}${name}`),
        ],
  );
  const over = (mark: string): string => `1${mark}${plain(1 / si)}`;
  const special = ((): readonly string[] => {
    switch (dimension) {
      case 'f-number':
        return ['f/', 'f', 'F/', 'ƒ/', 'f ', '1:'].map((sign) => `${sign}${plain(own)}`);
      case 'iso':
        return ['ISO ', 'iso'].map((sign) => `${sign}${plain(own)}`);
      case 'ev':
        return [`EV ${plain(own)}`];
      case 'time':
        return [over('/'), `${over('/')} s`, comma(over('⁄'))];
      case 'ratio':
        return si > 0
          ? [`${plain(si)}:1`, `${plain(si)}×`, over(':'), `1 : ${comma(plain(1 / si))}`].concat(
              unit === '%' ? [] : over('/'),
            )
          : [];
      default:
        return [];
    }
  })();
  return [...numbers(own), ...inUnits, ...compounds(si, dimension), ...special];
};

/** A sixth of a stop, half a degree, two in a hundred: the rule, written a second time. */
const ruled = (
  value: number,
  template: AskingTemplate,
  { unit, digits: shown }: Asked,
): number[] => {
  const dimension = dimensionOf(unit);
  const stops = dimension === 'f-number' ? 2 : 1;
  const own = template.tolerance;
  const by = (room: number): number[] => [value - room, value + room];
  const times = (by: number): number[] => [value * 2 ** (-by / stops), value * 2 ** (by / stops)];
  if (own && 'relative' in own) return by(own.relative * Math.abs(value));
  if (own && 'absolute' in own)
    return by(readAnswer(own.absolute, { name: '', unit, digits: undefined }, true));
  if (own) return times(Number.parseFloat(own.stops));
  if (dimension === 'angle') return by(Math.PI / 360);
  if (dimension === 'stops' || dimension === 'ev') return by(1 / 6);
  return ['f-number', 'iso'].includes(dimension) ||
    (typeof shown === 'object' && 'fraction' in shown)
    ? times(1 / 6)
    : by(0.02 * Math.abs(value));
};

/** Nearer to an end than this, either is right: texts have fourteen digits. */
const OUT = 1e-6;

const rightLine = (template: AskingTemplate): string =>
  'lines' in template ? String(template.lines.findIndex(({ wrong }) => wrong)) : '';

/** As a page does it: what is typed is read once, and the text that could be read is marked. */
const type = (
  template: AskingTemplate,
  seed: number,
  text: string,
  asked: Asked,
  style: Style,
): Marked => {
  readAnswer(text, asked);
  const raw = template.kind === 'mistake' ? { line: rightLine(template), number: text } : text;
  return marked(template, seed, raw, recordOf, { style, stored: true });
};

const keyAt = (template: AskingTemplate, seed: number): Key =>
  keyOf(variantOf<AskingTemplate>(template, recordOf, seed), recordOf);

const elsewhere = (key: Key, si: number): boolean =>
  key.others.some(
    ({ span: [low, high] }) => si >= low - OUT * Math.abs(low) && si <= high + OUT * Math.abs(high),
  );

describe.each(asking.map((template) => [template.id, template] as const))('%s', (_id, template) => {
  it('takes its key and what is within the tolerance, however it is written, and nothing just outside', () => {
    for (let seed = 0; seed < SEEDS; seed++) {
      const key = keyAt(template, seed);
      const { formula, ask } = template;
      const variant = variantOf(template, recordOf, seed);
      const value = workOut(recordOf, { formula, given: variant.given, result: ask }).value;
      expect(key.value).toBeCloseTo(Number(value), 12);
      const [low = 0, high = 0] = ruled(key.value, template, key.asked);
      const out = OUT * Math.max(Math.abs(low), Math.abs(high));
      const tries: readonly (readonly [string, number, boolean])[] = [
        ['the key', key.value, true],
        ['the low end', low, true],
        ['the high end', high, true],
        ['below', low - out, false],
        ['above', high + out, false],
      ];
      for (const [what, si, right] of tries) {
        if (!right && elsewhere(key, si)) continue;
        for (const [i, text] of spellings(si, key.asked).entries()) {
          const where = `${what}, ${text}, seed ${seed}`;
          readAnswer(text, key.asked);
          const verdict = markNumber(text, key, true);
          expect('credit' in verdict && verdict.credit === 1, where).toBe(right);
          // A few go the whole way from the template, in the reader’s own style.
          const style = i % 9 === 0 ? LOCALES[(i / 9) % LOCALES.length] : undefined;
          if (!style) continue;
          expect(type(template, seed, text, key.asked, style).credit === 1, where).toBe(right);
        }
      }
    }
  });
});

describe('any seed, any place, any spelling', () => {
  it('is right within the tolerance and not beyond it', () => {
    const place = fc.double({ min: -3, max: 3, noNaN: true });
    fc.assert(
      fc.property(
        fc.constantFrom(...asking),
        fc.nat(999),
        place,
        fc.nat(),
        fc.constantFrom(...LOCALES),
        (template, seed, at, spelling, style) => {
          const key = keyAt(template, seed);
          const [low = 0, high = 0] = ruled(key.value, template, key.asked);
          const si = (low + high) / 2 + (at * (high - low)) / 2;
          const far = Math.min(Math.abs(si - low), Math.abs(si - high));
          fc.pre(far > OUT * Math.max(Math.abs(low), Math.abs(high)) && Math.abs(si) > 1e-9);
          const right = Math.abs(at) < 1;
          if (!right && elsewhere(key, si)) return;
          const all = spellings(si, key.asked);
          const text = all[spelling % all.length] ?? '';
          expect(type(template, seed, text, key.asked, style).credit === 1, text).toBe(right);
        },
      ),
    );
  });

  it('says a range whose ends are taken as they are said', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...asking),
        fc.nat(999),
        fc.constantFrom(...LOCALES),
        (template, seed, style) => {
          const key = keyAt(template, seed);
          const ends = inWords(key.span, key.asked, style).split(' to ');
          expect(ends).toHaveLength(2);
          for (const end of ends) {
            // What is asked about is no wrong answer: the student says which was meant.
            const verdict = markNumber(end, key);
            const settled = verdict.kind === 'ambiguous' ? verdict.readings : [end];
            expect(
              settled.map((text) => markNumber(text, key, true).kind),
              end,
            ).toContain('right');
          }
        },
      ),
    );
  });
});

describe('stops in thirds', () => {
  const found = asking.filter((template) =>
    ['stops', 'ev'].includes(dimensionOf(keyAt(template, 0).asked.unit)),
  );
  it.each(found.map((template) => [template.id, template] as const))('%s', (_id, template) => {
    for (const seed of [0, 7]) {
      const key = keyAt(template, seed);
      const [low = 0, high = 0] = ruled(key.value, template, key.asked);
      const middle = Math.round(key.value * 3);
      for (let thirds = middle - 3; thirds <= middle + 3; thirds++) {
        if (elsewhere(key, thirds / 3)) continue;
        const [whole, part] = [Math.floor(Math.abs(thirds) / 3), Math.abs(thirds) % 3];
        const sign = thirds < 0 ? '\u2212' : '+';
        const glyph = ['', '⅓', '⅔'][part] ?? '';
        const texts =
          part === 0
            ? [`${sign}${whole}`]
            : whole === 0
              ? [`${sign}${part}/3`, `${sign}${glyph}`]
              : [`${sign}${whole} ${part}/3`, `${sign}${whole}${glyph}`];
        const right = thirds / 3 >= low && thirds / 3 <= high;
        for (const text of texts.flatMap((one) => [one, `${one} stops`, `${one} EV`]))
          expect(type(template, seed, text, key.asked, {}).credit === 1, text).toBe(right);
      }
    }
  });
  expect(found.length).toBeGreaterThan(8);
});

describe('where the text leaves it open', () => {
  const open = asking.flatMap((template) =>
    [0, 7].flatMap((seed) =>
      keyAt(template, seed).others.map((other) => ({ template, seed, other })),
    ),
  );

  it.each([
    ['marks', 'exact', /exact f-numbers/],
    ['measured-from', 'sensor', /from the sensor/],
  ] as const)('%s may be %s', (input, choice, because) => {
    const told = open.filter(({ other }) => because.test(other.because));
    expect(new Set(told.map(({ template }) => template.id)).size).toBeGreaterThan(3);
    for (const { template, seed } of told) {
      const { given } = variantOf(template, recordOf, seed);
      expect(given[input], template.id).toBeUndefined();
      const worked = {
        formula: template.formula,
        given: { ...given, [input]: choice },
        result: template.ask,
      };
      const { value } = workOut(recordOf, worked);
      const { asked } = keyAt(template, seed);
      for (const text of spellings(Number(value), asked).slice(0, 5)) {
        const { credit, verdict } = type(template, seed, text, asked, {});
        expect(credit, `${template.id}, ${text}`).toBe(1);
        expect(verdict.kind).toBe('right');
      }
    }
  });

  it('a distance may be from the sensor, where both are results', () => {
    const told = open.filter(({ other }) => other.because === 'as sensor to subject');
    expect(told.length).toBeGreaterThan(2);
    for (const { template, seed } of told) {
      const { formula } = template;
      const { given } = variantOf(template, recordOf, seed);
      const { text } = workOut(recordOf, { formula, given, result: 'sensor-to-subject' });
      expect(type(template, seed, text, keyAt(template, seed).asked, {}).credit, text).toBe(1);
    }
  });

  it('is closed where the text says which is meant', () => {
    const said = { marks: /exact f-numbers/, 'measured-from': /from the sensor/ };
    const closed = asking.flatMap((template) =>
      Object.values(recordOf(template.formula).inputs).flatMap((input) => {
        const id = idOf(input);
        return isChoice(input) && id in said && template.given[id] !== undefined
          ? [{ template, other: said[id as keyof typeof said] }]
          : [];
      }),
    );
    expect(closed.length).toBeGreaterThan(2);
    for (const { template, other } of closed)
      expect(
        keyAt(template, 0).others.filter(({ because }) => other.test(because)),
        template.id,
      ).toEqual([]);
  });
});
