import { readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { checkTypes } from './check.ts';
import { single, tally } from './report.ts';
import type { Tally } from './report.ts';
import { collect, program, root } from './run.ts';

// Everything that must hold before a change is taken. All stages run and report, even after a failure.
const stages: readonly (readonly [string, () => Promise<Tally>])[] = [
  ['type check', () => checkTypes().then(({ code, output }) => single(code, output))],
  ['lint', () => once(program('eslint'), ['.', '--max-warnings', '0'])],
  ['format', () => once(program('prettier'), ['--check', '--log-level', 'warn', '.'])],
  ['unit tests', () => vitest('unit')],
  ['build', build],
  ['site tests', () => vitest('site')],
];

async function once(script: string, args: readonly string[]): Promise<Tally> {
  const { code, output } = await collect(script, args);
  return single(code, output);
}

/** A build from nothing: what a cache holds must not decide what readers get. */
function build(): Promise<Tally> {
  for (const path of ['dist', '.astro', 'node_modules/.astro', 'node_modules/.vite']) {
    rmSync(join(root, path), { recursive: true, force: true });
  }
  return once(program('astro'), ['build']);
}

async function vitest(project: string): Promise<Tally> {
  const file = join(root, '.reports', `${project}.json`);
  rmSync(file, { force: true });
  const { code, output } = await collect(program('vitest'), [
    'run',
    `--project=${project}`,
    '--reporter=dot',
    '--reporter=json',
    `--outputFile.json=${file}`,
    '--update=none',
  ]);
  let report: string | undefined;
  try {
    report = readFileSync(file, 'utf8');
  } catch {
    report = undefined;
  }
  return tally(report, code, output);
}

let passed = 0;
let failed = 0;
for (const [name, run] of stages) {
  const start = performance.now();
  let result: Tally;
  try {
    result = await run();
  } catch (error) {
    result = single(1, error instanceof Error ? (error.stack ?? error.message) : String(error));
  }
  passed += result.passed;
  failed += result.failed;
  const seconds = ((performance.now() - start) / 1000).toFixed(1);
  const word = result.failed === 0 ? 'ok' : `${result.failed} FAILED`;
  console.log(
    `${name.padEnd(11)} ${seconds.padStart(6)} s  ${String(result.passed).padStart(5)} passed  ${word}`,
  );
  for (const line of result.lines) console.log(`\n  ${line.replaceAll('\n', '\n    ')}\n`);
}
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
