import { describe, expect, it } from 'vitest';
import { marked } from '../../src/exercises/marked.ts';
import type { Raw } from '../../src/exercises/result-file.ts';
import type { Asking, Template } from '../../src/exercises/template.ts';
import { keyOf, variantOf } from '../../src/exercises/variant.ts';
import { canonical } from '../../src/formula/notation/write.ts';
import { bank } from '../support/bank.ts';
import { recordOf } from '../support/records.ts';

/** Every answer a template knows something to say of. */
const answersTo = (template: Template, seed: number): readonly Raw[] => {
  if (template.kind === 'choice') return template.options.map((_option, place) => [place]);
  if (!('ask' in template)) return [];
  const variant = variantOf<Extract<Template, Asking>>(template, recordOf, seed);
  const { value, turns, asked } = keyOf(variant, recordOf);
  const numbers = [value, ...turns.map((turn) => turn.value), value * 1.5].map((si) =>
    canonical(Number(si.toPrecision(13)), asked.unit),
  );
  return template.kind === 'mistake'
    ? template.lines.flatMap((_line, line) => numbers.map((number) => ({ line: String(line), number }))) // prettier-ignore
    : numbers;
};

describe.each(bank.map(({ template }) => [template.id, template] as const))('%s', (_id, template) => {
  it('says nothing with an empty place in it, whatever is answered', () => {
    for (const seed of [0, 7, 512])
      for (const raw of answersTo(template, seed)) {
        const { verdict } = marked(template, seed, raw, recordOf, { stored: true });
        expect('say' in verdict ? (verdict.say ?? '') : '').not.toMatch(/[{}]|undefined|NaN/);
      }
  });
}); // prettier-ignore

it('fills in the numbers of the line that was taken for the wrong one', () => {
  const template = bank.find(({ template: one }) => one.id === 'room-reckoned-short')?.template;
  if (template?.kind !== 'mistake') throw new Error('The exercise is gone.');
  const number = answersTo(template, 7)[0] as { number: string };
  const { verdict, credit } = marked(template, 7, { ...number, line: '1' }, recordOf, {
    stored: true,
  });
  expect(credit).toBe(0.5);
  expect(verdict).toMatchObject({ say: 'Both were measured on the set.' });
});
