import { randomInt } from 'node:crypto';
import type { Sheet } from './bench-phone.ts';
import { collect, program } from './run.ts';

/** Every property once more, from a seed that nobody chose. */
export async function tryRandomSeed(sheet: Sheet): Promise<void> {
  const seed = randomInt(1, 2 ** 31 - 1);
  const { code, output } = await collect(
    program('vitest'),
    ['run', '--project=unit', '--reporter=dot'],
    { env: { SBN_SEED: String(seed) } },
  );
  sheet.heading('Properties from a random seed');
  sheet.line({
    pass: code === 0,
    text: `seed ${seed} (again with SBN_SEED=${seed} npm run test:unit)`,
  });
  if (code !== 0) console.log(output.slice(-4000));
}
