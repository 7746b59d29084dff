import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Calculator } from '../../src/widgets/parts/calculator.ts';
import { root } from '../support/files.ts';

/** Every calculator on the site, by the name of its folder. */
export const calculators: readonly (readonly [string, Calculator])[] = await Promise.all(
  readdirSync(join(root, 'src/widgets'))
    .filter(
      (name) => name !== 'parts' && existsSync(join(root, 'src/widgets', name, 'calculator.ts')),
    )
    .map(async (name) => {
      const module = (await import(`../../src/widgets/${name}/calculator.ts`)) as {
        default: Calculator;
      };
      return [name, module.default] as const;
    }),
);

export const calculator = (id: string): Calculator => {
  const found = calculators.find(([name]) => name === id);
  if (!found) throw new Error(`There is no calculator ${id}.`);
  return found[1];
};
