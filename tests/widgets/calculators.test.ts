import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formulas } from '../../src/formulas.ts';
import { idOf, isChoice } from '../../src/formula/record.ts';
import { showResult, showWorked } from '../../src/formula/show.ts';
import { PlateState } from '../../src/widgets/parts/plate-state.ts';
import { signsOf } from '../../src/widgets/parts/symbol.ts';
import { calculators } from './calculators.ts';

it('gives every formula a calculator of the same name', () => {
  expect(calculators.map(([name]) => name).sort()).toEqual(Object.keys(formulas).sort());
  for (const [name, { formula }] of calculators) expect(formula.id).toBe(name);
});

describe.each(calculators)('%s', (_name, calculator) => {
  const { formula, fields, more, draw } = calculator;
  const keys = Object.keys(formula.inputs);

  /** What a reader can see of a state; the words for what is missing are “not given” and ∞. */
  const seen = (state: PlateState): string[] => {
    const sheet = draw(state.given, state.results, state.style);
    return [
      ...state.sentence().map(({ text }) => text),
      sheet.says,
      ...sheet.table.rows.flat(),
      ...sheet.marks.map((mark) => (mark.kind === 'text' ? mark.text : mark.d)),
    ];
  };

  it('shows every input once', () => {
    expect([...fields, ...more].sort()).toEqual([...keys].sort());
  });

  it('can set every symbol', () => {
    for (const { tex } of [...Object.values(formula.inputs), ...Object.values(formula.outputs)]) {
      if (tex !== undefined) expect(signsOf(tex).length).toBeGreaterThan(0);
    }
  });

  it('says its start in one sentence with one large number', () => {
    const parts = new PlateState(calculator).sentence();
    // Set in pieces where an f is italic, but in one place.
    const large = parts.flatMap(({ main }, i) => (main ? [i] : []));
    expect(large.length).toBeGreaterThan(0);
    expect(large).toEqual(large.map((_, i) => (large[0] ?? 0) + i));
    expect(parts.map(({ text }) => text).join('')).toMatch(/^[A-Z0-9].*\.$/u);
  });

  it('never shows NaN, undefined or a blank, whatever its sliders and choices say', () => {
    const settings = fc.array(
      fc.tuple(fc.constantFrom(...keys), fc.double({ min: 0, max: 1, noNaN: true })),
      { maxLength: 6 },
    );
    fc.assert(
      fc.property(settings, fc.boolean(), (changes, imperial) => {
        const state = new PlateState(calculator);
        if (imperial) state.measure('imperial');
        for (const [key, share] of changes) {
          const input = formula.inputs[key];
          if (!input) continue;
          if (isChoice(input)) {
            const ids = Object.keys(input.choices);
            state.type(key, ids[Math.floor(share * (ids.length - 1))] ?? '');
          } else if (share === 0) state.type(key, '');
          else {
            const track = state.field(key).track;
            if (track) state.put(key, track.value(track.min + share * (track.max - track.min)));
          }
        }
        for (const text of seen(state)) {
          expect(text).not.toMatch(/NaN|undefined|Infinity|\[object/);
          expect(text).not.toBe('');
        }
      }),
    );
  });

  it('writes no decimal point for a reader who writes commas', () => {
    const state = new PlateState(calculator);
    for (const system of ['metric', 'imperial'] as const) {
      state.adopt({ system, decimal: 'comma' });
      const { given, results, style } = state;
      const sheet = draw(given, results, style);
      const texts = [
        ...state.sentence().map(({ text }) => text),
        ...keys.flatMap((key) => {
          const { text, placeholder, spoken } = state.field(key);
          return formula.inputs[key] && isChoice(formula.inputs[key])
            ? []
            : [text, placeholder, spoken];
        }),
        ...Object.entries(formula.outputs).map(([key, output]) =>
          showResult(output, results[key], style),
        ),
        ...Object.values(formula.worked.values(given, results)).map((shown) =>
          showWorked(shown, style),
        ),
        sheet.says,
        ...sheet.table.rows.flat(),
        ...sheet.marks.map((mark) => (mark.kind === 'text' ? mark.text : '')),
      ];
      // The sides of a format are its name.
      const known = (text: string): string =>
        text.replaceAll(/\d+(?:\.\d+)?\s×\s\d+(?:\.\d+)?/g, '');
      expect(texts.map(known).filter((text) => /\d\.\d/.test(text))).toEqual([]);
    }
  });

  it('keeps its results, marked stale, while any one field cannot be used', () => {
    for (const key of keys.filter((one) => formula.inputs[one]?.when === undefined)) {
      const state = new PlateState(calculator);
      const before = state.results;
      state.type(key, 'abc');
      expect(state.stale, key).toBe(true);
      expect(state.results).toBe(before);
      const { trouble, text } = state.field(key);
      expect(text).toBe('abc');
      expect(trouble?.message).toMatch(/must be .*abc/);
      state.reset();
      expect(state.stale, key).toBe(false);
    }
  });

  it('shows what an optional input makes impossible as not given', () => {
    for (const [key, input] of Object.entries(formula.inputs)) {
      if (!input.optional) continue;
      const state = new PlateState(calculator);
      state.type(key, '');
      if (state.stale) {
        // One of several ways of giving the same, or the only source of a default: the page asks for it.
        const asked = [state.trouble, ...keys.map((one) => state.field(one).trouble)];
        expect(asked.map((one) => one?.message ?? '').join(''), idOf(input)).toMatch(/ needs /);
        continue;
      }
      for (const text of seen(state)) expect(text).not.toMatch(/NaN|undefined|Infinity/);
    }
  });
});
