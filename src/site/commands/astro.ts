import { hand, program } from './run.ts';

// Astro's own program with telemetry off, which only an environment variable can do.
process.exitCode = await hand(program('astro'), process.argv.slice(2));
