import { hand, program } from './run.ts';
import { serveForReaders } from './serve.ts';

const code = await hand(program('astro'), ['build']);
if (code === 0) await serveForReaders();
else process.exitCode = code;
