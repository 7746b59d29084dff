import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { serve } from '../../src/site/commands/serve.ts';
import type { Served } from '../../src/site/commands/serve.ts';
import { root } from './files.ts';
import { reader } from './site.ts';

/** A built site of its own, on a server of its own, and a reader whose browser may keep it. */
export interface Studio {
  /** The folder that is served, to publish in. */
  readonly folder: string;
  readonly site: Served;
  readonly context: BrowserContext;
  /** No signal: the browser is told so, and nobody answers any more. */
  cutOff(): Promise<void>;
  end(): Promise<void>;
}

export async function studio(built = 'dist', base = '/'): Promise<Studio> {
  const folder = mkdtempSync(join(tmpdir(), 'sbn-studio-'));
  cpSync(join(root, built), folder, { recursive: true });
  const site = await serve({ folder, base, port: 0 });
  const context = await reader({ serviceWorkers: 'allow' });
  return {
    folder,
    site,
    context,
    cutOff: async () => {
      await context.setOffline(true);
      await site.close();
    },
    end: async () => {
      await context.close();
      await site.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** Waits until the browser has kept the site, and the page is served from what was kept. */
export const kept = (page: Page): Promise<string> =>
  page.evaluate(async () => {
    const { serviceWorker: workers } = navigator;
    const never = new Promise<never>((_, fail) => {
      setTimeout(() => fail(new Error('The browser has kept nothing in a minute.')), 60_000);
    });
    const { scope, active } = await Promise.race([workers.ready, never]);
    if (!workers.controller) {
      await new Promise((done) => {
        workers.addEventListener('controllerchange', done, { once: true });
      });
    }
    if (active?.state === 'activating') {
      await new Promise((done) => {
        active.addEventListener('statechange', done, { once: true });
      });
    }
    return scope;
  });
