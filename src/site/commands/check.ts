import { collect, program } from './run.ts';
import type { Outcome } from './run.ts';

/**
 * The type check in three parts, since no one tool reads every kind of file: Astro pages, Svelte
 * parts, and TypeScript alone as Node will run it.
 */
export async function checkTypes(): Promise<Outcome> {
  // Astro goes first: it writes the types of the content collections that the others read.
  const astro = await collect(program('astro'), ['check', '--minimumFailingSeverity', 'warning']);
  const [svelte, typescript] = await Promise.all([
    collect(program('svelte-check'), ['--tsconfig', './tsconfig.json', '--fail-on-warnings']),
    collect(program('typescript', 'tsc'), ['--pretty', 'false']),
  ]);
  const parts = [astro, svelte, typescript];
  return {
    code: parts.some((part) => part.code !== 0) ? 1 : 0,
    output: parts
      .filter((part) => part.code !== 0)
      .map((part) => part.output.trim())
      .join('\n'),
  };
}

if (import.meta.main) {
  const { code, output } = await checkTypes();
  console.log(code === 0 ? 'Types agree: Astro, Svelte and TypeScript.' : output);
  process.exitCode = code;
}
