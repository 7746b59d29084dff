import { spawn } from 'node:child_process';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder that holds package.json. */
export const root: string = fileURLToPath(new URL('../../../', import.meta.url));

/** What a program left behind: its exit code and all it printed, in the order it came. */
export interface Outcome {
  readonly code: number;
  readonly output: string;
}

const quiet = { ASTRO_TELEMETRY_DISABLED: '1', DO_NOT_TRACK: '1' };

/**
 * Path of a command-line program that a package brings, to be run by this same Node.
 * Throws: Error when the package is not installed or has no such program.
 * Example: program('astro') ends in astro/bin/astro.mjs.
 */
export function program(packageName: string, bin: string = packageName): string {
  const manifest = findManifest(packageName);
  const { bin: bins } = createRequire(import.meta.url)(manifest) as {
    bin?: string | Record<string, string>;
  };
  const path = typeof bins === 'string' ? bins : bins?.[bin];
  if (path === undefined) throw new Error(`${packageName} brings no program "${bin}"; run npm ci.`);
  return join(dirname(manifest), path);
}

// Packages need not export their package.json, so it is looked for beside the others.
function findManifest(packageName: string): string {
  return join(root, 'node_modules', ...packageName.split('/'), 'package.json');
}

/**
 * Runs a Node program to its end, collecting what it prints.
 * Example: await collect(program('prettier'), ['--check', '.']).
 */
export function collect(
  script: string,
  args: readonly string[],
  options: { cwd?: string; env?: NodeJS.ProcessEnv } = {},
): Promise<Outcome> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [script, ...args], {
      cwd: options.cwd ?? root,
      env: { ...process.env, ...quiet, NO_COLOR: '1', ...options.env },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let output = '';
    const keep = (chunk: Buffer): void => {
      output += chunk.toString();
    };
    child.stdout.on('data', keep);
    child.stderr.on('data', keep);
    child.on('error', reject);
    child.on('close', (code) => {
      resolve({ code: code ?? 1, output });
    });
  });
}

/**
 * Runs a Node program with this terminal as its own, and gives its exit code.
 * Example: await hand(program('astro'), ['dev']).
 */
export function hand(script: string, args: readonly string[]): Promise<number> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [script, ...args], {
      cwd: root,
      env: { ...process.env, ...quiet },
      stdio: 'inherit',
    });
    // The child gets the interrupt too; waiting for it keeps its last words before our prompt.
    process.on('SIGINT', () => {});
    child.on('error', reject);
    child.on('close', (code) => {
      resolve(code ?? 1);
    });
  });
}
