import { idOf, isChoice } from '../../src/formula/record.ts';
import type { Formula } from '../../src/formula/record.ts';
import { startsOf } from '../../src/formula/starts.ts';
import { writeQuery } from '../../src/widgets/parts/starts.ts';

/** Addresses of a plate's start in which one thing is wrong, each with a question mark. */
export function hostileQueries(formula: Formula): string[] {
  const input = Object.values(formula.inputs).find((one) => !isChoice(one));
  if (input === undefined) throw new Error(`${formula.id} has no quantity.`);
  const name = idOf(input);
  // A plate's own address writes every input.
  const own = writeQuery(formula, startsOf(formula));
  const given = new URLSearchParams(own).get(name);
  if (given === null) throw new Error(`The address of ${formula.id} leaves out ${name}.`);
  const wrong = ['NaN', '-1e999m', '\0', '<script>alert(1)</script>', '9'.repeat(5000)];
  return [
    ...wrong.map((value) => {
      const query = new URLSearchParams(own);
      query.set(name, value);
      return `?${query.toString()}`;
    }),
    `?${own}&${name}=${encodeURIComponent(given)}`,
    `?${own}&__proto__=1&constructor=2`,
    '?a=%E0%A4%A&=&&',
  ];
}
