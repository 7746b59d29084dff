import { describe, expect, it } from 'vitest';
import { inReadersStyle } from '../../src/exercises/literal.ts';
import { numberOf } from '../../src/exercises/number-of.ts';
import { holds } from '../../src/exercises/span.ts';
import type { Asking, Template } from '../../src/exercises/template.ts';
import { keyOf, variantOf } from '../../src/exercises/variant.ts';
import { dimensionOf } from '../../src/formula/units.ts';
import { readInput, writeInput } from '../../src/formula/read.ts';
import { idOf, isChoice } from '../../src/formula/record.ts';
import { sayInput } from '../../src/formula/show.ts';
import { bank } from '../support/bank.ts';
import { recordOf } from '../support/records.ts';

type Numbered = Extract<Template, Asking>;
const numbered = bank.flatMap(({ template }) => ('ask' in template ? [template] : []));

/** What a reader of feet and inches sees of a variant, read back: an eighth of an inch is lost here and there. */
const asSeen = (template: Numbered, seed: number): Record<string, string> => {
  const { given } = variantOf<Numbered>(template, recordOf, seed);
  const inputs = Object.values(recordOf(template.formula).inputs);
  return Object.fromEntries(
    Object.entries(given).map(([id, text]) => {
      const input = inputs.find((one) => idOf(one) === id);
      const seen = input && !isChoice(input) && dimensionOf(input.unit) === 'length'; // prettier-ignore
      if (!seen) return [id, text];
      const shown = sayInput(input, readInput(input, text, { stored: true }), { system: 'imperial' }); // prettier-ignore
      return [id, writeInput(input, readInput(input, shown, { stored: true }))];
    }),
  );
};

describe.each(numbered.map((template) => [template.id, template] as const))('%s', (_id, template) => {
  it('is right for a reader who works with what stands there in feet and inches', () => {
    for (const seed of [0, 1, 2, 3, 5, 8, 13, 21, 34, 55, 89, 144, 233, 377, 610, 987]) {
      const { span } = keyOf(variantOf<Numbered>(template, recordOf, seed), recordOf);
      const worked = numberOf(recordOf(template.formula), asSeen(template, seed), template.ask);
      expect(holds(span, worked), `seed ${seed}: ${worked} is not in ${span.join(' to ')}`).toBe(true);
    }
  });
}); // prettier-ignore

it('is a reading of other numbers than the template’s own', () => {
  const rounded = numbered.filter((template) => {
    const { given } = variantOf<Numbered>(template, recordOf, 0);
    return JSON.stringify(asSeen(template, 0)) !== JSON.stringify(given);
  });
  expect(rounded.length).toBeGreaterThan(20);
});

it('has no metres and no points where feet and commas are wanted, whichever formula a number is drawn for', () => {
  for (const { template } of bank)
    // A sensor goes by its maker’s name and size, whoever reads it.
    for (const name of Object.keys(template.vary).filter((one) => !one.endsWith('format'))) {
      const variant = variantOf(template, recordOf, 7);
      const text = variant.say(`{${name}}`, { system: 'imperial', decimal: 'comma' });
      expect(text, `${template.id}, ${name}`).not.toMatch(/\d (?:m|cm)$|\d\.\d/);
    }
});

it.each([
  ['0.10 m of margin', '3⅞″ of margin'],
  [
    'With 0.30 m behind the quay and 2 m before it.',
    'With 11¾″ behind the quay and 6′ 6½″ before it.',
  ],
  ['marks 10 cm apart', 'marks 3⅞″ apart'],
  ['a print of 40 × 50 cm on 36 × 24 mm', 'a print of 40 × 50 cm on 36 × 24 mm'],
  ['85 mm at f/2.8, 1.2 m², 3 m/s', '85 mm at f/2.8, 1.2 m², 3 m/s'],
])('%s is, in feet and inches, %s', (text, seen) => {
  expect(inReadersStyle(text, { system: 'imperial' })).toBe(seen);
  expect(inReadersStyle(text, {})).toBe(text);
});

it('has commas in what was written out as in what is drawn', () => {
  expect(inReadersStyle('f/2.8 from 2.21 m. At 5.', { decimal: 'comma' })).toBe(
    'f/2,8 from 2,21 m. At 5.',
  );
});
