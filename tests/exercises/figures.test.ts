import { describe, expect, it } from 'vitest';
import { formulasNeeded } from '../../src/exercises/needs.ts';
import { keyOf, variantOf, workOut } from '../../src/exercises/variant.ts';
import { writeQuantity } from '../../src/formula/notation/write.ts';
import { picturesOf, type Picture, type Reading } from '../../src/site/figures.ts';
import { withCommas } from '../../src/widgets/question/figure.ts';
import { bank } from '../support/bank.ts';
import { recordOf } from '../support/records.ts';

const readings = bank.flatMap(({ template }) => (template.kind === 'reading' ? [template] : []));
const drawn = readings.filter(({ figure }) => figure.show === 'drawing');

/** One seed for every set of numbers that can be drawn. */
const variantsOf = (template: Reading) => {
  const found = new Map<string, ReturnType<typeof variantOf<Reading>>>();
  for (let seed = 0; seed < 1000; seed++) {
    const variant = variantOf(template, recordOf, seed);
    const name = Object.values(variant.drawn).join('/');
    if (!found.has(name)) found.set(name, variant);
  }
  return found;
};
const words = ({ marks }: Picture): string[] =>
  marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
describe.each(drawn.map((template) => [template.id, template] as const))('%s', (_id, template) => {
  const styles = [{}, { system: 'imperial' }] as const;

  it('has a drawing for all numbers it can draw, in both systems', () => {
    const names = [...variantsOf(template).keys()].sort();
    for (const style of styles)
      expect(Object.keys(picturesOf(template, recordOf, style)).sort()).toEqual(names);
  });

  it('prints what is asked nowhere in the drawing, nor says it to those who listen', () => {
    for (const style of styles) {
      const pictures = picturesOf(template, recordOf, style);
      for (const [name, variant] of variantsOf(template)) {
        const { formula, ask, figure } = template;
        const asked = workOut(recordOf, { formula, given: variant.given, result: ask }, style).text;
        const seen = [...words(pictures[name] as Picture), variant.say(figure.says ?? '', style)];
        expect(seen.filter((text) => text.includes(asked)), name).toEqual([]); // prettier-ignore
      }
    }
  });

  it('does not print it with more digits or fewer, or in another unit, either', () => {
    const pictures = picturesOf(template, recordOf);
    for (const [name, variant] of variantsOf(template)) {
      const { value } = keyOf(variant, recordOf);
      const written = (['mm', 'cm', 'm'] as const).flatMap((unit) =>
        [{ significant: 3 }, { significant: 4 }, { decimals: 2 }].map((digits) =>
          writeQuantity(value, unit, digits),
        ),
      );
      const seen = [...words(pictures[name] as Picture), variant.say(template.figure.says ?? '')];
      expect(
        seen.filter((text) => written.some((one) => text.includes(one))),
        name,
      ).toEqual([]);
    }
  });

  it('differs with a decimal comma in its commas alone, so that no file is needed for it', () => {
    for (const system of ['metric', 'imperial'] as const) {
      const points = picturesOf(template, recordOf, { system });
      const commas = picturesOf(template, recordOf, { system, decimal: 'comma' });
      for (const name in points) expect(withCommas(points[name] as Picture)).toEqual(commas[name]);
    }
  });

  it('leaves out little else: a scale bar and what was given stand in it', () => {
    for (const picture of Object.values(picturesOf(template, recordOf)))
      expect(words(picture).length).toBeGreaterThan(3);
  });
});

describe('every reading exercise', () => {
  it('has the cell it asks for in its table, once', () => {
    for (const template of readings.filter(({ figure }) => figure.show === 'table')) {
      const { down, across } = template.figure;
      for (const variant of variantsOf(template).values()) {
        expect(down?.values, template.id).toContain(variant.drawn[down?.input ?? '']);
        expect(across?.values, template.id).toContain(variant.drawn[across?.input ?? '']);
      }
    }
  });

  it('names the formulas its picture needs', () => {
    for (const template of readings)
      expect(formulasNeeded(template)).toContain(template.figure.formula);
  });
});
