import fc from 'fast-check';

/** Every property runs from this seed, so that a failure can be repeated; `npm run bench` also tries one random seed. */
const seed = Number(process.env['SBN_SEED'] ?? 20_261_124);

fc.configureGlobal({ seed, numRuns: 300 });
