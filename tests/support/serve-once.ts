import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';
import { findChromium } from '../../src/site/commands/browser.ts';
import { serve } from '../../src/site/commands/serve.ts';
import { root } from './files.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** Address of the built site, with a slash at its end. */
    url: string;
    chromium: string;
  }
}

/** Serves the built site for all browser tests together. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const folder = join(root, 'dist');
  if (!existsSync(join(folder, 'index.html'))) {
    throw new Error('There is no built site to test: run npm run build first.');
  }
  const site = await serve({ folder, port: 0 });
  project.provide('url', site.url);
  project.provide('chromium', findChromium());
  return () => site.close();
}
