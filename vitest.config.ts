import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const alias = { '~': fileURLToPath(new URL('./src', import.meta.url)) };

export default defineConfig({
  test: {
    allowOnly: false,
    // Reports must name what was found, not count it.
    chaiConfig: { truncateThreshold: 4000 },
    projects: [
      {
        resolve: { alias },
        test: {
          name: 'unit',
          // What is tested here keeps no state between files, and loading it anew for each took a quarter of the time.
          isolate: false,
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/site/**'],
          setupFiles: ['tests/support/properties.ts'],
          testTimeout: 20_000,
        },
      },
      {
        resolve: { alias },
        test: {
          name: 'site',
          include: ['tests/site/**/*.test.ts'],
          globalSetup: ['tests/support/serve-once.ts'],
          maxWorkers: 2,
          // Windows side by side in each: enough to fill two cores, and few to open.
          maxConcurrency: 3,
          // What is waited for comes, or the test fails: how soon is the bench’s business, not a busy machine’s.
          expect: { poll: { timeout: 15_000 } },
          testTimeout: 120_000,
          // A busy machine is late once, a fault fails twice. What needed its second try is printed by name.
          retry: 1,
          hookTimeout: 240_000,
        },
      },
    ],
  },
});
